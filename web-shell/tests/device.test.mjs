// What the page asks of the browser: to keep what is stored, to share, to install; and its language.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { Phone, SITE, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

async function device(script, options = {}) {
    const context = await fresh(options);
    const page = await context.newPage();
    await page.addInitScript(script);
    await page.clock.install({ time: 1768237500000 });
    const phone = new Phone(page, host.url);
    await phone.load();
    return phone;
}

test('the browser is asked once to keep the records, after the first thing is recorded', async () => {
    const phone = await device(() => {
        window.asked = 0;
        StorageManager.prototype.persisted = () => Promise.resolve(window.kept ?? false);
        StorageManager.prototype.persist = () => {
            window.asked += 1;
            return Promise.resolve(false);
        };
    });
    const asked = () => phone.page.evaluate(() => window.asked);
    await phone.go('care');
    assert.equal(await asked(), 0, 'not for looking');
    await phone.tap('under-18');
    await phone.tap('under-18');
    assert.equal(await asked(), 1);
    // It said no: that is told, and asking again is one key.
    await phone.tap('places');
    await phone.sees('has not promised');
    await phone.page.evaluate(() => {
        window.kept = true;
    });
    await phone.tap('promise');
    assert.equal(await asked(), 2);
    await phone.sees('has promised');
    await phone.page.context().close();
});

test('files go to the share sheet; where it takes none of that kind they are saved', async () => {
    const phone = await device(() => {
        window.shared = [];
        Navigator.prototype.canShare = ({ files }) => files.length > 0;
        Navigator.prototype.share = async ({ files: [file] }) => {
            window.shared.push({ name: file.name, type: file.type, begins: (await file.text()).slice(0, 15) });
            if (window.refuses) throw new DOMException('not that kind', 'NotAllowedError');
        };
    });
    await phone.records();
    await phone.tap('places');
    await phone.tap('share');
    await phone.page.waitForFunction(() => window.shared.length === 1);
    await phone.tap('place equipment');
    await phone.tap('share');
    await phone.page.waitForFunction(() => window.shared.length === 2);
    const shared = await phone.page.evaluate(() => window.shared);
    assert.deepEqual(shared[0], { name: 'barwright.backup', type: 'application/octet-stream', begins: 'SQLite format 3' });
    assert.match(shared[1].name, /\.toml\.txt$/);
    await phone.page.evaluate(() => {
        window.refuses = true;
    });
    const comes = phone.page.waitForEvent('download');
    await phone.tap('share');
    assert.match((await comes).suggestedFilename(), /\.txt$/);
    await phone.page.context().close();
});

test('the language is the browser’s: of the page’s own words, the document and the manifest', async () => {
    for (const [locale, language, places] of [['en-GB', 'en', 'Go to…'], ['de-AT', 'de', 'Menü'], ['fr-FR', 'en', 'Go to…']]) {
        const phone = await Phone.open(await fresh({ locale }), host.url);
        assert.equal(await phone.page.evaluate(() => document.documentElement.lang), language);
        assert.equal(await phone.text('[data-key=places]'), places);
        const href = await phone.page.locator('link[rel=manifest]').getAttribute('href');
        const manifest = JSON.parse(readFileSync(join(SITE, href), 'utf8'));
        assert.equal(manifest.lang, language);
        assert.ok(manifest.icons.some((icon) => icon.purpose === 'maskable'));
        // Numbers are the core's, by the same locale.
        await phone.records();
        await phone.go('weeks');
        phone.sound();
        await phone.page.context().close();
    }
});
