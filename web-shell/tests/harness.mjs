// A phone with the page on it: what a test taps and sees.

import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../tools/server.mjs';
import { CHROMIUM } from './browsers.mjs';

export const SHELL = fileURLToPath(new URL('..', import.meta.url));
export const SITE = join(SHELL, 'target/site');
const ANDROID = join(SHELL, '../android-shell/src/test/plans');
/** The evening that the tests' clock shows: Monday 12 January 2026, 18:05 in Berlin. */
export const EVENING = 1768237500000;
export const FULL_GYM = readFileSync(join(ANDROID, 'gym.toml'), 'utf8');
export const EVERY_KIND = readFileSync(join(ANDROID, 'every-kind.toml'), 'utf8');

/** The demo's records as of that evening, which the check makes. */
export const RECORDS = readFileSync(join(SHELL, 'target/demo.db'));

/** A page of ours with nothing on it, for what is asked of the worker alone. */
export const BLANK = '/blank';

/** Serves the built page; answers its address and what was asked of it. */
export async function site(folder = SITE) {
    const asked = [];
    const server = await serve(folder, 0, { also: (path) => (path === BLANK ? '<!doctype html><title>Blank</title>' : null), seen: (path) => asked.push(path) });
    return { url: `http://localhost:${server.address().port}/`, asked, close: () => new Promise((then) => { server.closeAllConnections?.(); server.close(then); }) };
}

export function worker() {
    const name = readdirSync(join(SITE, 'assets')).find((file) => /^worker-.*\.js$/.test(file));
    return `/assets/${name}`;
}

export const PHONE = { viewport: { width: 390, height: 780 }, deviceScaleFactor: 1, hasTouch: true, isMobile: true, locale: 'en-GB', timezoneId: 'Europe/Berlin', colorScheme: 'dark', acceptDownloads: true };

/** A browser with a profile of its own on disk, that can be killed. */
export class Device {
    constructor(options = {}) {
        this.options = { ...PHONE, ...options };
        this.profile = mkdtempSync(join(tmpdir(), 'barwright-profile-'));
    }

    async start() {
        this.context = await chromium.launchPersistentContext(this.profile, { ...CHROMIUM, ...this.options });
        return this.context;
    }

    /** Ends the browser as a battery does. */
    async kill() {
        const gone = new Promise((then) => this.context.once('close', then));
        for (const pid of this.pids()) {
            try {
                process.kill(pid, 'SIGKILL');
            } catch {
                // It went by itself.
            }
        }
        await gone;
        for (const lock of ['SingletonLock', 'SingletonSocket', 'SingletonCookie']) rmSync(join(this.profile, lock), { force: true });
    }

    pids() {
        const mine = [];
        for (const name of readdirSync('/proc')) {
            if (!/^\d+$/.test(name)) continue;
            try {
                if (readFileSync(`/proc/${name}/cmdline`, 'utf8').includes(this.profile)) mine.push(Number(name));
            } catch {
                // It went meanwhile.
            }
        }
        return mine;
    }

    async end() {
        await this.context?.close().catch(() => undefined);
        rmSync(this.profile, { recursive: true, force: true, maxRetries: 5 });
    }
}

let shared = null;

/** A fresh device in a browser that the tests of a file share: its own storage, its own clock. */
export async function fresh(options = {}) {
    shared ??= await chromium.launch(CHROMIUM);
    return shared.newContext({ ...PHONE, ...options });
}

export async function end() {
    await shared?.close();
    shared = null;
}

/** One tab with the page. */
export class Phone {
    constructor(page, url) {
        this.url = url;
        this.faults = [];
        this.strange = [];
        this.on(page);
    }

    on(page) {
        this.page = page;
        const { url } = this;
        page.on('pageerror', (error) => this.faults.push(error.message));
        page.on('console', (message) => {
            if (message.type() === 'error') this.faults.push(message.text());
        });
        page.on('request', (request) => {
            const { origin, protocol } = new URL(request.url());
            if (origin !== new URL(url).origin && protocol !== 'blob:') this.strange.push(request.url());
        });
    }

    /** A new page; `before` runs in it before any script of ours. */
    static async open(context, url, { at = EVENING, go = true, before = null } = {}) {
        const page = await context.newPage();
        if (before) await page.addInitScript(before);
        if (at) await page.clock.install({ time: at });
        const phone = new Phone(page, url);
        if (go) await phone.load();
        return phone;
    }

    /** The tab is killed, and another one opened a while later. */
    async again(seconds) {
        const at = await this.page.evaluate(() => Date.now());
        const context = this.page.context();
        await this.page.close();
        const page = await context.newPage();
        await page.clock.install({ time: at + seconds * 1000 });
        this.on(page);
        await this.load();
    }

    async load() {
        await this.page.goto(this.url);
        await this.stands();
    }

    async reload() {
        await this.page.reload();
        await this.stands();
    }

    async stands() {
        await this.page.locator('#page [data-key=places]').waitFor({ timeout: 20_000 });
        await this.settle();
    }

    /** Until nothing is waited for and it is painted. */
    async settle() {
        await this.page.locator('#page:not([data-busy])').waitFor({ timeout: 20_000 });
        await this.page.evaluate(() => new Promise((then) => { const real = window.__pwClock?.builtins?.requestAnimationFrame ?? requestAnimationFrame; real(() => then()); }));
    }

    async tap(key, within = '#page') {
        await this.page.locator(`${within} [data-key="${key}"]`).first().tap();
        await this.settle();
    }

    async tapLabel(label) {
        await this.page.locator('#page .key', { hasText: label }).first().tap();
        await this.settle();
    }

    async go(place) {
        await this.tap('places');
        await this.tap(`place ${place}`);
    }

    async type(field, text) {
        const input = this.page.locator(`[data-field="${field}"]`);
        await input.fill(text);
        await input.press('Enter');
        await this.settle();
    }

    /** Hands a file over through the browser's picker. */
    async file(key, name, text) {
        const chosen = this.page.waitForEvent('filechooser');
        await this.page.locator(`[data-key="${key}"]`).first().tap();
        await (await chosen).setFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text) });
        await this.page.waitForTimeout(50);
        await this.settle();
    }

    async has(key) {
        return (await this.page.locator(`#page [data-key="${key}"]`).count()) > 0;
    }

    texts() {
        return this.page.locator('#page').innerText();
    }

    text(selector) {
        return this.page.locator(selector).first().innerText();
    }

    async sees(words) {
        const texts = await this.texts();
        assert.ok(texts.includes(words), `“${words}” in:\n${texts}`);
    }

    kind() {
        return this.page.evaluate(() => document.querySelector('main')?.className ?? '');
    }

    part() {
        return this.page.locator('.upper').getAttribute('data-part');
    }

    /** The demo's history as the lifter's own records, from a copy. */
    async records(copy = RECORDS) {
        await this.tap('places');
        await this.restore(copy);
        await this.go('today');
    }

    async restore(copy) {
        const chosen = this.page.waitForEvent('filechooser');
        await this.tap('open records');
        await (await chosen).setFiles(typeof copy === 'string' ? copy : { name: 'barwright.backup', mimeType: 'application/octet-stream', buffer: copy });
        await this.page.locator('[data-key=yes]').tap();
        // Ten years are a hundred megabytes.
        await this.page.locator('#page:not([data-busy]) .word').waitFor({ timeout: 180_000 });
        await this.settle();
    }

    /** The demo as it is offered. */
    async demo() {
        await this.tap('demo');
        await this.page.locator('.row').first().waitFor({ timeout: 60_000 });
        await this.settle();
    }

    /** Another gym and plan, from files. */
    async prepare(gym, plan) {
        await this.tap('places');
        await this.file('open gym', 'gym.toml', gym);
        await this.tap('places');
        await this.file('open plan', 'plan.toml', plan);
        await this.page.locator('.foot .key.now').tap();
        await this.settle();
        await this.go('today');
    }

    async begin() {
        await this.page.locator('.foot .key.now').tap();
        await this.settle();
        // A clock far from what was recorded is asked about.
        if (await this.has('yes')) await this.tap('yes');
        assert.match(await this.kind(), /floor/);
    }

    /** Records whatever is next the way most taps do: one tap. Answers what stands on the key. */
    async recordNext() {
        const main = this.page.locator('.record > .key.large, .efforts [data-key="left-2"]').first();
        const efforts = await this.page.locator('.record > .key.large').count() === 0;
        const key = efforts ? this.page.locator('.efforts [data-key="left-2"]') : main;
        const label = await key.evaluate((element) => element.firstChild.textContent);
        await key.tap();
        await this.settle();
        return label;
    }

    /** Ends the session here, whatever is left of it. */
    async finish() {
        await this.tap('more');
        await this.tap('finish', '.panel');
        for (let asks = 0; asks < 3 && (await this.kind()).includes('floor'); asks += 1) await this.tap((await this.has('yes')) ? 'yes' : 'finish');
    }

    async pass(seconds) {
        await this.page.clock.fastForward(seconds * 1000);
        await this.settle();
    }

    /** What the tally says was done. */
    async done() {
        await this.go('tally');
        return this.page.locator('[data-rows=done] > .row').evaluateAll((rows) => rows.map((row) => [...row.querySelectorAll(':scope > .row-main .row-text, :scope > .row-main .detail')].map((line) => line.textContent.replace(/^✓ /, '')).join(', ')));
    }

    /** Nothing failed that nobody saw, and nothing was asked of anybody else. */
    sound() {
        assert.deepEqual(this.faults, []);
        assert.deepEqual(this.strange, []);
    }
}

export const SCREENS = join(SHELL, 'target/screens');
mkdirSync(SCREENS, { recursive: true });

/** Every form, and the way to it by its keys, with the demo's history as the lifter's own records. */
export const FORMS = {
    maxes: async (phone) => {
        await phone.go('today');
        await phone.tap('maxes');
    },
    'a-max': async (phone) => {
        await phone.go('today');
        await phone.tap('maxes');
        await phone.tap('down', '.form');
    },
    exercises: async (phone) => {
        await phone.go('today');
        await phone.tap('exercises');
    },
    'an-exercise': async (phone) => {
        await phone.go('today');
        await phone.tap('exercises');
        await phone.tap('open', '[data-row=back-squat]');
    },
    change: async (phone) => {
        await phone.go('today');
        await phone.tap('change');
    },
    liked: async (phone) => {
        await phone.go('equipment');
        await phone.tap('liked');
    },
    plan: async (phone) => {
        await phone.go('weeks');
        await phone.tap((await phone.has('mend-plan')) ? 'mend-plan' : 'go-on');
    },
    'plan-part': async (phone) => {
        await phone.go('weeks');
        await phone.tap((await phone.has('mend-plan')) ? 'mend-plan' : 'go-on');
        await phone.tap('open', '.form');
    },
    gym: async (phone) => {
        await phone.go('equipment');
        await phone.tap((await phone.has('go-on')) ? 'go-on' : 'mend');
    },
    'gym-fault': async (phone) => {
        await phone.go('equipment');
        await phone.tap((await phone.has('go-on')) ? 'go-on' : 'mend');
        const row = phone.page.locator('[data-row]', { has: phone.page.locator('.steps [data-key$=" typing"]') }).first();
        await row.locator('[data-key$=" typing"]').tap();
        await row.locator('input').fill('many');
        await row.locator('input').press('Enter');
        await phone.settle();
    },
};
