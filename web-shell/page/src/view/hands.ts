// What the views hand taps and texts to.

import type { Action, FormFile, Look } from '../contract';
import type { FileKind } from '../device/files';
import type { Words } from '../words/words';

/** How there is room. */
export interface Room {
    /** Pixels of a column. */
    readonly width: number;
    /** Pixels of ordinary type, as the reader has set it. */
    readonly type: number;
    /** A screen with little height to give, or large type on it: what goes on the bar comes first. */
    readonly low: boolean;
    /** So few letters across that a title has a line of its own. */
    readonly narrow: boolean;
}

export interface Hands {
    readonly words: Words;
    readonly room: Room;
    tap(action: Action): void;
    go(look: Look): void;
    /** `closes` is what the page itself opened to write in: it closes once the text is taken. */
    write(field: string, text: string, closes?: string): void;
    /** A file of the core's making: to the browser's downloads, or to the device's share sheet. */
    save(file: FormFile): void;
    share: ((file: FormFile) => void) | null;
    pick(kind: FileKind): void;
    /** Whether something that the page itself opens is open: a row's keys, a derivation. */
    isOpen(id: string): boolean;
    turn(id: string): void;
    /** Whether the metronome ticks; turning it begins with the set that is on, or stops it. */
    readonly ticking: boolean;
    turnMetronome(): void;
}
