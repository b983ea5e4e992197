// What was acknowledged is there: after a browser that was killed, without a network, in another tab,
// after a defect, and in a copy.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { Device, EVENING, EVERY_KIND, FULL_GYM, PHONE, Phone, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

/** Taps until the floor's call has these words. */
async function until(phone, words) {
    for (let taps = 0; taps < 60; taps += 1) {
        if ((await phone.texts()).includes(words)) return;
        await phone.recordNext();
        await phone.pass(45);
    }
    assert.fail(`never there: ${await phone.texts()}`);
}

test('a browser that is killed in a cluster comes back in it', async () => {
    const device = new Device();
    try {
        const context = await device.start();
        let phone = await Phone.open(context, host.url);
        await phone.records();
        await phone.prepare(FULL_GYM, EVERY_KIND);
        await phone.begin();
        await until(phone, 'block 2 of 3');
        // The pause went by; its block again.
        await phone.tap('undo');
        await phone.sees('block 1 of 3');
        await phone.recordNext();
        await phone.sees('0:25');
        const at = await phone.page.evaluate(() => Date.now());
        await device.kill();
        phone = await Phone.open(await device.start(), host.url, { at: at + 15_000 });
        await phone.go('floor');
        await phone.sees('block 2 of 3');
        assert.match(await phone.text('.countdown'), /^0:(0[3-9]|10)$/);
        await phone.tapLabel('Done: next 1');
        await phone.tapLabel('Done: last part');
        await phone.sees('Bench press');
        phone.sound();
    } finally {
        await device.end();
    }
});

test('kills at random moments lose nothing that was acknowledged', async () => {
    const kills = Number(process.env.BARWRIGHT_KILLS ?? 5);
    const seed = Number(process.env.BARWRIGHT_SEED ?? 1);
    let state = seed;
    const chance = () => {
        // Numerical Recipes' linear congruential generator (Press et al., 2nd ed. 1992, section 7.1).
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return state / 2 ** 32;
    };
    const device = new Device();
    try {
        let context = await device.start();
        let phone = await Phone.open(context, host.url, { at: null });
        await phone.records();
        await phone.begin();
        let shown = await phone.part();
        let taps = 0;
        for (let kill = 0; kill < kills; kill += 1) {
            // Taps go on; the browser dies at some moment in between.
            const { page } = phone;
            let acknowledged = shown;
            let over = false;
            const seen = (async () => {
                while (!over) {
                    try {
                        const key = page.locator('.record > .key.large, .efforts [data-key="left-2"]').first();
                        await key.tap({ timeout: 1000 });
                        await phone.settle();
                        acknowledged = await phone.part();
                        taps += 1;
                        if (acknowledged.startsWith('null')) return;
                    } catch {
                        return;
                    }
                }
            })();
            await new Promise((then) => setTimeout(then, 200 + chance() * 900));
            const dies = device.kill();
            await dies;
            over = true;
            await seen;
            context = await device.start();
            phone = await Phone.open(context, host.url, { at: null });
            await phone.go('floor');
            shown = await phone.part();
            // Nothing that was shown is gone: the part is the one shown last, or one that was recorded
            // and not shown any more.
            const number = (part) => (part.startsWith('null') ? Infinity : Number(part.split('@')[0].split('.').reduce((sum, one) => sum * 100 + Number(one), 0)));
            assert.ok(number(shown) >= number(acknowledged), `kill ${kill} (seed ${seed}): ${acknowledged} was shown, ${shown} is there`);
            if (shown.startsWith('null')) {
                // Nothing is left to record: some way back, so that every kill finds taps.
                for (let back = 0; back < 15; back += 1) await phone.tap('undo');
                shown = await phone.part();
                assert.ok(!shown.startsWith('null'), shown);
            }
        }
        console.log(`  ${kills} kills, ${taps} taps acknowledged`);
        assert.ok(taps * 2 >= kills, `${taps} taps`);
        await phone.go('tally');
        await phone.tap('places');
        await phone.tap('check');
        await phone.sees('The records are whole');
    } finally {
        await device.end();
    }
});

test('from the second load on it needs no network', async () => {
    const own = await site();
    const context = await fresh();
    const phone = await Phone.open(context, own.url);
    await phone.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await phone.records();
    await own.close();
    await phone.reload();
    await phone.begin();
    const before = await phone.part();
    await phone.recordNext();
    assert.notEqual(await phone.part(), before);
    await phone.again(30);
    await phone.go('floor');
    assert.notEqual(await phone.part(), before);
    phone.sound();
    await context.close();
});

test('a clock set back says so, and a rest stands by it', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    await phone.begin();
    await phone.recordNext();
    await phone.sees('Rest');
    const rest = await phone.text('.countdown');
    assert.match(rest, /^0:5\d|1:00$/);
    // An hour back: what remains is no longer than it was.
    await phone.page.clock.setSystemTime(EVENING - 3_600_000);
    await phone.go('today');
    await phone.go('floor');
    assert.match(await phone.text('.countdown'), /^0:[45]\d|1:00$/);
    await phone.page.context().close();
});

test('a journey through zones moves no session', async () => {
    const device = new Device();
    try {
        let phone = await Phone.open(await device.start(), host.url);
        await phone.records();
        await phone.begin();
        await phone.recordNext();
        const part = await phone.part();
        await device.kill();
        device.options.timezoneId = 'America/Los_Angeles';
        phone = await Phone.open(await device.start(), host.url, { at: EVENING + 20_000 });
        await phone.go('floor');
        assert.equal(await phone.part(), part);
        phone.sound();
    } finally {
        await device.end();
    }
});

test('a second tab is refused and can take over', async () => {
    const context = await fresh();
    const first = await Phone.open(context, host.url);
    await first.records();
    await first.begin();
    await first.recordNext();
    const part = await first.part();
    const second = new Phone(await context.newPage(), host.url);
    await second.page.clock.install({ time: EVENING + 10_000 });
    await second.page.goto(host.url);
    await second.page.locator('[data-key=refused]').waitFor();
    await second.sees('another tab');
    // The first one is not disturbed.
    await first.page.bringToFront();
    await first.go('floor');
    assert.equal(await first.part(), part);
    await second.page.bringToFront();
    await second.page.locator('[data-key=refused]').tap();
    await second.stands();
    await second.go('floor');
    assert.equal(await second.part(), part);
    await first.page.locator('[data-key=refused]').waitFor();
    await first.sees('goes on in another tab');
    await second.recordNext();
    const later = await second.part();
    // And back.
    await first.page.bringToFront();
    await first.page.locator('[data-key=refused]').tap();
    await first.stands();
    await first.go('floor');
    assert.equal(await first.part(), later);
    await second.page.locator('[data-key=refused]').waitFor();
    first.sound();
    second.sound();
    await context.close();
});

/** Serves the worker with an engine that traps at its nth tap, before or after it did its work. */
async function trapping(context, nth, after) {
    await context.route('**/worker-*.js', async (route) => {
        const response = await route.fetch();
        const trap = `
            let count = 0;
            const real = WebAssembly.instantiateStreaming;
            WebAssembly.instantiateStreaming = async (...given) => {
                const { instance, module } = await real(...given);
                const exports = { ...instance.exports };
                const answer = exports.answer;
                exports.answer = (...args) => {
                    count += 1;
                    const traps = self.name === 'engine' && count === ${nth} && !(globalThis.trapped);
                    if (traps && !${after}) throw new WebAssembly.RuntimeError('unreachable');
                    const said = answer(...args);
                    if (traps) throw new WebAssembly.RuntimeError('unreachable');
                    return said;
                };
                return { instance: { exports }, module };
            };`;
        await route.fulfill({ response, body: `${trap}\n${await response.text()}` });
    }, { times: 1 });
}

for (const recorded of [false, true]) {
    test(`a trap ${recorded ? 'after' : 'before'} a tap is recorded replaces the worker`, async () => {
        const context = await fresh({ serviceWorkers: 'block' });
        // The demo first, with a sound engine; then a load of the page whose engine traps.
        const phone = await Phone.open(context, host.url);
        await phone.records();
        await phone.begin();
        const before = await phone.part();
        await trapping(context, 3, recorded);
        await phone.reload();
        await phone.recordNext();
        await phone.page.locator('.word').waitFor();
        await phone.settle();
        await phone.sees(recorded ? 'that tap is recorded' : 'was not recorded');
        const now = await phone.part();
        assert.equal(now !== before, recorded, `${before}, ${now}`);
        await phone.tap('no');
        await phone.recordNext();
        assert.notEqual(await phone.part(), now);
        await context.close();
    });
}

test('a copy of the records goes out and comes back', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.begin();
    await phone.recordNext();
    const part = await phone.part();
    await phone.tap('places');
    const comes = phone.page.waitForEvent('download');
    await phone.tap('copy');
    const copy = readFileSync(await (await comes).path());
    assert.equal(copy.subarray(0, 15).toString(), 'SQLite format 3');
    await phone.sees('It is whole');
    phone.sound();
    await context.close();

    // On another phone.
    const other = await Phone.open(await fresh(), host.url, { at: EVENING + 60_000 });
    await other.records(copy);
    await other.go('floor');
    assert.equal(await other.part(), part);
    // What is no copy is refused, and nothing changes.
    await other.tap('places');
    await other.restore(Buffer.from('SQLite format 3, so they say'));
    await other.go('floor');
    assert.equal(await other.part(), part);
    other.sound();
    await other.page.context().close();
});

test('a plan is dropped or pasted', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.page.evaluate((text) => {
        const data = new DataTransfer();
        data.setData('text/plain', text);
        document.dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true }));
    }, EVERY_KIND);
    await phone.page.locator('.foot .key.now').waitFor();
    await phone.settle();
    await phone.sees('Every kind of set');
    await phone.go('equipment');
    await phone.page.evaluate((text) => {
        const data = new DataTransfer();
        data.items.add(new File([text], 'gym.toml'));
        document.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    }, FULL_GYM);
    await phone.page.waitForTimeout(100);
    await phone.settle();
    await phone.sees('Boathouse cellar');
    phone.sound();
    await context.close();
});

test('a full disk refuses a tap with words and loses nothing', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.begin();
    await phone.recordNext();
    const part = await phone.part();
    const limit = await context.newCDPSession(phone.page);
    await limit.send('Storage.overrideQuotaForOrigin', { origin: new URL(host.url).origin, quotaSize: 1 });
    let refused = false;
    for (let taps = 0; taps < 40 && !refused; taps += 1) {
        await phone.recordNext();
        await phone.pass(45);
        refused = (await phone.page.locator('.word').count()) > 0;
    }
    const told = await phone.texts();
    await limit.send('Storage.overrideQuotaForOrigin', { origin: new URL(host.url).origin });
    assert.ok(refused, 'the browser had room all the same');
    assert.match(told, /full|room/i);
    await phone.go('floor');
    assert.notEqual(await phone.part(), null);
    assert.notEqual(part, null);
    await phone.tap('places');
    await phone.tap('check');
    await phone.sees('The records are whole');
    await context.close();
});
