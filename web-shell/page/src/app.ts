// Holds what is shown, hands taps to the core and carries its effects to the device.

import type { Action, Answer, EngineError, FormFile, Intent, Look, Screen } from './contract';
import { read, until } from './clock';
import { Core, Lacks, type Replaced } from './core/core';
import type { Shown } from './core/protocol';
import { Records } from './core/records';
import { refusal } from './core/refusal';
import { Effects, speak } from './device/effects';
import * as files from './device/files';
import type { FileKind } from './device/files';
import { askPromise, Install, promised } from './device/install';
import * as said from './device/said';
import { Tab } from './device/tab';
import { worker } from './device/trust';
import { wordsFor } from './language';
import { PLACES, TODAY, ofGym, same, toDemo } from './screen/looks';
import { page, type Page } from './screen/screens';
import { panelName } from './screen/floor';
import { frame, placesView, refusedView, type Word } from './screen/frame';
import { show, type Made } from './view/dom';
import type { Hands } from './view/hands';
import * as reading from './view/reading';

const RECORDS = 'barwright.db';
/** By then an answer is on the screen. */
const SHOWN_MS = 500;

export class App implements Hands {
    readonly words = wordsFor(navigator.language).words;
    private readonly core = new Core(worker, navigator.language, (waits) => this.into.toggleAttribute('data-busy', waits));
    private readonly records = new Records(this.core, this.words, { says: (text) => this.says(text), refused: (error) => this.refused(error), begunAnew: () => this.begunAnew() });
    private readonly effects = new Effects({ rested: (text) => this.rested(text), goesDark: () => this.goesDark() });
    private readonly tab = new Tab(() => this.leaves());
    private readonly install = new Install(() => this.draw());
    private readonly opened = new Set<string>();
    private look: Look | null = null;
    /** The look of the page that is shown; the one asked for may still be on its way. */
    private standing: Look | null = null;
    private past: Look[] = [];
    private screen: Screen | null = null;
    private word: Word | null = null;
    private places = false;
    private refusal: { readonly title: string; readonly key: { readonly label: string; readonly does: () => void } | null } | null = null;
    private keeps: boolean | null = null;
    private version = '';
    private timer: ReturnType<typeof setTimeout> | undefined;
    private pushed = false;
    private drawn = '';

    constructor(
        private readonly into: HTMLElement,
        private readonly live: HTMLElement,
    ) {}

    // The life of the page

    async begin(): Promise<void> {
        const kept = said.trail();
        this.look = kept.look;
        this.past = [...kept.past];
        window.addEventListener('resize', () => this.draw());
        window.addEventListener('popstate', () => {
            this.pushed = false;
            this.back();
        });
        for (const event of ['pointerdown', 'keydown']) document.addEventListener(event, () => this.effects.touched(), { capture: true });
        document.addEventListener('keydown', (event) => {
            if (event.key === 'Escape' && this.canGoBack()) this.back();
            else reading.typesOnPad(this.into, event);
        });
        document.addEventListener('visibilitychange', () => {
            if (document.visibilityState === 'visible' && this.tab.has) void this.comesToFront();
        });
        files.listen(
            () => (ofGym(this.look) ? 'gym' : 'plan'),
            (file) => this.came(file),
        );
        this.draw();
        void this.install.begin();
        if (await this.tab.take()) await this.opens();
        else this.refuse(this.words.elsewhere, this.words.useHere, () => void this.takesOver());
    }

    private async takesOver(): Promise<void> {
        await this.tab.takeOver();
        this.refusal = null;
        await this.opens();
    }

    /** Another tab takes the records. */
    private async leaves(): Promise<void> {
        clearTimeout(this.timer);
        this.effects.end();
        try {
            await this.core.end();
        } finally {
            this.core.drop();
            this.refuse(this.words.taken, this.words.useHere, () => void this.takesOver());
        }
    }

    private async opens(): Promise<void> {
        try {
            const opened = await this.core.open(RECORDS);
            if ('error' in opened) {
                this.refused(opened.error);
                return;
            }
            this.keeps = await promised();
            const versions = await this.core.versions();
            if ('done' in versions) this.version = versions.done[0];
            await this.backToDemo();
            await this.comesToFront();
        } catch (why) {
            this.lacks(why);
        }
    }

    /** The engine opens the lifter's own records: the key that led to the demo does so again. */
    private async backToDemo(): Promise<void> {
        const to = said.demo();
        if (to && 'error' in (await this.core.act(to, read()))) said.keepDemo(null);
    }

    private lacks(why: unknown): void {
        if (!(why instanceof Lacks)) throw why;
        console.error(why.lack, why.detail);
        this.core.drop();
        this.refuse(this.words.lacks[why.lack], this.words.again, () => location.reload());
    }

    private refuse(title: string, label: string, does: () => void): void {
        this.refusal = { title, key: { label, does } };
        this.draw();
    }

    /** The program came to the front: the core looks at the time, and says what stands. */
    private async comesToFront(): Promise<void> {
        const answer = await this.core.dispatch('wake', read());
        if ('answer' in answer) this.effects.carryOut(answer.answer.effects);
        if (this.look && 'answer' in answer) await this.refresh();
        else this.arrived(answer);
    }

    // Taps

    tap(action: Action): void {
        if ('do' in action) void this.act(action);
        else this.go(action.show.look);
    }

    write(field: string, text: string, closes = ''): void {
        void this.act({ do: { intent: { write: { field, text, sure: false } } } }, closes);
    }

    private dispatch(intent: Intent): void {
        void this.act({ do: { intent } });
    }

    private async act(action: Action, closes = ''): Promise<void> {
        try {
            const answer = await this.core.act(action, read());
            if ('answer' in answer) {
                this.opened.delete(closes);
                this.effects.carryOut(answer.answer.effects);
            }
            this.arrived(answer);
            const demo = toDemo(action);
            if (demo !== null && 'answer' in answer) {
                said.keepDemo(demo ? action : null);
                await this.amongOthers();
            }
            // The first thing recorded is worth keeping. A browser that asks the user is made to once.
            if (this.keeps === false && !said.is('asked to keep')) {
                said.say('asked to keep', true);
                void this.promise();
            }
        } catch (why) {
            this.lacks(why);
        }
    }

    /** A tap's answer: what it shows is where the lifter is now. */
    private arrived(answer: Shown | Replaced): void {
        if ('recorded' in answer) {
            const words = `${answer.recorded ? this.words.trappedRecorded : this.words.trapped} ${answer.detail}`;
            void this.backToDemo()
                .then(() => this.comesToFront())
                .then(() => this.says(words));
            return;
        }
        if ('error' in answer) {
            this.refused(answer.error);
            return;
        }
        const { look } = answer.answer;
        if (!same(look, this.look)) this.past = same(look, TODAY) ? [] : [TODAY];
        this.shows(answer.answer);
    }

    private refused(error: EngineError): void {
        const { text, anyway, storage } = refusal(error);
        if (anyway) this.asks(text, this.words.anyway, () => this.tap(anyway));
        // With no screen yet the file itself may be at fault: the core refuses when it is not.
        else if (storage && !this.screen) this.asks(text, this.words.recover, () => void this.records.recover());
        else this.says(text);
    }

    private says(text: string): void {
        this.word = { text, yes: null, no: this.words.understood };
        this.draw();
        this.announce(text);
    }

    private asks(text: string, label: string, does: () => void): void {
        this.word = { text, yes: { label, does }, no: this.words.notNow };
        this.draw();
        this.announce(text);
    }

    /** Said once to a screen reader. */
    private announce(text: string): void {
        if (this.live.textContent === text) this.live.textContent = '';
        this.live.textContent = text;
    }

    // Places

    go(look: Look): void {
        if (this.look && !same(this.look, look)) this.past.push(this.look);
        this.places = false;
        this.look = look;
        void this.view(look);
    }

    private canGoBack(): boolean {
        return this.places || this.panel() !== null || this.past.length > 0;
    }

    private panel(): Action | null {
        return this.screen && 'floor' in this.screen ? (this.screen.floor.floor.panel?.close.action ?? null) : null;
    }

    private back(): void {
        const panel = this.panel();
        if (this.places) {
            this.places = false;
            void this.refresh();
        } else if (panel) {
            this.tap(panel);
        } else {
            const to = this.past.pop();
            if (!to) return;
            this.look = to;
            void this.view(to);
        }
    }

    private async refresh(): Promise<void> {
        if (this.look) await this.view(this.look);
        else this.draw();
    }

    private async view(wanted: Look, answered = true): Promise<void> {
        try {
            const answer = await this.core.view(wanted, read());
            // A later tap may have gone elsewhere meanwhile; its own answer follows.
            if (this.look !== wanted) return;
            if ('answer' in answer) {
                this.shows(answer.answer, answered);
                return;
            }
            // There is no such screen: stay where we were.
            this.look = this.standing;
            if (this.past.at(-1) === this.standing) this.past.pop();
            if ('error' in answer) this.refused(answer.error);
            else this.arrived(answer);
            if (!this.screen) this.go(TODAY);
        } catch (why) {
            this.lacks(why);
        }
    }

    // Screens

    private shows(answer: Answer, answered = true): void {
        this.screen = answer.screen;
        this.look = answer.look;
        this.standing = answer.look;
        // A word that waits for its answer outlasts the figures.
        if (answered) this.word = null;
        this.effects.stands(this.screen);
        said.keepTrail({ look: this.look, past: this.past });
        this.draw();
        clearTimeout(this.timer);
        if (answer.wakes_at !== null) this.timer = setTimeout(() => this.looksAgain(), until(answer.wakes_at));
    }

    /** The screen changes by itself: looked at once, while it is looked at. */
    private looksAgain(): void {
        if (this.look && !this.places && document.visibilityState === 'visible') void this.view(this.look, false);
    }

    /** Draws what is shown. Nothing is asked of the core. */
    draw(): void {
        const now = this.page();
        const moved = now.kind !== this.drawn;
        this.drawn = now.kind;
        const row = reading.row();
        show(this.into, frame(this, { title: now.title, back: this.canGoBack(), word: this.word, view: now.view, places: () => this.turnPlaces(), goBack: () => this.back(), dismiss: () => this.dismiss(), kind: now.kind, inDemo: said.demo() !== null }));
        document.title = now.title ? `${now.title} · Barwright` : 'Barwright';
        if (moved && this.screen) reading.begins(this.into);
        else if (row !== undefined && document.activeElement === document.body) reading.returnsTo(this.into, row);
        this.keepsHistory();
    }

    private page(): Page {
        const own = (kind: string, title: string, view: Made): Page => ({ kind, title, aloud: title, view });
        if (this.refusal) return own('refused', 'Barwright', refusedView(this.refusal.title, this.refusal.key));
        if (this.places) return own('places', this.words.placesTitle, this.placesPage());
        if (!this.screen) return own('begins', 'Barwright', refusedView(this.words.begins, null));
        const shown = page(this, this.screen);
        const open = 'floor' in this.screen ? this.screen.floor.floor.panel : null;
        const panel = open ? panelName(open) : '';
        return { ...shown, kind: `${shown.kind} ${panel}` };
    }

    /** The device's own way back leads where the page's does. */
    private keepsHistory(): void {
        if (!this.canGoBack() || this.pushed) return;
        history.pushState(null, '');
        this.pushed = true;
    }

    private dismiss(): void {
        this.word = null;
        this.draw();
        if (!this.screen) void this.opens();
    }

    isOpen(id: string): boolean {
        return this.opened.has(id);
    }

    turn(id: string): void {
        if (!this.opened.delete(id)) this.opened.add(id);
        this.draw();
    }

    get room(): Hands['room'] {
        const { innerWidth: wide, innerHeight: high } = window;
        const beside = wide > high && wide >= 640;
        const type = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
        return { width: (beside ? wide * 0.5 : wide) - 32, type, low: high / type < 40, narrow: wide / type < 16 };
    }

    // Effects

    /** Said once, when it ends; never while it counts. */
    private rested(text: string): void {
        this.announce(text);
        this.looksAgain();
    }

    get ticking(): boolean {
        return this.effects.ticking;
    }

    turnMetronome(): void {
        this.effects.turnMetronome(this.screen);
        this.draw();
    }

    private goesDark(): void {
        // Once, and when the answer that wanted it kept on is shown.
        setTimeout(() => {
            if (said.is('told dark') || this.word) return;
            said.say('told dark', true);
            this.says(this.words.darkScreen);
        }, SHOWN_MS);
    }

    // The page of places

    private turnPlaces(): void {
        this.places = !this.places;
        if (this.places) this.draw();
        else void this.refresh();
    }

    private placesPage(): Made {
        const { screen } = this;
        return placesView(this, {
            places: PLACES,
            copy: () => void this.records.copy(files.save),
            share: files.canShare(files.RECORDS) ? () => void this.records.copy((file) => void files.share(file)) : null,
            check: () => void this.records.check(),
            aloud: screen
                ? () => {
                      this.places = false;
                      speak(page(this, screen).aloud);
                      void this.refresh();
                  }
                : null,
            speaks: said.is('speaks'),
            turnSpeaks: () => {
                said.say('speaks', !said.is('speaks'));
                this.draw();
            },
            keeps: this.keeps,
            promise: () => void this.promise(),
            install: this.install.canInstall ? () => this.install.install() : null,
            update: this.install.updateWaits ? () => this.install.update() : null,
            sessionRuns: this.effects.sessionRuns,
            version: this.words.version(this.version),
        });
    }

    private async promise(): Promise<void> {
        await askPromise();
        this.keeps = await promised();
        this.draw();
    }

    // Files

    pick(kind: FileKind): void {
        files.pick(kind, (file) => this.came(file));
    }

    private came(file: files.Came | null): void {
        if (!this.screen) return;
        if (!file) this.says(this.words.unreadable);
        else if (file.kind === 'plan') this.go({ plan: { text: file.text, week: null } });
        else if (file.kind === 'gym') {
            this.places = false;
            this.dispatch({ add_gym: { text: file.text } });
        } else this.asks(this.words.restoreAsk, this.words.restore, () => void this.records.restore(file.bytes));
    }

    save(file: FormFile): void {
        files.save(files.text(file));
    }

    get share(): Hands['share'] {
        return files.canShare(files.TEXT) ? (file) => void files.share(files.sharedText(file)) : null;
    }

    private async begunAnew(): Promise<void> {
        this.places = false;
        this.look = null;
        this.past = [];
        this.word = null;
        await this.comesToFront();
    }

    /** Other records are in front: nothing stands of what the device was asked for before. */
    private async amongOthers(): Promise<void> {
        this.effects.end();
        this.past = [];
        this.places = false;
        await this.comesToFront();
    }
}
