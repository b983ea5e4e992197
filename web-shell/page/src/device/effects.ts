// What the core's effects come to on this device: the end of a rest heard and felt, a tap felt, the
// screen kept on; and the metronome of a set, which the lifter asks for here.

import type { Effect, FloorScreen, Screen } from '../contract';
import { Awake } from './awake';
import { Metronome } from './metronome';
import { Ring } from './ring';
import * as said from './said';

/** Whoever shows it. */
export interface Told {
    /** A rest is over. */
    rested(text: string): void;
    /** The screen can't be kept on. */
    goesDark(): void;
}

function floorOf(screen: Screen | null): FloorScreen | null {
    return screen && 'floor' in screen ? screen.floor.floor : null;
}

export function speak(text: string): void {
    if (!('speechSynthesis' in window)) return;
    speechSynthesis.cancel();
    speechSynthesis.speak(new SpeechSynthesisUtterance(text));
}

export class Effects {
    private readonly ring = new Ring((ring) => this.rested(ring.text, ring.next));
    private readonly metronome = new Metronome((says, begins) => this.beats(says, begins));
    private readonly awake = new Awake(() => this.told.goesDark());

    constructor(private readonly told: Told) {}

    carryOut(effects: readonly Effect[]): void {
        for (const effect of effects) {
            if (effect === 'cancel_ring') this.ring.cancel();
            else if ('ring_at' in effect) this.ring.set(effect.ring_at);
            else if ('haptic' in effect) this.ring.feel(effect.haptic.kind === 'recorded' ? [40] : [20, 60, 20]);
            else if ('keep_awake' in effect) this.awake.set(effect.keep_awake.on);
            else {
                const left: never = effect;
                throw new Error(String(left));
            }
        }
    }

    /** Nothing stands of what was asked for. */
    end(): void {
        this.metronome.stop();
        this.ring.cancel();
        this.awake.set(false);
    }

    /** A finger is on the page. */
    touched(): void {
        this.ring.touched();
    }

    /** Another screen stands: a metronome ends with its set. */
    stands(screen: Screen): void {
        this.metronome.stands(floorOf(screen)?.part ?? null);
    }

    get ticking(): boolean {
        return this.metronome.on;
    }

    turnMetronome(screen: Screen | null): void {
        const floor = floorOf(screen);
        if (this.metronome.on) this.metronome.stop();
        else if (floor?.part) this.metronome.start(floor.part, floor.beats ?? []);
    }

    get sessionRuns(): boolean {
        return this.awake.on;
    }

    private rested(text: string, next: string): void {
        this.told.rested(text);
        if (said.is('speaks')) speak(`${text} ${next}`);
    }

    private beats(says: string, begins: boolean): void {
        this.ring.tick(begins);
        if (said.is('speaks')) speak(says);
    }
}
