// For every hand, eye and ear: no violation that axe-core knows on any screen, the keyboard alone,
// large text, no motion, forced colours; and keys that a thumb hits.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { EVERY_KIND, FORMS, FULL_GYM, Phone, SHELL, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

const AXE = readFileSync(join(SHELL, 'node_modules/axe-core/axe.min.js'), 'utf8');

async function axe(phone, where) {
    await phone.page.evaluate(AXE);
    const { violations } = await phone.page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'] }));
    const said = violations.map((one) => `${one.id}: ${one.help}\n${one.nodes.map((node) => `  ${node.html}\n  ${node.failureSummary}`).join('\n')}`);
    assert.deepEqual(said, [], where);
}

const PLACES = ['today', 'weeks', 'lift', 'balance', 'equipment', 'plan', 'tally', 'care'];

for (const colorScheme of ['dark', 'light']) {
    test(`axe-core finds nothing on any screen, ${colorScheme}`, async () => {
        const context = await fresh({ colorScheme });
        const phone = await Phone.open(context, host.url);
        await axe(phone, 'with nothing on');
        await phone.tap('start');
        await axe(phone, 'how to begin');
        await phone.records();
        for (const place of PLACES) {
            await phone.go(place);
            await axe(phone, place);
        }
        for (const [name, goes] of Object.entries(FORMS)) {
            await goes(phone);
            await axe(phone, `form: ${name}`);
        }
        await phone.tap('places');
        await axe(phone, 'places');
        await phone.file('open plan', 'plan.toml', 'name = 3\nweeks = "x"\n');
        await axe(phone, 'a plan with faults');
        await phone.prepare(FULL_GYM, EVERY_KIND);
        await phone.begin();
        await axe(phone, 'the floor');
        for (let taps = 0; taps < 14; taps += 1) await phone.recordNext();
        await axe(phone, 'the floor resting, effort');
        await phone.tap('more');
        await axe(phone, 'a panel');
        await phone.page.keyboard.press('Escape');
        await phone.settle();
        if (await phone.has('pad')) {
            await phone.tap('pad');
            await axe(phone, 'the pad');
        }
        await context.close();
    });
}

test('a session goes by the keyboard alone', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    const { keyboard } = phone.page;
    const focused = () => phone.page.evaluate(() => document.activeElement?.getAttribute('data-key') ?? '');
    const to = async (key) => {
        for (let tabs = 0; tabs < 80; tabs += 1) {
            if ((await focused()) === key) return;
            await keyboard.press('Tab');
        }
        assert.fail(`no way to ${key} by Tab`);
    };
    // Another screen is read from its title on.
    assert.equal(await phone.page.evaluate(() => document.activeElement?.tagName), 'H1');
    const begin = await phone.page.locator('.foot .key.now').getAttribute('data-key');
    await to(begin);
    await keyboard.press('Enter');
    await phone.settle();
    assert.match(await phone.kind(), /floor/);
    const main = await phone.page.locator('.record > .key.large').getAttribute('data-key');
    await to(main);
    const before = await phone.part();
    await keyboard.press('Enter');
    await phone.settle();
    assert.notEqual(await phone.part(), before);
    // The key keeps the focus, so the next set is one press.
    assert.equal(await focused(), main);
    // A panel takes it, and gives it back to the page.
    await to(await phone.page.locator('.thumb .key', { hasText: 'More…' }).getAttribute('data-key'));
    await keyboard.press('Enter');
    await phone.settle();
    assert.equal(await phone.page.evaluate(() => document.activeElement?.id), 'panel-title');
    await keyboard.press('Escape');
    await phone.settle();
    assert.equal(await phone.page.locator('.panel').count(), 0);
    // The half of an effort is a key of its own.
    for (let taps = 0; taps < 30 && (await phone.page.locator('.half').count()) === 0; taps += 1) await phone.recordNext();
    const half = phone.page.locator('.half').nth(1);
    await to(await half.getAttribute('data-key'));
    assert.ok((await half.boundingBox()).width >= 40, 'it shows when it is reached');
    const earlier = await phone.part();
    await keyboard.press('Enter');
    await phone.settle();
    assert.notEqual(await phone.part(), earlier);
    await phone.page.context().close();
});

test('an effort key that is held records its half, once', async () => {
    const phone = await Phone.open(await fresh(), host.url, { at: null });
    await phone.records();
    await phone.begin();
    for (let taps = 0; taps < 30 && (await phone.page.locator('.half').count()) === 0; taps += 1) await phone.recordNext();
    const before = await phone.part();
    const key = phone.page.locator('.efforts > :nth-child(2) .key.large');
    const label = await key.getAttribute('data-half');
    const box = await key.boundingBox();
    await phone.page.mouse.move(box.x + 20, box.y + 20);
    await phone.page.mouse.down();
    await phone.page.waitForTimeout(800);
    await phone.page.mouse.up();
    await phone.settle();
    const after = await phone.part();
    assert.notEqual(after, before);
    await phone.page.waitForTimeout(300);
    await phone.settle();
    assert.equal(await phone.part(), after, 'once');
    await phone.finish();
    await phone.sees(label);
    await phone.page.context().close();
});

test('a countdown does not chatter', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    await phone.begin();
    await phone.page.evaluate(() => {
        window.said = [];
        new MutationObserver(() => window.said.push(document.getElementById('said').textContent)).observe(document.getElementById('said'), { childList: true, characterData: true, subtree: true });
    });
    await phone.recordNext();
    const figures = new Set();
    for (let seconds = 0; seconds < 30; seconds += 3) {
        await phone.page.clock.runFor(3000);
        await phone.settle();
        figures.add(await phone.text('.countdown'));
    }
    assert.ok(figures.size > 5, [...figures].join());
    assert.deepEqual(await phone.page.evaluate(() => window.said), []);
    // No live region holds the figures.
    assert.equal(await phone.page.locator('[aria-live] .countdown, .countdown[aria-live]').count(), 0);
    for (let seconds = 0; seconds < 90; seconds += 3) await phone.page.clock.runFor(3000);
    await phone.settle();
    const said = await phone.page.evaluate(() => window.said.filter((words) => words));
    assert.equal(said.length, 1, said.join('; '));
    await phone.page.context().close();
});

test('keys are high and apart, and what goes on the bar is never below the fold', async () => {
    for (const [width, height, text] of [[320, 568, 1], [320, 568, 2], [390, 780, 1], [390, 780, 2], [844, 390, 1], [820, 1180, 1]]) {
        const where = `${width} × ${height}, text ${text}`;
        const phone = await Phone.open(await fresh({ viewport: { width, height } }), host.url);
        await phone.records();
        await phone.page.evaluate((text) => {
            document.documentElement.style.fontSize = `${text * 100}%`;
            window.dispatchEvent(new Event('resize'));
        }, text);
        await phone.begin();
        for (let taps = 0; taps < 12; taps += 1) {
            const found = await phone.page.evaluate((width) => {
                const box = (element) => element.getBoundingClientRect();
                const wide = document.documentElement.scrollWidth;
                const out = [...document.querySelectorAll('#page *')].filter((one) => box(one).right > width + 1).map((one) => `${one.className} ${one.textContent.slice(0, 40)}`);
                const keys = [...document.querySelectorAll('.thumb .key')].map((key) => ({ name: key.textContent, ...box(key).toJSON() }));
                const bar = [...document.querySelectorAll('.bar-zone .total, .bar-zone .change, .bar-zone .sleeve, .bar-zone .middle')].map((part) => ({ name: part.className.baseVal ?? part.className, bottom: box(part).bottom, top: box(part).top, right: box(part).right }));
                const beside = box(document.querySelector('.thumb')).left >= box(document.querySelector('.read')).right - 1;
                const fold = beside ? innerHeight : box(document.querySelector('.thumb')).top;
                const main = document.querySelector('.record > .key.large, .efforts > :last-child .key');
                return { wide, out, keys, bar, fold, main: main ? box(main).toJSON() : null, spoken: [...document.querySelectorAll('.read *')].filter((one) => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline').map((one) => one.className.baseVal ?? one.className) };
            }, width);
            assert.ok(found.wide <= width, `${where}: as wide as ${found.wide}: ${found.out.join('; ')}`);
            for (const key of found.keys) {
                assert.ok(key.height >= 63.5 && key.width >= 63.5, `${where}: ${key.name} is ${key.width} × ${key.height}`);
                for (const other of found.keys) {
                    if (other === key || other.top < key.top) continue;
                    const across = Math.max(other.left - key.right, key.left - other.right);
                    const down = Math.max(other.top - key.bottom, key.top - other.bottom);
                    assert.ok(Math.max(across, down) >= (height / text < 640 ? 7.5 : 11.5), `${where}: ${key.name} and ${other.name} are ${across}, ${down} apart`);
                }
            }
            for (const part of found.bar) assert.ok(part.bottom <= found.fold + 1 && part.right <= width + 1, `${where}, tap ${taps}: ${part.name} ends at ${part.bottom}, the fold is at ${found.fold}`);
            if (found.main) assert.ok(found.main.bottom <= height + 1, `${where}: the key that records ends at ${found.main.bottom}`);
            assert.deepEqual(found.spoken, [], `${where}: cut off`);
            await phone.recordNext();
        }
        await phone.page.context().close();
    }
});

test('forms fit: nothing wider than the screen, nothing cut off, keys high and apart', async () => {
    for (const [width, height, text, locale] of [[320, 568, 1, 'en-GB'], [320, 568, 1, 'de-DE'], [320, 568, 2, 'en-GB'], [390, 780, 1, 'en-GB'], [820, 1180, 1, 'en-GB']]) {
        const phone = await Phone.open(await fresh({ viewport: { width, height }, locale }), host.url);
        await phone.records();
        await phone.page.evaluate((text) => {
            document.documentElement.style.fontSize = `${text * 100}%`;
            window.dispatchEvent(new Event('resize'));
        }, text);
        for (const [name, goes] of Object.entries(FORMS)) {
            await goes(phone);
            const where = `${name}, ${width} × ${height}, text ${text}, ${locale}`;
            const found = await phone.page.evaluate(() => {
                const box = (element) => element.getBoundingClientRect();
                const keys = [...document.querySelectorAll('.form .key, .foot .key')].map((key) => ({ name: `${key.closest('[data-row]')?.dataset.row}: ${key.textContent}`, foot: key.closest('.foot') !== null, ...box(key).toJSON() }));
                return { wide: Math.max(document.documentElement.scrollWidth, document.querySelector('.column').scrollWidth), keys, cut: [...document.querySelectorAll('.column *, .foot *')].filter((one) => one.scrollWidth > one.clientWidth + 1 && !['inline', 'none'].includes(getComputedStyle(one).display) && !one.classList.contains('hidden') && one.tagName !== 'INPUT').map((one) => `${one.className} ${one.textContent.slice(0, 40)}`) };
            });
            assert.ok(found.wide <= width, `${where}: as wide as ${found.wide}`);
            assert.deepEqual(found.cut, [], `${where}: cut off`);
            for (const [at, key] of found.keys.entries()) {
                assert.ok(key.height >= 47.5 && key.width >= 47.5 && key.right <= width + 0.5, `${where}: ${key.name} is ${key.width} × ${key.height}, ends at ${key.right}`);
                // What scrolls goes under the foot.
                for (const other of found.keys.slice(at + 1).filter((one) => one.foot === key.foot)) {
                    const across = Math.max(other.left - key.right, key.left - other.right);
                    const down = Math.max(other.top - key.bottom, key.top - other.bottom);
                    assert.ok(Math.max(across, down) >= 7.5, `${where}: ${key.name} and ${other.name} are ${across}, ${down} apart`);
                }
            }
        }
        await phone.page.context().close();
    }
});

test('nothing moves, and forced colours keep every key seen', async () => {
    const context = await fresh({ reducedMotion: 'reduce', forcedColors: 'active' });
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.begin();
    const moving = await phone.page.evaluate(() => [...document.querySelectorAll('*')].filter((one) => {
        const style = getComputedStyle(one);
        return style.animationName !== 'none' || style.transitionDuration.split(',').some((time) => parseFloat(time) > 0);
    }).length);
    assert.equal(moving, 0);
    const edges = await phone.page.locator('.thumb .key').evaluateAll((keys) => keys.map((key) => parseFloat(getComputedStyle(key).borderTopWidth)));
    assert.ok(edges.length > 3 && edges.every((width) => width >= 1));
    await context.close();
});

test('contrast: 7 to 1 for what is read at a distance, 4.5 elsewhere', () => {
    const style = readFileSync(join(SHELL, 'page/src/style.css'), 'utf8');
    const colours = (from) => Object.fromEntries([...from.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name, colour]));
    const [, dark] = style.split('@media (prefers-color-scheme: dark)');
    const light = colours(style.split('@media')[0]);
    const themes = { light, dark: { ...light, ...colours(dark.split('}\n}')[0]) } };
    // WCAG 2.2, "relative luminance" and "contrast ratio".
    const luminance = (colour) => {
        const [red, green, blue] = [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16) / 255).map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const ratio = (one, other) => {
        const [high, low] = [luminance(one), luminance(other)].sort((a, b) => b - a);
        return (high + 0.05) / (low + 0.05);
    };
    for (const [name, theme] of Object.entries(themes)) {
        for (const [ink, ground, least] of [['ink', 'ground', 7], ['on-brass', 'brass', 7], ['quiet', 'ground', 7], ['warn', 'ground', 4.5], ['outline', 'ground', 3]]) {
            const found = ratio(theme[ink], theme[ground]);
            assert.ok(found >= least, `${name}: ${ink} on ${ground} is ${found.toFixed(2)}`);
        }
    }
});
