// The metronome: ticks by the called tempo while its set lasts, and is silent when it is stopped or the
// set is over. What is made to sound is written down in the place of the browser's own oscillator.

import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { EVENING, FULL_GYM, Phone, end, fresh, site } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

/** Down in 3 s, a second at the bottom, up as fast as possible, a second at the top. */
const TEMPO = '3-1-X-1';
const PLAN = `name = "By the clock"
weeks = 1

[[session]]
name = "Slow"

[[session.exercise]]
name = "Seated cable row"
sets = 2
reps = 3
rest = "60 s"
load = "40 kg"
ramp = "none"
tempo = "${TEMPO}"

[[session.exercise]]
name = "Box jump"
sets = 1
reps = 3
rest = "60 s"
`;

/** Before the first repetition, and what “as fast as possible” is given. */
const LEAD = 3000;
const FAST = 1000;
/** One repetition: when each of its movements begins, from its own beginning. */
const BEATS = [0, 3000, 4000, 4000 + FAST];
const REPETITION = 5000 + FAST;

function recording() {
    window.ticks = [];
    window.spoken = [];
    window.OscillatorNode = class {
        constructor(context, options) {
            this.pitch = options.frequency;
        }
        connect(to) {
            return to;
        }
        start() {
            window.ticks.push({ at: Date.now(), pitch: this.pitch });
        }
        stop() {}
    };
    window.GainNode = class {
        connect(to) {
            return to;
        }
    };
    window.AudioContext = class {
        state = 'running';
        currentTime = 0;
        destination = {};
    };
    speechSynthesis.speak = (said) => window.spoken.push(said.text);
}

async function slow(context) {
    const phone = await Phone.open(context, host.url, { before: recording });
    await phone.records();
    await phone.prepare(FULL_GYM, PLAN);
    await phone.begin();
    await phone.page.clock.pauseAt(EVENING + 3_600_000);
    await phone.settle();
    return phone;
}

/** Lets time pass, and answers what was heard meanwhile: milliseconds after that, and the pitch. */
async function heard(phone, ms) {
    const { page } = phone;
    const from = await page.evaluate(() => {
        window.ticks = [];
        return Date.now();
    });
    await page.clock.runFor(ms);
    const ticks = await page.evaluate(() => window.ticks);
    return ticks.map(({ at, pitch }) => ({ at: at - from, pitch }));
}

const pressed = (phone) => phone.page.locator('[data-key=beats]').getAttribute('aria-pressed');

test('it ticks to the called tempo, higher where a repetition begins, until it is stopped', async () => {
    const phone = await slow(await fresh());
    await phone.sees(TEMPO);
    assert.equal(await pressed(phone), 'false');
    assert.deepEqual(await heard(phone, 10_000), [], 'nothing before it is asked for');

    await phone.tap('beats');
    assert.equal(await pressed(phone), 'true');
    const ticks = await heard(phone, LEAD + 3 * REPETITION - 500);
    const due = [0, 1, 2].flatMap((nth) => BEATS.map((at) => LEAD + nth * REPETITION + at));
    assert.equal(ticks.length, due.length, JSON.stringify(ticks));
    // Delays don't add up: the last is as near as the first.
    for (const [nth, { at }] of ticks.entries()) assert.ok(Math.abs(at - due[nth]) <= 60, `${nth}: ${at}, due at ${due[nth]}`);
    const begins = Math.max(...ticks.map(({ pitch }) => pitch));
    assert.deepEqual(ticks.map(({ pitch }) => pitch === begins), due.map((_, nth) => nth % BEATS.length === 0));

    await phone.tap('beats');
    assert.equal(await pressed(phone), 'false');
    assert.deepEqual(await heard(phone, 20_000), [], 'nothing after it was stopped');
    assert.deepEqual(await phone.page.evaluate(() => window.spoken), [], 'nothing is spoken that was not asked for');
    phone.sound();
    await phone.page.context().close();
});

test('it ends with its set, and a lift without a tempo has none', async () => {
    const phone = await slow(await fresh());
    await phone.tap('beats');
    assert.equal((await heard(phone, LEAD + 500)).length, 1);
    await phone.recordNext();
    // The end of the rest is set with the tap; no beat sounds from here on.
    const pitches = new Set((await heard(phone, 40_000)).map(({ pitch }) => pitch));
    assert.deepEqual([...pitches], []);
    assert.equal(await pressed(phone), 'false', 'the next set has its own, and it waits to be asked for');
    await phone.recordNext();
    await phone.sees('Box jump');
    assert.equal(await phone.has('beats'), false);
    phone.sound();
    await phone.page.context().close();
});

test('with speech on, the movements are said', async () => {
    const phone = await slow(await fresh());
    await phone.tap('places');
    await phone.tap('speaks');
    await phone.tap('place floor');
    await phone.tap('beats');
    await heard(phone, LEAD + REPETITION - 500);
    assert.deepEqual(await phone.page.evaluate(() => window.spoken), ['lower', 'pause', 'lift', 'pause']);
    await phone.page.context().close();
});
