// Pictures of every screen, to be looked at: target/screens/.

import assert from 'node:assert/strict';
import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { EVERY_KIND, FORMS, FULL_GYM, Phone, SCREENS, end, fresh, site } from './harness.mjs';

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
/** Each language at the sizes where its words have the least room, or are seen best. */
const LANGUAGES = { en: ['en-GB', Object.keys(SIZES)], de: ['de-DE', ['phone', 'small']] };

/** What is told apart on the floor, by its English words, or by the tap at which English had it. */
const MOMENTS = [['cluster', 'block 2 of 3'], ['effort', 'reps in reserve:'], ['drop', 'Dropped to'], ['hold', 'Start the hold'], ['rest', '130 kg']];
const seenAt = new Map();

for (const [language, [locale, sizes]] of Object.entries(LANGUAGES)) {
    for (const size of sizes) {
        test(`every screen, ${language}, ${size}`, async () => {
            const { type, ...options } = SIZES[size];
            const context = await fresh({ ...options, locale });
            const phone = await Phone.open(context, host.url);
            const taken = [];
            const take = async (name) => {
                const file = `${name}-${size}${language === 'en' ? '' : `-${language}`}.png`;
                await phone.page.screenshot({ path: join(SCREENS, file) });
                taken.push(file);
            };
            if (type) {
                await phone.page.evaluate((type) => {
                    document.documentElement.style.fontSize = `${type * 100}%`;
                    window.dispatchEvent(new Event('resize'));
                }, type);
            }
            await take('nothing');
            await phone.tap('start');
            await take('start');
            await phone.records();
            await take('today');
            for (const place of ['weeks', 'lift', 'balance', 'equipment', 'plan', 'tally', 'care']) {
                await phone.go(place);
                await take(place);
            }
            for (const [name, goes] of Object.entries(FORMS)) {
                await goes(phone);
                await take(`form-${name}`);
            }
            await phone.tap('places');
            await take('places');
            await phone.file('open plan', 'plan.toml', EVERY_KIND.replace('sets = 1\nreps = 3', 'sets = 0\nreps = "many"'));
            await take('faults');
            await phone.prepare(FULL_GYM, EVERY_KIND);
            await phone.begin();
            await take('floor');
            const seen = new Set();
            for (let taps = 0; taps < 60 && !(await phone.part()).startsWith('null'); taps += 1) {
                const texts = await phone.texts();
                for (const [name, words] of MOMENTS) {
                    if (seen.has(name)) continue;
                    if (language === 'en' && texts.includes(words)) seenAt.set(name, taps);
                    if (seenAt.get(name) !== taps) continue;
                    seen.add(name);
                    await take(name);
                }
                if (taps === 6) {
                    await phone.tap('more');
                    await take('more');
                    await phone.page.locator('.panel > .key').last().tap();
                    await phone.settle();
                }
                if (taps === 7 && (await phone.has('pad'))) {
                    await phone.tap('pad');
                    await phone.tap('digit-4');
                    await take('pad');
                    await phone.page.locator('.panel > .key').last().tap();
                    await phone.settle();
                }
                await phone.recordNext();
                await phone.page.clock.fastForward(3000);
                await phone.settle();
            }
            await take('end');
            assert.deepEqual([...seen].sort(), MOMENTS.map(([name]) => name).sort());
            for (const name of taken) assert.ok(statSync(join(SCREENS, name)).size > 3000, name);
            assert.ok(taken.length >= 28);
            phone.sound();
            await context.close();
        });
    }
}
