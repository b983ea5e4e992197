// The metronome of a tempo set: a tick at each beat of a repetition, until it is stopped or the set is
// over. The beats are the core's; the page only waits for them.

import type { Beat } from '../contract';

/** Time to get set before the first repetition. */
const LEAD_MS = 3000;
/** What a movement “as fast as possible” is given before the next repetition begins. */
const FAST_MS = 1000;

export class Metronome {
    private timer: ReturnType<typeof setTimeout> | undefined;
    private part: string | null = null;
    private beats: readonly Beat[] = [];
    private next = 0;
    private due = 0;

    /** `ticks` is told what a beat says, and whether a repetition begins with it. */
    constructor(private readonly ticks: (says: string, begins: boolean) => void) {}

    get on(): boolean {
        return this.part !== null;
    }

    start(part: string, beats: readonly Beat[]): void {
        this.stop();
        if (beats.length === 0) return;
        this.part = part;
        this.beats = beats;
        this.next = 0;
        this.due = performance.now() + LEAD_MS;
        this.waits();
    }

    stop(): void {
        clearTimeout(this.timer);
        this.part = null;
    }

    /** The part that is on; another one ends it. */
    stands(part: string | null): void {
        if (part !== this.part) this.stop();
    }

    private waits(): void {
        // From where a beat was due, not from when it was heard: delays don't add up.
        this.timer = setTimeout(() => this.beat(), Math.max(0, this.due - performance.now()));
    }

    private beat(): void {
        const beat = this.beats[this.next];
        if (!beat || !this.on) return;
        this.ticks(beat.says, this.next === 0);
        this.due += beat.ms === 0 ? FAST_MS : beat.ms;
        this.next = (this.next + 1) % this.beats.length;
        this.waits();
    }
}
