// Which language the page's own words are in.

import { de } from './words/de';
import { en } from './words/en';
import type { Words } from './words/words';

/** By language: another one is another file, and a manifest beside it (public/manifest.LANGUAGE.webmanifest). */
const LANGUAGES: Readonly<Record<string, Words>> = { en, de };

/** The words for a language tag; English where there are none. */
export function wordsFor(tag: string): { readonly language: string; readonly words: Words } {
    const [language] = tag.toLowerCase().split('-');
    const words = language ? LANGUAGES[language] : undefined;
    return language && words ? { language, words } : { language: 'en', words: en };
}
