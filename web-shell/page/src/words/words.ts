// The few words of the page itself; those of the screens come from the core.

import type { FileKind } from '../view/hands';
import type { Lack } from '../core/protocol';
import { de } from './de';
import { en } from './en';

export interface Words {
    readonly description: string;
    readonly places: string;
    readonly placesTitle: string;
    readonly today: string;
    readonly floor: string;
    readonly tally: string;
    readonly weeks: string;
    readonly lift: string;
    readonly balance: string;
    readonly equipment: string;
    readonly plan: string;
    readonly care: string;
    readonly back: string;
    readonly files: string;
    readonly opens: Readonly<Record<FileKind, string>>;
    readonly drop: string;
    readonly copy: string;
    readonly copied: string;
    readonly share: string;
    readonly check: string;
    readonly whole: (entries: number) => string;
    readonly restoreAsk: string;
    readonly restore: string;
    readonly unreadable: string;
    readonly device: string;
    readonly aloud: string;
    readonly speaks: string;
    readonly promised: string;
    readonly notPromised: string;
    readonly askPromise: string;
    readonly install: string;
    readonly updateWaits: string;
    readonly updateReady: string;
    readonly update: string;
    readonly version: (program: string) => string;
    readonly inDemo: string;
    readonly why: string;
    readonly whyThisLoad: string;
    readonly more: string;
    readonly close: string;
    readonly beats: string;
    readonly keep: string;
    readonly type: string;
    readonly saveFile: string;
    readonly shareFile: string;
    readonly anyway: string;
    readonly notNow: string;
    readonly understood: string;
    readonly recover: string;
    readonly place: (line: number, column: number, kind: string) => string;
    readonly kindsOfWeek: string;
    readonly begins: string;
    readonly darkScreen: string;
    readonly elsewhere: string;
    readonly taken: string;
    readonly useHere: string;
    readonly again: string;
    readonly trapped: string;
    readonly trappedRecorded: string;
    readonly lacks: Readonly<Record<Lack | 'secure' | 'old', string>>;
}

/** By language: another one is another file, and a manifest beside it (public/manifest.LANGUAGE.webmanifest). */
const LANGUAGES: Readonly<Record<string, Words>> = { en, de };

/** The words for a language tag; English where there are none. */
export function wordsFor(tag: string): { readonly language: string; readonly words: Words } {
    const [language] = tag.toLowerCase().split('-');
    const words = language ? LANGUAGES[language] : undefined;
    return language && words ? { language, words } : { language: 'en', words: en };
}
