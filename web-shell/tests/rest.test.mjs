// The end of a rest as it is heard and felt, the screen kept on, and what a page says where it can't.

import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { BLANK, EVENING, Phone, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

/** A device that writes down what it is asked for. */
function recording() {
    window.tones = [];
    window.felt = [];
    window.locks = { taken: 0, released: 0 };
    const node = class {
        constructor(context, options) {
            this.options = options;
        }
        connect(to) {
            return to;
        }
        start(at) {
            this.tone = { at, pitch: this.options.frequency };
            window.tones.push(this.tone);
        }
        stop(at) {
            if (at === undefined) window.tones.splice(window.tones.indexOf(this.tone), 1);
            else this.tone.long = at - this.tone.at;
        }
    };
    window.OscillatorNode = node;
    window.GainNode = node;
    window.AudioContext = class {
        state = 'running';
        currentTime = 100;
        destination = {};
        resume() {
            return Promise.resolve();
        }
    };
    Object.defineProperty(navigator, 'vibrate', { value: (pattern) => window.felt.push(pattern) });
    Object.defineProperty(navigator, 'wakeLock', {
        value: {
            request: async () => {
                window.locks.taken += 1;
                return {
                    released: false,
                    async release() {
                        window.locks.released += 1;
                    },
                };
            },
        },
    });
}

async function recorded(context) {
    const phone = await Phone.open(context, host.url, { before: recording });
    await phone.records();
    return phone;
}

test('three short marks before a rest is over, a long one at it, felt at its end', async () => {
    const phone = await recorded(await fresh());
    const { page } = phone;
    await phone.begin();
    await phone.recordNext();
    const tones = await page.evaluate(() => window.tones);
    assert.equal(tones.length, 4, JSON.stringify(tones));
    const end = tones[3].at;
    assert.ok(Math.abs(end - 160) < 1.5, `a minute from now, at ${end}`);
    assert.deepEqual(tones.map((tone) => Math.round(tone.at - end)), [-3, -2, -1, 0]);
    assert.ok(tones[3].long > 3 * tones[0].long && tones[3].pitch > tones[0].pitch);
    // Longer sets it anew, and the next set takes it away and sets its own.
    await phone.tapLabel('+20 s');
    const later = await page.evaluate(() => window.tones);
    assert.equal(later.length, 4);
    assert.ok(Math.abs(later[3].at - 180) < 1.5, `${later[3].at}`);
    const before = await page.evaluate(() => window.felt.length);
    await page.clock.fastForward(85_000);
    await phone.settle();
    const felt = await page.evaluate(() => window.felt);
    assert.equal(felt.length, before + 1);
    assert.ok(felt.at(-1).length >= 3);
    phone.sound();
    await page.context().close();
});

test('the screen is kept on while a session runs, and no longer', async () => {
    const phone = await recorded(await fresh());
    const locks = () => phone.page.evaluate(() => window.locks);
    assert.deepEqual(await locks(), { taken: 0, released: 0 });
    await phone.begin();
    assert.deepEqual(await locks(), { taken: 1, released: 0 });
    await phone.recordNext();
    await phone.reload();
    // Another page: it is asked for anew.
    assert.deepEqual(await locks(), { taken: 1, released: 0 });
    await phone.finish();
    assert.deepEqual(await locks(), { taken: 1, released: 1 });
    await phone.page.context().close();
});

test('where the screen can’t be kept on, that is said once', async () => {
    const before = () => {
        delete Navigator.prototype.wakeLock;
    };
    const phone = await Phone.open(await fresh(), host.url, { before });
    await phone.records();
    await phone.begin();
    await phone.page.locator('.word').waitFor();
    await phone.sees('lets the screen go dark');
    await phone.tap('no');
    await phone.reload();
    assert.ok(!(await phone.texts()).includes('lets the screen go dark'));
    await phone.page.context().close();
});

test('what a browser lacks is said at the start', async () => {
    for (const [lack, words] of [
        ['delete StorageManager.prototype.getDirectory', 'no file that is written at once'],
        ['delete Navigator.prototype.locks', 'lacks what the program is made of'],
    ]) {
        const context = await fresh();
        const page = await context.newPage();
        await page.addInitScript(lack);
        await page.goto(host.url);
        await page.getByText(words).waitFor();
        await context.close();
    }
});

test('damaged records are said to be, and read back as far as they are good', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.page.close();
    const page = await context.newPage();
    await page.goto(`${host.url.slice(0, -1)}${BLANK}`);
    // Some bytes in the middle of the file are spoiled.
    const spoiled = await page.evaluate(async () => {
        const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('barwright');
        let count = 0;
        for await (const entry of folder.values()) {
            const file = await entry.getFile();
            const head = new Uint8Array(await file.slice(0, 64).arrayBuffer());
            const name = new TextDecoder().decode(head.slice(18, 18 + head[16] * 256 + head[17]));
            if (name !== 'barwright.db') continue;
            const bytes = new Uint8Array(await file.arrayBuffer());
            for (let at = Math.floor(bytes.length * 0.6); at < bytes.length - 100; at += 97) bytes[at] ^= 0x55;
            // The tab that was closed lets go of it a moment later.
            let writable = null;
            for (let tries = 0; !writable; tries += 1) {
                if (tries > 1200) throw new Error('it never lets go');
                writable = await entry.createWritable().catch(() => new Promise((then) => setTimeout(() => then(null), 50)));
            }
            await writable.write(bytes);
            await writable.close();
            count += 1;
        }
        return count;
    });
    assert.equal(spoiled, 1);
    await page.clock.install({ time: EVENING });
    const again = new Phone(page, host.url);
    await page.goto(host.url);
    await page.locator('[data-key=yes]').waitFor();
    await page.locator('[data-key=yes]').tap();
    await page.locator('#page [data-key=places]').waitFor();
    await page.locator('.word').waitFor();
    await again.settle();
    await again.tap('no');
    await again.tap('places');
    await again.tap('check');
    await again.sees('The records are whole');
    await context.close();
});
