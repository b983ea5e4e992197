// The floor: the bar, the call, the thumb.

import type { BarZone, CallZone, Figure, FloorScreen, Panel, RunningRest, ThumbZone } from '../contract';
import { barDrawing } from '../draw/bar';
import { h, type Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { effortView, keyView, keysView, ownKey } from '../view/key';
import { bigView, fieldsView, linesView, rowsView, warningsView, whyView } from '../view/rows';

export function floorView(hands: Hands, floor: FloorScreen): Made {
    const { rest, panel } = floor;
    const resting = rest !== null;
    const { low } = hands.room;
    const notices = warningsView(floor.notices, 'notices');
    return h(
        'main',
        { class: `floor${resting ? ' resting' : ''}${low ? ' low' : ''}` },
        h(
            'div',
            { key: 'read', class: 'read' },
            // What goes on the bar gives way to nothing.
            h(
                'div',
                { key: 'first', class: 'first' },
                low ? null : notices,
                rest ? restZone(hands, rest, floor.call) : null,
                barZone(hands, floor.bar, resting),
            ),
            h(
                'div',
                { key: 'upper', class: 'upper', tabindex: '0', 'data-part': `${floor.part} ${resting ? 'rest' : ''}` },
                low ? notices : null,
                callZone(hands, floor.call, resting),
                besideBar(hands, floor.bar),
                (floor.beats ?? []).length > 0 ? h('div', { key: 'beats', class: 'beside' }, ownKey('beats', hands.words.beats, () => hands.turnMetronome(), 'plain', hands.ticking)) : null,
            ),
        ),
        panel ? panelView(hands, panel) : thumbZone(hands, floor.thumb),
    );
}

/** The countdown takes the large type, shorter and longer side by side beside it. */
function restZone(hands: Hands, rest: RunningRest, call: CallZone): Made {
    return h(
        'section',
        { key: 'rest', class: 'rest', 'aria-label': rest.label },
        h('p', { key: 'label', class: 'head-line' }, h('span', { class: 'quiet strong' }, rest.label), hands.room.low ? null : h('span', { class: 'strong' }, call.exercise)),
        h(
            'div',
            { key: 'line', class: 'counting' },
            // It counts without a word: a reader that looks at it is told, and its end is said once.
            bigView(rest.text, 'countdown'),
            h('div', { class: 'keys pair' }, keyView(hands, rest.shorter), keyView(hands, rest.longer)),
        ),
        hands.room.low ? null : h('p', { key: 'next', class: 'middle' }, call.sentence),
    );
}

/** Zone one. The largest type is the load's, unless a rest counts in it. */
function barZone(hands: Hands, zone: BarZone, resting: boolean): Made {
    return h(
        'section',
        { key: 'bar', class: `bar-zone${zone.change ? '' : ' same'}` },
        resting ? null : bigView(zone.total, 'total'),
        zone.line ? h('p', { key: 'line', class: 'middle' }, zone.line) : null,
        resting || zone.change
            ? h('p', { key: 'change', class: 'change' }, resting && zone.total ? h('span', { class: 'strong total' }, zone.total) : null, zone.change ? h('span', {}, zone.change) : null)
            : null,
        zone.drawn ? barDrawing(zone, hands.room) : null,
        zone.counts && !zone.change ? h('p', { key: 'counts', class: 'quiet strong' }, zone.counts) : null,
    );
}

/** The bar by its name, and what sets straight what is on it. */
function besideBar(hands: Hands, zone: BarZone): Made | null {
    // The line names it where nothing is drawn.
    const name = zone.bar && !zone.line ? h('p', { key: 'name', class: 'quiet' }, zone.bar) : null;
    if (!name && !zone.holds) return null;
    return h('div', { key: 'beside', class: 'beside' }, name, zone.holds ? keyView(hands, zone.holds) : null);
}

/** Zone two. */
function callZone(hands: Hands, zone: CallZone, resting: boolean): Made {
    return h(
        'section',
        { key: 'call', class: 'call' },
        resting && !hands.room.low ? null : h('p', { key: 'exercise', class: 'strong' }, zone.exercise),
        resting && !hands.room.low ? null : h('p', { key: 'sentence', class: 'middle' }, zone.sentence),
        zone.last ? h('p', { key: 'last', class: 'quiet' }, zone.last) : null,
        warningsView(zone.cautions, 'cautions'),
        linesView(zone.manner, 'manner'),
        linesView(zone.set_up, 'set-up'),
        linesView(zone.cues, 'cues'),
        zone.to_go ? h('p', { key: 'to-go', class: 'quiet' }, zone.to_go) : null,
        whyView(hands, 'floor why', zone.why, hands.words.whyThisLoad),
    );
}

/** Zone three: everything that records. */
function thumbZone(hands: Hands, zone: ThumbZone): Made {
    const small = [...zone.beside, zone.ended, zone.undo, zone.redo, zone.more].filter((key) => key !== null);
    return h(
        'section',
        { key: 'thumb', class: 'thumb' },
        h(
            'div',
            { key: 'record', class: 'record' },
            zone.figure ? figureView(hands, zone.figure) : null,
            zone.prompt ? h('p', { key: 'prompt', class: 'strong', id: 'prompt' }, zone.prompt) : null,
            zone.effort.length > 0
                ? h('div', { key: 'efforts', class: 'efforts', role: 'group', 'aria-labelledby': zone.prompt ? 'prompt' : null }, zone.effort.map((effort) => effortView(hands, effort)))
                : null,
            // Beside effort keys a main key is the second choice: putting a set right as it was.
            zone.main ? keyView(hands, zone.main, zone.effort.length > 0 ? 'plain' : 'now', true) : null,
        ),
        // What seldom is needed gives way first.
        h('div', { key: 'second', class: 'second' }, keysView(hands, small)),
    );
}

/** What was done, a step down and up beside it. */
function figureView(hands: Hands, figure: Figure): Made {
    return h(
        'div',
        { key: 'figure', class: `figure${figure.runs ? ' runs' : ''}` },
        keyView(hands, figure.down, 'plain', true),
        // A figure that runs by itself is read when it is looked at; one that was stepped is said.
        h('div', { key: 'text', class: 'figure-hold', 'aria-live': figure.runs ? 'off' : 'polite' }, padKey(hands, figure)),
        keyView(hands, figure.up, 'plain', true),
    );
}

/** The figure itself is a key: what is far from the call is typed. */
function padKey(hands: Hands, { text, unit, pad, runs }: Figure): Made {
    const words = [text, ' ', h('span', { class: 'unit' }, unit)];
    if (!pad.enabled || runs) return h('p', { key: 'figure', class: 'figure-text' }, words);
    return h(
        'button',
        { key: pad.id, type: 'button', class: 'key figure-text', 'data-key': pad.id, onclick: () => hands.tap(pad.action) },
        words,
        h('span', { class: 'hidden' }, `: ${pad.says}`),
    );
}

/** What a panel is, whatever is being entered in it. */
export function panelName(panel: Panel): string {
    const [name = ''] = panel.id.split(':');
    return name;
}

/** What is seldom needed, open over the thumb zone. */
function panelView(hands: Hands, panel: Panel): Made {
    const name = panelName(panel);
    return h(
        'section',
        { key: `panel ${name}`, class: `thumb panel ${name}`, 'aria-labelledby': 'panel-title' },
        // A title that says what was entered so far is said as it changes.
        h('h2', { id: 'panel-title', class: 'middle', tabindex: '-1', 'data-focus': name, 'aria-live': name === panel.id ? null : 'polite' }, panel.title),
        rowsView(hands, panel.rows),
        keysView(hands, panel.keys),
        fieldsView(hands, panel.fields),
        keyView(hands, panel.close),
    );
}
