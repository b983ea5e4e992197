// Whole sessions by touch.

import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { EVERY_KIND, FULL_GYM, Phone, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

async function everyKind() {
    const context = await fresh();
    const phone = await Phone.open(context, host.url);
    await phone.records();
    await phone.prepare(FULL_GYM, EVERY_KIND);
    await phone.begin();
    return phone;
}

/** Every tap that the evening takes, one a part, with something done in between. */
async function wholeEvening(phone, between = async () => undefined) {
    const taps = [];
    while (!(await phone.part()).startsWith('null')) {
        await between(taps.length);
        taps.push(await phone.recordNext());
        await phone.pass(45);
        assert.ok(taps.length < 80, `it never ends: ${taps}`);
    }
    await phone.tap('finish');
    await phone.sees('One of each');
    return taps;
}

/** What the tally says after one tap for each part, with two in reserve where the call asks. */
const DONE = `
Box jump
Speed set 1 of 1: bodyweight × 3
Power clean
Ramp set 1 of 1: 40 kg × 5
Speed set 1 of 2: 57.5 kg × 1
Speed set 2 of 2: 57.5 kg × 1
Deadlift
Ramp set 1 of 1: 80 kg × 5
Set 1 of 1: 130 kg × 2 + 2 + 1
Bench press
Ramp set 1 of 3: 20 kg × 8
Ramp set 2 of 3: 35 kg × 3
Ramp set 3 of 3: 50 kg × 2
Top set 1: 67.5 kg × 3, RPE 8
Back-off set 2 of 2: 57.5 kg × 6
Rear-foot-raised split squat
Set 1 of 1, left: 16 kg × 8, 2 in reserve
Set 1 of 1, right: 16 kg × 8, 2 in reserve
Seated cable row
Ramp set 1 of 2: 20 kg × 8
Ramp set 2 of 2: 30 kg × 4
Set 1 of 1: 40 kg × 8, 2 in reserve
Overhead press
Ramp set 1 of 1: 25 kg × 5
Set 1 of 2: 45 kg × 5
Set 2 of 2: 45 kg × 5
Chin-up
Set 1: bodyweight × 4
Set 2: bodyweight × 4
Leg extension
Set 1 of 1: 40 kg × 12, 30 kg × 12, 25 kg × 12, 2 in reserve
Lateral raise
Set 1 of 1: 8 kg × 9 + 5
Leg press
Set 1 of 1: 100 kg × 10 + 3 + 3 + 3 + 1, 2 in reserve
Dip
Set 1 of 1: bodyweight × 6 + 5, 2 in reserve
Leg curl
Set 1: pin 7 × 12, 2 in reserve
Set 2: pin 7 × 12, 2 in reserve
Assisted pull-up
Set 1 of 1: 20 kg assistance × 6, 2 in reserve
Face pull
Set 1 of 1: red band, doubled × 15
Plank
Set 1 of 1: bodyweight, 30 s
Farmer's carry
Set 1 of 1: 28 kg, 30 m`.trim().split('\n');

test('an ordinary session is one tap a set', async () => {
    const phone = await Phone.open(await fresh(), host.url);
    await phone.records();
    await phone.tap('places');
    await phone.file('open gym', 'gym.toml', FULL_GYM);
    await phone.go('today');
    await phone.begin();
    let taps = 0;
    while (!(await phone.part()).startsWith('null') && !(await phone.texts()).includes('Choose a load')) {
        const before = await phone.part();
        await phone.recordNext();
        taps += 1;
        assert.notEqual(await phone.part(), before, 'one tap did not do');
        await phone.pass(45);
        assert.ok(taps < 80);
    }
    assert.ok(taps >= 15, `only ${taps}`);
    // What the plan leaves open is chosen by the lifter.
    await phone.tap('more');
    await phone.tap('load', '.panel');
    await phone.page.locator('.panel input').first().fill('40 kg');
    await phone.page.locator('.panel input').first().press('Enter');
    await phone.settle();
    for (let last = 0; !(await phone.part()).startsWith('null'); last += 1) {
        await phone.recordNext();
        await phone.pass(45);
        assert.ok(last < 20, 'it never ends');
    }
    await phone.tap('finish');
    await phone.sees('Back squat');
    phone.sound();
    await phone.page.context().close();
});

test('every kind of set is one tap a part', async () => {
    const phone = await everyKind();
    const taps = await wholeEvening(phone);
    assert.deepEqual(await phone.done(), DONE);
    // A clock to start, 41 parts, and nothing else.
    assert.equal(taps.length, 42, taps.join());
    phone.sound();
    await phone.page.context().close();
});

test('interrupted everywhere it loses nothing', async () => {
    const phone = await everyKind();
    const interrupt = async (turn) => {
        const { page } = phone;
        switch (turn % 8) {
            case 0:
                await phone.reload();
                break;
            case 1:
                await phone.again(20);
                await phone.go('floor');
                break;
            case 2:
                await page.setViewportSize({ width: 844, height: 390 });
                break;
            case 3:
                await page.setViewportSize({ width: 390, height: 780 });
                break;
            case 4:
                if ((await page.locator('[data-key=undo]').count()) > 0) {
                    await phone.tap('undo');
                    await phone.tap('redo');
                }
                break;
            case 5: {
                // The wall clock is set on by an hour and a half, and back.
                const now = await page.evaluate(() => Date.now());
                await page.clock.setSystemTime(now + 5_400_000);
                await phone.go('floor');
                await page.clock.setSystemTime(now);
                await phone.go('floor');
                break;
            }
            case 6:
                await phone.tap('more');
                await phone.tap('pause');
                await phone.reload();
                await phone.tap('resume');
                break;
            default:
                await phone.tap('ended');
                await phone.reload();
                await phone.page.goBack();
                await phone.settle();
        }
        if (!(await phone.kind()).includes('floor')) await phone.go('floor');
    };
    await wholeEvening(phone, async (turn) => {
        const before = (await phone.part()).split(' ')[0];
        await interrupt(turn);
        const now = (await phone.part()).split(' ')[0];
        assert.equal(now, before, `after interruption ${turn}:\n${await phone.texts()}`);
    });
    assert.deepEqual(await phone.done(), DONE);
    phone.sound();
    await phone.page.context().close();
});
