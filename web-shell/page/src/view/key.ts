// A key: what stands on it, what it says aloud, what it does.

import type { EffortKey, Key } from '../contract';
import { h, type Handler, type Made } from './dom';
import type { Hands } from './hands';

/** How a key stands out: the one thing to do now, or everything else. */
export type Tone = 'now' | 'plain';

const CHOSEN = '✓ ';

/** What is chosen is marked with a sign, not by its colour alone. */
function face(label: string, chosen: boolean): (Made | string)[] {
    return chosen ? [h('span', { 'aria-hidden': 'true' }, CHOSEN), label] : [label];
}

/** What is read aloud, where it says more than what stands on the key. Whoever says what stands on a
 *  key must find it. */
function spoken(key: Key): string | null {
    return key.says === key.label ? null : `${key.label}: ${key.says}`;
}

export function keyView(hands: Hands, key: Key, tone: Tone = 'plain', large = false): Made {
    return h(
        'button',
        {
            key: key.id,
            type: 'button',
            class: `key ${tone}${large ? ' large' : ''}`,
            'data-key': key.id,
            'aria-label': spoken(key),
            'aria-pressed': key.chosen ? 'true' : null,
            'aria-disabled': key.enabled ? null : 'true',
            onclick: () => {
                if (key.enabled) hands.tap(key.action);
            },
        },
        face(key.label, key.chosen),
    );
}

/** A key of the page's own. */
export function ownKey(id: string, label: string, does: Handler, tone: Tone = 'plain', chosen: boolean | null = null): Made {
    return h(
        'button',
        { key: id, type: 'button', class: `key ${tone}`, 'data-key': id, 'aria-pressed': chosen === null ? null : String(chosen), onclick: does },
        face(label, chosen === true),
    );
}

/** Keys side by side, equally wide, as many in a line as their words leave room for. */
export function keysView(hands: Hands, keys: readonly Key[], tone: Tone = 'plain'): Made | null {
    if (keys.length === 0) return null;
    return h('div', { key: 'keys', class: 'keys' }, keys.map((key) => keyView(hands, key, tone)));
}

const HOLD_MS = 500;

/** An effort key records at a tap, and its half when it is held. The half is a key of its own for
 *  whoever has no finger to hold with. */
export function effortView(hands: Hands, effort: EffortKey): Made {
    const { key, half } = effort;
    if (!half) return h('div', { key: key.id, class: 'effort' }, keyView(hands, key, 'now', true));
    const hold = holding(() => hands.tap(half.action));
    return h(
        'div',
        { key: key.id, class: 'effort' },
        h(
            'button',
            {
                key: key.id,
                type: 'button',
                class: 'key now large',
                'data-key': key.id,
                // Stands in the corner.
                'data-half': half.label,
                'aria-label': spoken(key),
                'aria-disabled': key.enabled ? null : 'true',
                onpointerdown: () => {
                    if (half.enabled) hold.begin();
                },
                onpointerup: hold.end,
                onpointercancel: hold.end,
                onpointerleave: hold.end,
                oncontextmenu: (event) => event.preventDefault(),
                onclick: () => {
                    if (!hold.taken() && key.enabled) hands.tap(key.action);
                },
            },
            key.label,
        ),
        h(
            'button',
            { key: half.id, type: 'button', class: 'half', 'data-key': half.id, 'aria-label': spoken(half), onclick: () => hands.tap(half.action) },
            half.label,
        ),
    );
}

/** One finger holds one key. */
let timer: ReturnType<typeof setTimeout> | undefined;
let held = false;

function holding(does: () => void): { begin: () => void; end: Handler; taken: () => boolean } {
    return {
        begin: () => {
            held = false;
            clearTimeout(timer);
            timer = setTimeout(() => {
                held = true;
                does();
            }, HOLD_MS);
        },
        end: () => clearTimeout(timer),
        taken: () => {
            const was = held;
            held = false;
            return was;
        },
    };
}
