// Every scripted session through the page's own worker: the same files that Rust, Kotlin and Swift
// replay, with whole answers compared, in the browser's private files.

import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { BLANK, SHELL, end, fresh, site, worker } from './harness.mjs';

const host = await site();
after(async () => {
    await end();
    await host.close();
});

const folder = join(SHELL, '../tests/vectors');
const scripts = ['', 'invalid'].flatMap((under) => readdirSync(join(folder, under)).filter((name) => name.endsWith('.json')).map((name) => join(under, name)));

/** Replays a script in the page; answers what each step came to. */
async function replay(page, name, script) {
    return page.evaluate(
        async ({ address, name, script }) => {
            const begin = () => {
                const worker = new Worker(address, { type: 'module' });
                const waiting = new Map();
                let id = 0;
                worker.onmessage = ({ data }) => waiting.get(data.id)?.(data.reply);
                const ask = (call) => new Promise((then, fails) => {
                    id += 1;
                    worker.onerror = (event) => fails(new Error(event.message));
                    waiting.set(id, then);
                    worker.postMessage({ id, call });
                });
                return { worker, ask };
            };
            const open = async () => {
                const begun = begin();
                const reply = await begun.ask({ kind: 'open', name, locale: script.locale });
                if (reply.json !== '{"done":null}') throw new Error(JSON.stringify(reply));
                return begun;
            };
            let now = await open();
            const answers = [];
            for (const step of script.steps) {
                if (step.kill) {
                    // Without a word; the next one waits for the browser to let go of its files.
                    now.worker.terminate();
                    now = await open();
                    answers.push(null);
                } else if (step.suspend) {
                    await now.ask({ kind: 'suspend' });
                    answers.push(null);
                } else {
                    const { reading, intent, action, look } = step;
                    const what = intent !== undefined ? { intent } : action !== undefined ? { action } : { view: look };
                    const reply = await now.ask({ kind: 'line', line: { reading, ...what } });
                    if (reply.kind !== 'said') throw new Error(JSON.stringify(reply));
                    answers.push(JSON.parse(reply.json));
                }
            }
            await now.ask({ kind: 'close' });
            now.worker.terminate();
            return answers;
        },
        { address: worker(), name, script },
    );
}

/** Whether every number in it is one that JavaScript has. */
function exact(value) {
    if (typeof value === 'number') return Number.isSafeInteger(value);
    return typeof value !== 'object' || value === null || Object.values(value).every(exact);
}

test('every script is answered as written', async () => {
    const context = await fresh();
    const page = await context.newPage();
    await page.goto(`${host.url.slice(0, -1)}${BLANK}`);
    assert.ok(scripts.length > 20, `${scripts.length} scripts`);
    let steps = 0;
    let unsaid = 0;
    for (const name of scripts) {
        const script = JSON.parse(readFileSync(join(folder, name), 'utf8'));
        // A number that a page can't write down, as the smallest of 64 bits, can't be asked for either.
        const sayable = script.steps.filter((step) => step.expected === undefined || exact({ ...step, expected: null }));
        unsaid += script.steps.length - sayable.length;
        script.steps = sayable;
        const answers = await replay(page, `${name.replaceAll('/', ' ')}.db`, script);
        script.steps.forEach((step, at) => {
            assert.deepEqual(answers[at], step.expected ?? null, `${name}, step “${step.name}”`);
            steps += 1;
        });
    }
    assert.ok(steps > 300 && unsaid <= 4, `${steps} steps, ${unsaid} left out`);
    await context.close();
});
