// The end of a rest: three short marks before it, one at it, heard and felt as far as the browser
// goes. Set by the deadline, so nothing runs in between.

import { until } from '../clock';

const MARKS_MS = [-3000, -2000, -1000];
const SHORT_S = 0.09;
const LONG_S = 0.5;
const TICK_S = 0.05;
const PITCH = { mark: 660, end: 880, beat: 440, begins: 620 };
const FELT_MS = [400, 120, 400];

export interface RingAt {
    readonly wall_ms: number;
    readonly text: string;
    readonly next: string;
}

/** What could be heard of a ring, for tests: when, as wall time. */
export interface Heard {
    readonly rings: number[];
}

export class Ring {
    private context: AudioContext | null = null;
    private tones: OscillatorNode[] = [];
    private at: RingAt | null = null;
    private timer: ReturnType<typeof setTimeout> | undefined;

    constructor(private readonly over: (ring: RingAt) => void) {}

    /** Asked for anew; replaces the one before. */
    set(at: RingAt): void {
        this.cancel();
        const left = until(at.wall_ms);
        if (left <= 0) return;
        this.at = at;
        this.timer = setTimeout(() => this.ended(at), left);
        this.sound();
    }

    cancel(): void {
        clearTimeout(this.timer);
        this.at = null;
        for (const tone of this.tones) tone.stop();
        this.tones = [];
    }

    /** A finger is on the page: from now on the browser lets it be heard. */
    touched(): void {
        try {
            this.context ??= new AudioContext();
            if (this.context.state === 'running') return;
            void this.context.resume().then(() => {
                if (this.tones.length === 0) this.sound();
            });
        } catch {
            // A browser without sound: what is felt and shown remains.
        }
    }

    /** A beat of a tempo; the one that a repetition begins with is higher. */
    tick(begins: boolean): void {
        if (this.context?.state === 'running') this.makes(this.context, 0, TICK_S, begins ? PITCH.begins : PITCH.beat);
    }

    feel(pattern: readonly number[]): void {
        if ('vibrate' in navigator) navigator.vibrate([...pattern]);
    }

    private sound(): void {
        const context = this.context;
        if (!this.at || context?.state !== 'running') return;
        const end = until(this.at.wall_ms);
        for (const before of MARKS_MS) if (end + before > 0) this.tone(context, end + before, SHORT_S, PITCH.mark);
        this.tone(context, end, LONG_S, PITCH.end);
    }

    private tone(context: AudioContext, afterMs: number, seconds: number, pitch: number): void {
        this.tones.push(this.makes(context, afterMs, seconds, pitch));
    }

    private makes(context: AudioContext, afterMs: number, seconds: number, pitch: number): OscillatorNode {
        const tone = new OscillatorNode(context, { frequency: pitch, type: 'triangle' });
        const loud = new GainNode(context, { gain: 0.6 });
        tone.connect(loud).connect(context.destination);
        const begin = context.currentTime + afterMs / 1000;
        tone.start(begin);
        tone.stop(begin + seconds);
        return tone;
    }

    private ended(at: RingAt): void {
        if (this.at !== at) return;
        this.at = null;
        this.tones = [];
        this.feel(FELT_MS);
        this.over(at);
    }
}
