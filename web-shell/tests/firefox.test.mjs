// The other engine: a session, a reload, a browser that is killed in a cluster, no network, in Firefox.

import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import puppeteer from 'puppeteer-core';
import { FIREFOX } from './browsers.mjs';
import { EVERY_KIND, FULL_GYM, site } from './harness.mjs';

const host = await site();
after(() => host.close());

class Fox {
    constructor() {
        this.profile = mkdtempSync(join(tmpdir(), 'barwright-firefox-'));
    }

    async start() {
        this.browser = await puppeteer.launch({ ...FIREFOX, userDataDir: this.profile, extraPrefsFirefox: { 'intl.locale.requested': 'en-GB' } });
        this.page = await this.browser.newPage();
        await this.page.setViewport({ width: 390, height: 780, hasTouch: true });
        this.faults = [];
        this.page.on('pageerror', (error) => this.faults.push(error.message));
        await this.page.goto(host.url);
        await this.stands();
    }

    async stands() {
        await this.page.waitForSelector('#page [data-key=places]', { timeout: 30_000 });
        await this.settle();
    }

    async settle() {
        await this.page.waitForSelector('#page:not([data-busy])', { timeout: 30_000 });
        await this.page.evaluate(() => new Promise((then) => requestAnimationFrame(() => then())));
    }

    async tap(selector) {
        const element = await this.page.waitForSelector(selector, { timeout: 10_000 });
        await element.evaluate((one) => one.scrollIntoView({ block: 'nearest' }));
        await element.tap();
        await this.settle();
    }

    async go(place) {
        await this.tap('[data-key=places]');
        await this.tap(`[data-key="place ${place}"]`);
    }

    async paste(text) {
        await this.page.evaluate((text) => {
            const data = new DataTransfer();
            data.items.add(new File([text], 'file.toml'));
            document.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
        }, text);
        await new Promise((then) => setTimeout(then, 150));
        await this.settle();
    }

    part() {
        return this.page.$eval('.upper', (upper) => upper.dataset.part);
    }

    texts() {
        return this.page.$eval('#page', (page) => page.innerText);
    }

    async record() {
        const main = (await this.page.$('.record > .key.large')) ? '.record > .key.large' : '.efforts [data-key="left-2"].large';
        await this.tap(main);
    }

    async end() {
        await this.browser?.close().catch(() => undefined);
        rmSync(this.profile, { recursive: true, force: true, maxRetries: 5 });
    }
}

test('Firefox: a session, a reload, a kill in a cluster, and no network', async () => {
    const fox = new Fox();
    try {
        await fox.start();
        await fox.tap('[data-key=demo]');
        await fox.page.waitForSelector('.row', { timeout: 60_000 });
        await fox.settle();
        await fox.go('equipment');
        await fox.paste(FULL_GYM);
        await fox.go('today');
        await fox.paste(EVERY_KIND);
        await fox.tap('.foot .key.now');
        await fox.go('today');
        await fox.tap('.foot .key.now');
        for (let taps = 0; taps < 12 && !(await fox.texts()).includes('block 2 of 3'); taps += 1) await fox.record();
        const cluster = await fox.part();
        assert.match(await fox.texts(), /block 2 of 3/);
        await fox.page.reload();
        await fox.stands();
        assert.equal(await fox.part(), cluster);
        // What a browser keeps beside its files may be some seconds late; the records are not.
        await new Promise((then) => setTimeout(then, 6000));
        await fox.record();
        const later = await fox.part();
        assert.notEqual(later, cluster);
        const gone = new Promise((then) => fox.browser.once('disconnected', then));
        fox.browser.process().kill('SIGKILL');
        await gone;
        await fox.start();
        if (await fox.page.$('[data-key=demo]')) await fox.tap('[data-key=demo]');
        await fox.go('floor');
        assert.equal((await fox.part()).split(' ')[0], later.split(' ')[0]);
        // From here on without a network.
        await fox.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
        await fox.page.reload();
        await fox.stands();
        await host.close();
        await fox.page.reload();
        await fox.stands();
        await fox.record();
        assert.notEqual((await fox.part()).split(' ')[0], later.split(' ')[0]);
        assert.deepEqual(fox.faults, []);
    } finally {
        await fox.end();
    }
});
