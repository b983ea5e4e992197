// Lines of a sheet, fields to write in, warnings: what most screens are made of.

import type { Field, Row } from '../contract';
import { h, type Made } from './dom';
import type { Hands } from './hands';
import { keyView, keysView } from './key';

const DONE = '✓ ';

/** Keys that stand in a row by themselves; more lie behind one. */
const MOST_SHOWN = 1;

/** A line with what it is, why, and what can be done with it. */
export function rowView(hands: Hands, row: Row): Made {
    const heading = row.depth === 0;
    const more = `${row.id} keys`;
    const few = row.keys.length <= MOST_SHOWN;
    const open = hands.isOpen(more);
    const text = [row.done ? h('span', { 'aria-hidden': 'true' }, DONE) : null, row.text];
    return h(
        'div',
        { key: row.id, class: `row depth-${row.depth}${row.warns ? ' warns' : ''}${row.done ? ' done' : ''}`, 'data-row': row.id },
        h(heading ? 'h2' : 'p', { class: 'row-text' }, text),
        row.detail ? h('p', { class: 'detail' }, row.detail) : null,
        whyView(hands, `${row.id} why`, row.why, hands.words.why),
        few ? row.keys.map((key) => h('div', { key: key.id, class: 'row-keys' }, keyView(hands, key))) : null,
        few
            ? null
            : h(
                  'div',
                  { key: 'more', class: 'row-keys' },
                  h(
                      'button',
                      {
                          type: 'button',
                          class: 'key plain',
                          'data-key': more,
                          'aria-expanded': String(open),
                          'aria-label': `${open ? hands.words.close : hands.words.more}: ${row.text}`,
                          onclick: () => hands.turn(more),
                      },
                      open ? hands.words.close : hands.words.more,
                  ),
              ),
        !few && open ? keysView(hands, row.keys) : null,
    );
}

/** Rows under each other; in a plain list only the headings stand out. */
export function rowsView(hands: Hands, rows: readonly Row[], key = 'rows', plain = false): Made | null {
    if (rows.length === 0) return null;
    return h('div', { key, class: plain ? 'rows plain' : 'rows', 'data-rows': key }, rows.map((row) => rowView(hands, row)));
}

/** The derivation behind a number, when it is asked for. */
export function whyView(hands: Hands, id: string, why: readonly string[], label: string): Made | null {
    if (why.length === 0) return null;
    const open = hands.isOpen(id);
    return h(
        'div',
        { key: id, class: 'why' },
        h('button', { type: 'button', class: 'ask', 'data-key': id, 'aria-expanded': String(open), onclick: () => hands.turn(id) }, label),
        open ? h('div', { class: 'reasons' }, why.map((line) => h('p', {}, line))) : null,
    );
}

/** Something to write, and the key that hands it over. */
export function fieldView(hands: Hands, field: Field): Made {
    const input = `field ${field.id}`;
    const hint = `hint ${field.id}`;
    const keep = (): void => {
        const entry = document.getElementById(input);
        if (entry instanceof HTMLInputElement) hands.write(field.id, entry.value);
    };
    return h(
        'div',
        { key: field.id, class: 'field' },
        h('label', { for: input }, field.label),
        h(
            'div',
            { class: 'entry' },
            h('input', {
                id: input,
                'data-field': field.id,
                type: 'text',
                value: field.value,
                placeholder: field.hint,
                'aria-describedby': field.hint ? hint : null,
                inputmode: field.numeric ? 'decimal' : 'text',
                enterkeyhint: 'done',
                autocomplete: 'off',
                autocapitalize: 'off',
                spellcheck: 'false',
                onkeydown: (event) => {
                    if (event instanceof KeyboardEvent && event.key === 'Enter') keep();
                },
            }),
            h('button', { type: 'button', class: 'key plain', 'data-key': `keep ${field.id}`, 'aria-label': `${hands.words.keep}: ${field.label}`, onclick: keep }, hands.words.keep),
        ),
        field.hint ? h('span', { id: hint, class: 'hidden' }, field.hint) : null,
    );
}

export function fieldsView(hands: Hands, fields: readonly Field[]): Made | null {
    if (fields.length === 0) return null;
    return h('div', { key: 'fields', class: 'fields' }, fields.map((field) => fieldView(hands, field)));
}

/** Lines that warn: a clay stripe beside them, in ordinary type. */
export function warningsView(lines: readonly string[], key = 'warnings'): Made | null {
    if (lines.length === 0) return null;
    return h('div', { key, class: 'warnings' }, lines.map((line) => h('p', {}, line)));
}

export function linesView(lines: readonly string[], kind = ''): Made | null {
    if (lines.length === 0) return null;
    return h('div', { key: kind || 'lines', class: `lines ${kind}` }, lines.map((line) => h('p', {}, line)));
}

/** One line of the largest type, as large as its room allows. */
export function bigView(words: string, kind: string, spoken: string | null = null): Made | null {
    if (!words) return null;
    return h('p', { key: kind, class: `big ${kind}`, '--letters': String(words.length), 'aria-label': spoken, role: spoken ? 'text' : null }, words);
}
