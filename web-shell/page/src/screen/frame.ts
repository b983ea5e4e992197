// What stands around a screen, and the page of places.

import type { Look } from '../contract';
import { h, type Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { ownKey } from '../view/key';

/** A title of more letters is written smaller, and so is one with a longer word. */
const LONG = 24;
const LONG_WORD = 12;
const isLong = (title: string): boolean => title.length > LONG || title.split(' ').some((word) => word.length > LONG_WORD);

/** Something to be said, and what may be answered. */
export interface Word {
    readonly text: string;
    readonly yes: { readonly label: string; readonly does: () => void } | null;
    readonly no: string;
}

interface Frame {
    readonly kind: string;
    readonly title: string;
    readonly back: boolean;
    readonly word: Word | null;
    readonly view: Made;
    readonly inDemo: boolean;
    places(): void;
    goBack(): void;
    dismiss(): void;
}

export function frame(hands: Hands, { kind, title, back, word, view, inDemo, places, goBack, dismiss }: Frame): Made[] {
    const { words } = hands;
    const bare = kind === 'refused' || kind === 'begins';
    const header = h(
        'header',
        { key: 'head', class: hands.room.low && kind.startsWith('floor') ? 'head low' : hands.room.narrow ? 'head narrow' : 'head' },
        bare || !back ? null : h('button', { key: 'back', type: 'button', class: 'key plain small', 'data-key': 'back', 'aria-label': words.back, onclick: goBack }, h('span', { 'aria-hidden': 'true' }, '‹')),
        h('h1', { key: 'title', tabindex: '-1', class: isLong(title) ? 'long' : '' }, title),
        bare ? null : h('button', { key: 'places', type: 'button', class: 'key plain small', 'data-key': 'places', 'aria-expanded': String(kind === 'places'), onclick: places }, words.places),
    );
    const says = word
        ? h(
              'div',
              { key: 'word', class: 'word' },
              h('p', {}, word.text),
              h(
                  'div',
                  { class: 'keys' },
                  word.yes ? ownKey('yes', word.yes.label, word.yes.does, 'now') : null,
                  ownKey('no', word.no, dismiss),
              ),
          )
        : null;
    // Today says it by itself, and has the key that leads back.
    const invented = inDemo && !bare && kind.trim() !== 'today' ? h('p', { key: 'demo', class: 'in-demo' }, words.inDemo) : null;
    return [header, invented, says, { ...view, key: kind }].filter((part) => part !== null);
}

/** A page that can't go on by itself, or not yet. */
export function refusedView(title: string, key: { readonly label: string; readonly does: () => void } | null): Made {
    return h(
        'main',
        { class: 'sheet' },
        h('div', { class: 'column', tabindex: '0' }, h('p', { class: 'middle' }, title)),
        key ? h('div', { class: 'foot' }, ownKey('refused', key.label, key.does, 'now')) : null,
    );
}

interface Places {
    readonly places: readonly (readonly ['today' | 'floor' | 'tally' | 'weeks' | 'lift' | 'balance' | 'equipment' | 'plan' | 'care', Look])[];
    readonly share: (() => void) | null;
    readonly aloud: (() => void) | null;
    readonly speaks: boolean;
    readonly keeps: boolean | null;
    readonly install: (() => void) | null;
    readonly update: (() => void) | null;
    readonly sessionRuns: boolean;
    readonly version: string;
    copy(): void;
    check(): void;
    turnSpeaks(): void;
    promise(): void;
}

export function placesView(hands: Hands, to: Places): Made {
    const { words } = hands;
    const updates = to.update
        ? to.sessionRuns
            ? [h('p', { key: 'waits', class: 'strong' }, words.updateWaits)]
            : [h('p', { key: 'waits', class: 'strong' }, words.updateReady), ownKey('update', words.update, to.update, 'now')]
        : [];
    return h(
        'main',
        { class: 'sheet' },
        h(
            'div',
            { class: 'column', tabindex: '0' },
            updates,
            h('nav', { key: 'places', class: 'keys two', 'aria-label': words.placesTitle }, to.places.map(([name, look]) => ownKey(`place ${name}`, words[name], () => hands.go(look)))),
            h('h2', { key: 'files', class: 'middle' }, words.files),
            h('p', { key: 'drop', class: 'quiet' }, words.drop),
            h(
                'div',
                { key: 'file-keys', class: 'keys two' },
                ownKey('open plan', words.opens.plan, () => hands.pick('plan')),
                ownKey('open gym', words.opens.gym, () => hands.pick('gym')),
                ownKey('copy', words.copy, to.copy),
                to.share ? ownKey('share', words.share, to.share) : null,
                ownKey('check', words.check, to.check),
                ownKey('open records', words.opens.records, () => hands.pick('records')),
            ),
            to.keeps === null ? null : h('p', { key: 'keeps', class: to.keeps ? 'quiet' : 'warnings' }, to.keeps ? words.promised : words.notPromised),
            to.keeps === false ? ownKey('promise', words.askPromise, to.promise) : null,
            h('h2', { key: 'device', class: 'middle' }, words.device),
            h(
                'div',
                { key: 'device-keys', class: 'keys two' },
                to.aloud ? ownKey('aloud', words.aloud, to.aloud) : null,
                ownKey('speaks', words.speaks, to.turnSpeaks, 'plain', to.speaks),
                to.install ? ownKey('install', words.install, to.install) : null,
            ),
            h('p', { key: 'version', class: 'quiet' }, to.version),
        ),
    );
}
