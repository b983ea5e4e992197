// The icon's drawing as pictures of the sizes that browsers ask for: `node tools/icons.mjs`.

import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { CHROMIUM } from '../tests/browsers.mjs';

const folder = fileURLToPath(new URL('../page/public/', import.meta.url));
const browser = await chromium.launch(CHROMIUM);
const page = await browser.newPage();
for (const size of [192, 512]) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>body{margin:0}svg{display:block;width:${size}px;height:${size}px}</style>${readFileSync(`${folder}icon.svg`, 'utf8')}`);
    writeFileSync(`${folder}icon-${size}.png`, await page.screenshot());
}
await browser.close();
