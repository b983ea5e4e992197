// Pictures of every screen, to be looked at: target/screens/.

import assert from 'node:assert/strict';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { EVERY_KIND, FULL_GYM, Phone, SCREENS, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

for (const old of readdirSync(SCREENS)) rmSync(join(SCREENS, old));

const SIZES = {
    phone: { viewport: { width: 390, height: 780 }, colorScheme: 'dark', deviceScaleFactor: 2 },
    light: { viewport: { width: 390, height: 780 }, colorScheme: 'light' },
    small: { viewport: { width: 320, height: 568 }, colorScheme: 'dark' },
    side: { viewport: { width: 844, height: 390 }, colorScheme: 'dark' },
    tablet: { viewport: { width: 820, height: 1180 }, colorScheme: 'light' },
    large: { viewport: { width: 390, height: 780 }, colorScheme: 'dark', type: 2 },
};

for (const [size, { type, ...options }] of Object.entries(SIZES)) {
    test(`every screen, ${size}`, async () => {
        const context = await fresh(options);
        const phone = await Phone.open(context, host.url);
        let taken = 0;
        const take = async (name) => {
            await phone.page.screenshot({ path: join(SCREENS, `${name}-${size}.png`) });
            taken += 1;
        };
        if (type) {
            await phone.page.evaluate((type) => {
                document.documentElement.style.fontSize = `${type * 100}%`;
                window.dispatchEvent(new Event('resize'));
            }, type);
        }
        await take('nothing');
        await phone.records();
        await take('today');
        for (const place of ['weeks', 'lift', 'balance', 'equipment', 'plan', 'tally']) {
            await phone.go(place);
            await take(place);
        }
        await phone.tap('places');
        await take('places');
        await phone.file('open plan', 'plan.toml', EVERY_KIND.replace('sets = 1\nreps = 3', 'sets = 0\nreps = "many"'));
        await take('faults');
        await phone.prepare(FULL_GYM, EVERY_KIND);
        await phone.begin();
        await take('floor');
        let seen = new Set();
        for (let taps = 0; taps < 60 && !(await phone.part()).startsWith('null'); taps += 1) {
            const texts = await phone.texts();
            for (const [name, words] of [['cluster', 'block 2 of 3'], ['effort', 'left in you'], ['drop', 'Dropped to'], ['hold', 'Hold over'], ['rest', '130 kg']]) {
                if (!seen.has(name) && texts.includes(words)) {
                    seen.add(name);
                    await take(name);
                }
            }
            if (taps === 6) {
                await phone.tapLabel('More…');
                await take('more');
                await phone.page.locator('.panel > .key').last().tap();
                await phone.settle();
            }
            await phone.recordNext();
            await phone.page.clock.fastForward(3000);
            await phone.settle();
        }
        await take('end');
        assert.deepEqual([...seen].sort(), ['cluster', 'drop', 'effort', 'hold', 'rest']);
        for (const name of readdirSync(SCREENS)) assert.ok(statSync(join(SCREENS, name)).size > 3000, name);
        assert.ok(taken >= 17);
        phone.sound();
        await context.close();
    });
}
