// What the page and the engine's worker say to each other.

import type { Action, Answer, EngineError, Intent, Look, Reading } from '../contract';

/** What is asked of the engine at a reading of the clocks. */
export type Line =
    | { readonly reading: Reading; readonly intent: Intent }
    | { readonly reading: Reading; readonly action: Action }
    | { readonly reading: Reading; readonly view: Look };

/** What the worker is asked. */
export type Call =
    | { readonly kind: 'open'; readonly name: string; readonly locale: string }
    | { readonly kind: 'line'; readonly line: Line }
    | { readonly kind: 'suspend' }
    | { readonly kind: 'close' }
    | { readonly kind: 'check' }
    | { readonly kind: 'versions' }
    | { readonly kind: 'copy' }
    | { readonly kind: 'restore'; readonly name: string; readonly locale: string; readonly bytes: Uint8Array<ArrayBuffer> }
    | { readonly kind: 'recover'; readonly name: string; readonly locale: string };

/** An answer that shows a screen. */
export type Shown = { readonly answer: Answer } | { readonly error: EngineError };

/** An answer that shows none. */
export type Done<T> = { readonly done: T } | { readonly error: EngineError };

/** What a browser lacks, so that nothing can be kept. */
export type Lack = 'files' | 'busy' | 'unread' | 'program';

/** What the worker answers. */
export type Reply =
    /** As the engine wrote it; and how many entries the log has after it. */
    | { readonly kind: 'said'; readonly json: string; readonly entries: number }
    | { readonly kind: 'bytes'; readonly bytes: Uint8Array<ArrayBuffer> }
    /** The engine is unfit: the worker has to be replaced. */
    | { readonly kind: 'trapped'; readonly detail: string }
    /** The worker could not begin. */
    | { readonly kind: 'lacks'; readonly lack: Lack; readonly detail: string };

/** A question with its number; answers carry the same. */
export interface Asked {
    readonly id: number;
    readonly call: Call;
}

/** An answer. */
export interface Answered {
    readonly id: number;
    readonly reply: Reply;
}
