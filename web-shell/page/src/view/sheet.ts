// A sheet: one column that scrolls, its keys under it within reach. More keys than a thumb takes in
// stand at the sheet's end.

import type { FormFile, Key } from '../contract';
import { h, type Kid, type Made } from './dom';
import type { FileKind } from '../device/files';
import type { Hands } from './hands';
import { keyView, keysView, ownKey } from './key';

const MOST_AT_FOOT = 6;
/** So few other keys that handing a file on is what the sheet is for. */
const MOST_BESIDE_FILE = 2;

interface Sheet {
    readonly subtitle: string;
    readonly keys: readonly Key[];
    /** Which key is the one thing to do now: the first, where it does something, or the first that
     *  does. */
    readonly begins?: 'first' | 'any';
    /** A file to open, where this sheet comes from one. */
    readonly opens?: FileKind | null;
    /** What it says as a file, to be saved or handed on. */
    readonly file?: FormFile | null;
}

export function sheetView(hands: Hands, sheet: Sheet, ...content: readonly (Kid | readonly Kid[])[]): Made {
    const does = sheet.keys.find((key) => key.enabled && 'do' in key.action);
    const now = sheet.begins === 'any' || (sheet.begins && does === sheet.keys[0]) ? does : null;
    const rest = sheet.keys.filter((key) => key !== now);
    const few = rest.length <= MOST_AT_FOOT;
    const { opens, file } = sheet;
    const share = file ? hands.share : null;
    // What is seldom done with it stands at its end, unless there is little else to do.
    const handsOn = !now && !opens && rest.length <= MOST_BESIDE_FILE;
    const out = file
        ? h('div', { key: 'out', class: 'keys two' }, ownKey('save', hands.words.saveFile, () => hands.save(file)), share ? ownKey('share', hands.words.shareFile, () => share(file)) : null)
        : null;
    const foot: Kid[] = [
        now ? keyView(hands, now, 'now', true) : null,
        opens ? h('div', { key: 'own', class: 'keys' }, ownKey('open', hands.words.opens[opens], () => hands.pick(opens))) : null,
        handsOn ? out : null,
        few ? keysView(hands, rest) : null,
    ];
    return h(
        'main',
        { class: hands.room.low ? 'sheet low' : 'sheet' },
        h('div', { class: 'column', tabindex: '0' }, sheet.subtitle ? h('p', { key: 'subtitle', class: 'subtitle' }, sheet.subtitle) : null, content.flat(), few ? null : keysView(hands, rest), handsOn ? null : out),
        foot.some((kid) => kid) ? h('div', { key: 'foot', class: 'foot' }, foot) : null,
    );
}
