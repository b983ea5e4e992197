// Nothing runs that is not ours, nothing goes anywhere else, and what somebody wrote is text.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { FULL_GYM, Phone, SITE, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

/** Names that would be more than names wherever they became markup. */
const EVIL = ['<img src=x onerror=window.ran=1>', '</p><script>window.ran=1</script>', '"><svg onload=window.ran=1>', '{{constructor}}', 'javascript:window.ran=1', '&lt;b&gt;'];

const PLAN = `name = '${EVIL[0]}'
weeks = 1

[[session]]
name = '${EVIL[1]}'

[[session.exercise]]
name = "Bench press"
ramp = "none"
sets = 1
reps = 5
load = "60 kg"
notes = ['${EVIL[2]}']
cues = ['${EVIL[3]}', '${EVIL[4]}', '${EVIL[5]}']
`;

test('names are text, never markup', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.tap('places');
    await phone.file('open gym', 'gym.toml', FULL_GYM.replaceAll('Boathouse cellar', EVIL[2]).replaceAll('"' + EVIL[2] + '"', `'${EVIL[2]}'`));
    await phone.sees(EVIL[2]);
    await phone.tap('places');
    await phone.file('open plan', 'plan.toml', PLAN.replace(/^notes.*\n/m, ''));
    await phone.sees(EVIL[0]);
    const faults = await phone.page.locator('.fault').count();
    await phone.page.locator('.foot .key.now').tap();
    await phone.settle();
    await phone.go('today');
    await phone.sees(EVIL[1]);
    await phone.begin();
    for (const words of EVIL.slice(3)) await phone.sees(words);
    // A file that is not understood is shown as it is written.
    await phone.tap('places');
    await phone.file('open plan', 'plan.toml', `${EVIL[0]}\n${PLAN}`);
    await phone.sees(EVIL[0]);
    assert.ok((await phone.page.locator('.fault').count()) > faults);
    assert.equal(await phone.page.evaluate(() => window.ran), undefined);
    assert.equal(await phone.page.locator('#page img, #page script, #page [onerror], #page [onload]').count(), 0);
    phone.sound();
    await context.close();
});

test('nothing but this site is asked for anything, and the worker asks no more', async () => {
    const context = await fresh();
    const wanted = [];
    context.on('request', (request) => wanted.push(request.url()));
    const phone = await Phone.open(context, host.url);
    await phone.records();
    for (const place of ['today', 'weeks', 'lift', 'balance', 'equipment', 'plan', 'tally']) await phone.go(place);
    await phone.go('today');
    await phone.begin();
    await phone.recordNext();
    const strange = wanted.filter((address) => new URL(address).origin !== new URL(host.url).origin && !address.startsWith('blob:'));
    assert.deepEqual(strange, []);
    assert.ok(wanted.length >= 5, 'requests are seen');
    phone.sound();
    await context.close();
});

test('the browser itself would stop a script, a style, a request and an address of others', async () => {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    const tried = await phone.page.evaluate(async () => {
        const stopped = [];
        document.addEventListener('securitypolicyviolation', (event) => stopped.push(event.effectiveDirective));
        const attempt = (does) => {
            try {
                does();
            } catch {
                // Refused at once.
            }
        };
        attempt(() => {
            const script = document.createElement('script');
            script.textContent = 'window.ran = 1';
            document.body.append(script);
        });
        attempt(() => document.body.insertAdjacentHTML('beforeend', '<b>x</b>'));
        attempt(() => {
            document.body.setAttribute('style', 'color: red');
        });
        attempt(() => {
            const image = new Image();
            image.src = 'http://127.0.0.2:9/x.png';
        });
        // Not from here: what a test evaluates is let through.
        setTimeout(() => attempt(() => (0, eval)('window.ran = 1')));
        attempt(() => new Worker('other.js'));
        await fetch('http://127.0.0.2:9/').catch(() => undefined);
        await new Promise((then) => setTimeout(then, 300));
        return { stopped: [...new Set(stopped)].sort(), ran: window.ran };
    });
    assert.equal(tried.ran, undefined);
    for (const directive of ['connect-src', 'img-src', 'require-trusted-types-for', 'style-src-attr']) assert.ok(tried.stopped.includes(directive), `${directive} in ${tried.stopped}`);
    await context.close();
});

test('what is built names no other place, and everything is in the list that is kept', () => {
    const walk = (folder) => readdirSync(folder, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? walk(join(folder, entry.name)).map((name) => `${entry.name}/${name}`) : [entry.name]));
    const files = walk(SITE);
    const kept = readFileSync(join(SITE, 'sw.js'), 'utf8');
    for (const name of files) {
        if (/\.(js|css|html|webmanifest|svg)$/.test(name)) {
            const text = readFileSync(join(SITE, name), 'utf8');
            const addresses = (text.match(/https?:\/\/[^\s"'`)]+/g) ?? []).filter((address) => !address.startsWith('http://www.w3.org/'));
            assert.deepEqual(addresses, [], name);
            assert.ok(!/\son\w+=|<style|javascript:/i.test(name.endsWith('.html') ? text : ''), `${name} has a script or style in it`);
        }
        if (name !== 'sw.js') assert.ok(kept.includes(name === 'index.html' ? './' : name), `${name} is not kept`);
    }
    assert.ok(files.length >= 9);
});

test('a newer version waits for the session to end, and says so', async () => {
    const { cpSync, mkdtempSync, rmSync, writeFileSync } = await import('node:fs');
    const { tmpdir } = await import('node:os');
    const folder = mkdtempSync(join(tmpdir(), 'barwright-site-'));
    cpSync(SITE, folder, { recursive: true });
    const own = await site(folder);
    const context = await fresh();
    try {
        const phone = await Phone.open(context, own.url);
        await phone.page.waitForFunction(() => navigator.serviceWorker.controller !== null);
        await phone.records();
        await phone.begin();
        // Another version: a file more, and the list that names it.
        writeFileSync(join(folder, 'sw.js'), readFileSync(join(folder, 'sw.js'), 'utf8').replace(/= "[0-9a-f]{12}"/, '= "newer0000000"'));
        await phone.page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
        await phone.page.waitForFunction(async () => (await navigator.serviceWorker.getRegistration()).waiting !== null);
        await phone.tap('places');
        await phone.page.getByText('It waits until the session is over').waitFor();
        assert.equal(await phone.page.locator('[data-key=update]').count(), 0);
        await phone.tap('place floor');
        await phone.recordNext();
        await phone.finish();
        await phone.tap('places');
        const loads = phone.page.waitForEvent('load');
        await phone.page.locator('[data-key=update]').tap();
        await loads;
        await phone.stands();
        assert.deepEqual(await phone.page.evaluate(() => caches.keys()), ['barwright newer0000000']);
        phone.sound();
    } finally {
        await context.close();
        await own.close();
        rmSync(folder, { recursive: true, force: true });
    }
});
