// What is made and mended by hand: one view for every form.

import type { FormRow, FormScreen } from '../contract';
import { chartDrawing } from '../draw/chart';
import { h, type Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { keyView, keysView } from '../view/key';
import { fieldView, inputOf, linesView, warningsView } from '../view/rows';
import { sheetView } from '../view/sheet';

export function formView(hands: Hands, form: FormScreen): Made {
    return sheetView(
        hands,
        // Of a draft there is one thing to do: take it up.
        { subtitle: form.subtitle, keys: form.keys, ...(form.file ? { begins: 'first' } : {}), opens: form.plan_file ? 'plan' : null, file: form.file },
        linesView(form.notes, 'notes'),
        h('div', { key: 'rows', class: 'rows form', 'data-rows': 'form' }, form.rows.map((row) => formRowView(hands, row))),
        form.chart ? chartDrawing(form.chart, hands.room) : null,
    );
}

/** A line: what it is, what it says between its steps, what is wrong beside it, and its keys. */
function formRowView(hands: Hands, row: FormRow): Made {
    const { down, up, field } = row;
    const steps = down ?? up;
    const typing = `${row.id} typing`;
    // What can only be typed stands open; otherwise it opens when it is asked for.
    const asked = field && (steps ?? row.keys[0]) ? field : null;
    const open = field && (!asked || hands.isOpen(typing));
    const value = row.value && !(field && !asked) ? h('p', { key: 'value', class: 'value', 'aria-live': steps ? 'polite' : null }, row.value) : null;
    const [opens] = row.keys.length === 1 && !asked && !steps ? row.keys : [];
    const beside = [
        down ? keyView(hands, down) : null,
        value,
        up ? keyView(hands, up) : null,
        asked ? typeKey(hands, row, typing, asked) : null,
        opens ? openKey(hands, opens, row.text) : null,
    ].filter((part) => part !== null);
    const words = field && !asked ? null : h('div', { key: 'words', class: 'row-words' }, h(row.depth === 0 ? 'h2' : 'p', { class: 'row-text' }, row.text), row.detail ? h('p', { class: 'detail' }, row.detail) : null);
    return h(
        'div',
        { key: row.id, class: `row depth-${row.depth}${row.warns ? ' warns' : ''}`, 'data-row': row.id },
        words || beside.length > 0 ? h('div', { key: 'main', class: 'row-main' }, words, beside.length > 0 ? h('div', { key: 'beside', class: steps ? 'row-keys steps' : 'row-keys' }, beside) : null) : null,
        open && field ? fieldView(hands, field, { key: 'field', closes: asked ? typing : '' }) : null,
        field && !asked && row.detail ? h('p', { key: 'detail', class: 'detail' }, row.detail) : null,
        warningsView(row.faults, 'faults'),
        linesView(row.remarks, 'remarks quiet'),
        opens ? null : keysView(hands, row.keys),
    );
}

/** A row's one key, told by the row it stands in. */
function openKey(hands: Hands, key: FormRow['keys'][number], row: string): Made {
    const made = keyView(hands, key);
    return { ...made, attrs: { ...made.attrs, 'aria-label': made.attrs['aria-label'] ?? `${key.label}: ${row}` } };
}

/** Opens the entry of a row, and puts the hand in it. */
function typeKey(hands: Hands, row: FormRow, typing: string, field: NonNullable<FormRow['field']>): Made {
    const open = hands.isOpen(typing);
    const label = open ? hands.words.close : hands.words.type;
    return h(
        'button',
        {
            key: 'type',
            type: 'button',
            class: 'key plain',
            'data-key': typing,
            'aria-expanded': String(open),
            'aria-label': `${label}: ${row.text}`,
            onclick: () => {
                hands.turn(typing);
                document.getElementById(inputOf(field))?.focus();
            },
        },
        label,
    );
}
