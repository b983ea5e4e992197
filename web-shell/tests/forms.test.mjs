// What is made and mended by hand, by touch: the same view for every form.

import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, test } from 'node:test';
import { Device, EVERY_KIND, FULL_GYM, Phone, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

/** A key by what it says aloud, since many say “+”. */
async function says(phone, words) {
    await phone.page.locator(`#page [aria-label*="${words}"]`).first().tap();
    await phone.settle();
}

/** Opens a row's entry and writes into it. */
async function types(phone, row, text) {
    await phone.tap(`${row} typing`);
    const entry = phone.page.locator(`[data-row="${row}"] input`);
    assert.equal(await entry.evaluate((one) => one === document.activeElement), true, 'the hand is in it');
    await entry.fill(text);
    await entry.press('Enter');
    await phone.settle();
}

test('a gym is made by touch, outlives a killed browser, and is used', async () => {
    const device = new Device();
    try {
        let phone = await Phone.open(await device.start(), host.url);
        await phone.go('equipment');
        await phone.tapLabel('New gym, empty, kg');
        await phone.sees('Gym: My gym');
        await phone.tapLabel('Long bar');
        await phone.sees('20 kg and nothing else');
        await phone.tapLabel('A small set');
        await phone.sees('20 kg to 167.5 kg, every 2.5 kg');
        await says(phone, '2.5 kg: more');
        await phone.sees('2 pairs');
        const at = await phone.page.evaluate(() => Date.now());
        await device.kill();
        phone = await Phone.open(await device.start(), host.url, { at: at + 20_000 });
        await phone.go('equipment');
        await phone.tap('go-on');
        await phone.sees('20 kg to 172.5 kg');
        await phone.tap('undo');
        await phone.sees('20 kg to 167.5 kg');
        // What can only be typed stands open.
        const name = phone.page.locator('[data-row=name] input');
        await name.fill('Garage');
        await name.press('Enter');
        await phone.settle();
        await phone.sees('Gym: Garage');
        assert.equal(await name.inputValue(), 'Garage');
        await phone.tap('take-up');
        await phone.go('equipment');
        assert.equal(await phone.text('h1'), 'Garage');
        phone.sound();
    } finally {
        await device.end();
    }
});

test('what is wrong stands beside its row, and what was typed with it', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.go('equipment');
    await phone.tapLabel('New gym, full, kg');
    const rows = await phone.page.locator('[data-row]').evaluateAll((all) => all.filter((row) => row.querySelector('.steps')).map((row) => row.dataset.row));
    const plate = (await phone.page.locator('[data-row]', { hasText: /^25 kg/ }).first().getAttribute('data-row')) ?? rows[0];
    await types(phone, plate, 'many');
    await phone.sees('thing to put right');
    const row = phone.page.locator(`[data-row="${plate}"]`);
    assert.match(await row.getAttribute('class'), /warns/);
    assert.ok((await row.locator('.warnings p').count()) > 0);
    // An entry that was asked for closes once what it holds is taken, and the hand stays in the row.
    assert.equal(await row.locator('input').count(), 0);
    assert.equal(await phone.page.evaluate(() => document.activeElement?.closest('[data-row]')?.dataset.row), plate);
    assert.equal(await phone.page.locator('[data-key=take-up]').getAttribute('aria-disabled'), 'true');
    await phone.tap('undo');
    assert.equal(await phone.page.locator('.form .warnings').count(), 0);
    phone.sound();
    await phone.page.context().close();
});

test('a max is changed with its loads shown first', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    await phone.tapLabel('Maxes');
    const before = await phone.texts();
    const steps = phone.page.locator('.steps').first();
    await steps.locator('[data-key=down]').tap();
    await phone.settle();
    assert.notEqual(await phone.texts(), before);
    await phone.sees(', was ');
    // Nothing counts before it is taken.
    await phone.tapLabel('Take ');
    await phone.tap('undo');
    phone.sound();
    await phone.page.context().close();
});

test('exercises are looked for, read, and their entry stands open', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.tapLabel('Exercises');
    const find = phone.page.locator('[data-row=find] input');
    await find.fill('front squat');
    await find.press('Enter');
    await phone.settle();
    await phone.sees('Front squat');
    assert.ok(!(await phone.texts()).includes('Plank'));
    assert.equal(await find.inputValue(), 'front squat');
    await phone.page.locator('[data-row=front-squat] [data-key=open]').tap();
    await phone.settle();
    assert.equal(await phone.text('h1'), 'Front squat');
    await phone.page.goBack();
    await phone.settle();
    phone.sound();
    await phone.page.context().close();
});

test('a plan is made by hand and adopted, each step on disk', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.page.locator('[data-key^="new"], [data-key^="make"]').first().tap();
    await phone.settle();
    const title = await phone.text('h1');
    assert.ok((await phone.page.locator('[data-rows=form] .row').count()) > 2);
    await phone.reload();
    assert.equal(await phone.text('h1'), title, 'a reload stays in it');
    // The number of weeks, one more.
    const up = phone.page.locator('.steps [data-key=up]:not([aria-disabled])').first();
    const text = await phone.page.locator('[data-rows=form]').innerText();
    await up.tap();
    await phone.settle();
    assert.notEqual(await phone.page.locator('[data-rows=form]').innerText(), text);
    await phone.tap('undo');
    assert.equal(await phone.page.locator('[data-rows=form]').innerText(), text);
    await phone.tap('redo');
    assert.notEqual(await phone.page.locator('[data-rows=form]').innerText(), text);
    phone.sound();
    await phone.page.context().close();
});

test('a form opens a plan file, and what it makes goes out as one', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.tap('start');
    assert.equal(await phone.text('h1'), 'How to begin');
    await phone.file('open', 'plan.toml', EVERY_KIND);
    await phone.sees('Every kind of set');
    await phone.go('equipment');
    await phone.file('open', 'gym.toml', FULL_GYM);
    await phone.sees('Boathouse cellar');
    const gym = await phone.text('h1');
    const comes = phone.page.waitForEvent('download');
    await phone.tap('save');
    const file = await comes;
    assert.match(file.suggestedFilename(), /\.toml$/);
    const text = readFileSync(await file.path(), 'utf8');
    assert.ok(text.includes(`\nname = "${gym}"\n`) || text.startsWith(`name = "${gym}"\n`), text.slice(0, 400));
    phone.sound();
    await phone.page.context().close();
});

test('records of another phone are opened, shown, and taken by a key', async () => {
    const old = await Phone.open(await fresh(), host.url);
    await old.records();
    await old.tap('records');
    await old.tap('all');
    const comes = old.page.waitForEvent('download');
    await old.tap('save');
    const text = readFileSync(await (await comes).path(), 'utf8');
    old.sound();
    await old.page.context().close();

    const phone = await Phone.open(await fresh(), host.url);
    await phone.tap('start');
    await phone.file('open', 'records.jsonl', text);
    await phone.sees('Nothing was changed.');
    await phone.tap('go-on');
    await phone.sees('Taken in: ');
    await phone.reload();
    await phone.go('today');
    assert.ok(await phone.has('records'));
    // What was taken is known here now.
    await phone.tap('records');
    await phone.tap('open');
    await phone.file('open', 'records.jsonl', text);
    await phone.sees('Nothing is new');
    await phone.go('today');
    phone.sound();
    await phone.page.context().close();
});

test('the demo is one key away, survives a reload, and is left by one', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.demo();
    await phone.begin();
    await phone.recordNext();
    const part = await phone.part();
    await phone.reload();
    assert.equal(await phone.part(), part);
    await phone.go('weeks');
    await phone.sees('all invented');
    await phone.go('today');
    await phone.tap('leave-demo');
    assert.equal(await phone.page.locator('[data-key=demo]').count(), 1);
    await phone.reload();
    assert.equal(await phone.page.locator('[data-key=demo]').count(), 1);
    // What was done in it is still there, in a file of its own.
    await phone.demo();
    await phone.go('floor');
    assert.equal((await phone.part()).split(' ')[0], part.split(' ')[0]);
    phone.sound();
    await phone.page.context().close();
});

test('what is far from the call is typed, by touch and on a keyboard', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    await phone.begin();
    const figure = () => phone.text('.figure-text');
    const before = await figure();
    await phone.tap('pad');
    for (const digit of ['1', '7']) await phone.tap(`digit-${digit}`);
    await phone.sees('17');
    await phone.tap('rub-out');
    await phone.page.keyboard.press('9');
    await phone.settle();
    await phone.tap('set');
    assert.match(await figure(), /^19 /);
    assert.notEqual(before, await figure());
    assert.match(await phone.page.locator('[data-key=pad]').textContent(), /19 .*: Type what was done/);
    await phone.recordNext();
    await phone.go('floor');
    phone.sound();
    await phone.page.context().close();
});

test('the cautions can be opened at any time', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.go('care');
    assert.ok((await phone.page.locator('.row.depth-0').count()) > 2);
    await phone.tap('under-18');
    assert.equal(await phone.page.locator('[data-key=under-18]').getAttribute('aria-pressed'), 'true');
    await phone.tap('coach');
    phone.sound();
    await phone.page.context().close();
});
