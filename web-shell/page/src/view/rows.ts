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
    const why = `${row.id} why`;
    const beside = [
        row.why.length > 0 ? askView(hands, why, hands.words.why, `${hands.words.why} ${row.text}`) : null,
        ...(few ? row.keys.map((key) => keyView(hands, key)) : []),
        few
            ? null
            : h(
                  'button',
                  {
                      key: 'more',
                      type: 'button',
                      class: 'key plain',
                      'data-key': more,
                      'aria-expanded': String(open),
                      'aria-label': `${open ? hands.words.close : hands.words.more}: ${row.text}`,
                      onclick: () => hands.turn(more),
                  },
                  open ? hands.words.close : hands.words.more,
              ),
    ].filter((key) => key !== null);
    return h(
        'div',
        { key: row.id, class: `row depth-${row.depth}${row.warns ? ' warns' : ''}${row.done ? ' done' : ''}`, 'data-row': row.id },
        h(
            'div',
            { key: 'main', class: 'row-main' },
            h('div', { class: 'row-words' }, h(heading ? 'h2' : 'p', { class: 'row-text' }, text), row.detail ? h('p', { class: 'detail' }, row.detail) : null),
            beside.length > 0 ? h('div', { class: 'row-keys' }, beside) : null,
        ),
        reasonsView(hands, why, row.why),
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
    return h('div', { key: id, class: 'why' }, askView(hands, id, label), reasonsView(hands, id, why));
}

function askView(hands: Hands, id: string, label: string, spoken: string | null = null): Made {
    return h('button', { key: id, type: 'button', class: 'ask', 'data-key': id, 'aria-expanded': String(hands.isOpen(id)), 'aria-label': spoken, onclick: () => hands.turn(id) }, label);
}

function reasonsView(hands: Hands, id: string, why: readonly string[]): Made | null {
    return hands.isOpen(id) ? h('div', { key: 'reasons', class: 'reasons' }, why.map((line) => h('p', {}, line))) : null;
}

/** The name of a field's entry in the page, where a name has no spaces. */
export function inputOf(field: Field): string {
    return `field-${field.id.replaceAll(' ', '_')}`;
}

/** Something to write, and the key that hands it over. With `closes` it goes once it is taken. */
export function fieldView(hands: Hands, field: Field, { key = field.id, closes = '' } = {}): Made {
    const input = inputOf(field);
    const hint = `hint-${input}`;
    const keep = (): void => {
        const entry = document.getElementById(input);
        if (entry instanceof HTMLInputElement) hands.write(field.id, entry.value, closes);
    };
    return h(
        'div',
        { key, class: 'field' },
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
