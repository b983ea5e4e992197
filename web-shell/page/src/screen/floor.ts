// The floor: the bar, the call, the thumb.

import type { BarZone, CallZone, Figure, FloorScreen, Panel, RunningRest, ThumbZone } from '../contract';
import { barDrawing } from '../draw/bar';
import { h, type Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { effortView, keyView, keysView } from '../view/key';
import { bigView, fieldsView, linesView, rowsView, warningsView, whyView } from '../view/rows';

export function floorView(hands: Hands, floor: FloorScreen): Made {
    const { rest, panel } = floor;
    return h(
        'main',
        { class: `floor${rest ? ' resting' : ''}` },
        h(
            'div',
            { key: 'upper', class: 'upper', 'data-part': `${floor.part} ${rest ? 'rest' : ''}` },
            warningsView(floor.notices, 'notices'),
            rest ? restZone(hands, rest, floor.call) : null,
            barZone(hands, floor.bar, rest !== null),
            callZone(hands, floor.call, rest !== null),
        ),
        panel ? panelView(hands, panel) : thumbZone(hands, floor.thumb),
    );
}

/** The countdown takes the large type, shorter and longer side by side under it. */
function restZone(hands: Hands, rest: RunningRest, call: CallZone): Made {
    return h(
        'section',
        { key: 'rest', class: 'rest', 'aria-label': rest.label },
        h('p', { key: 'label', class: 'quiet strong' }, rest.label),
        h(
            'div',
            { key: 'line', class: 'counting' },
            // It counts without a word: a reader that looks at it is told, and its end is said once.
            bigView(rest.text, 'countdown'),
            h('div', { class: 'keys pair' }, keyView(hands, rest.shorter), keyView(hands, rest.longer)),
        ),
        h('p', { key: 'exercise', class: 'strong' }, call.exercise),
        h('p', { key: 'next', class: 'middle' }, call.sentence),
    );
}

/** Zone one. The largest type is the load's, unless a rest counts in it. */
function barZone(hands: Hands, zone: BarZone, resting: boolean): Made {
    return h(
        'section',
        { key: 'bar', class: `bar-zone${zone.change ? '' : ' same'}` },
        resting ? (zone.total ? h('p', { key: 'total', class: 'middle total' }, zone.total) : null) : bigView(zone.total, 'total'),
        zone.line ? h('p', { key: 'line', class: 'middle' }, zone.line) : null,
        zone.change ? h('p', { key: 'change', class: 'change' }, zone.change) : null,
        h(
            'div',
            { key: 'drawn', class: 'drawn' },
            zone.drawn ? barDrawing(zone, hands.room) : null,
            h(
                'div',
                { class: 'beside' },
                zone.counts ? h('p', { key: 'counts', class: 'quiet strong' }, zone.counts) : null,
                // The line names it where nothing is drawn.
                zone.bar && !zone.line ? h('p', { key: 'name', class: 'quiet' }, zone.bar) : null,
                zone.holds ? keyView(hands, zone.holds) : null,
            ),
        ),
    );
}

/** Zone two. */
function callZone(hands: Hands, zone: CallZone, resting: boolean): Made {
    return h(
        'section',
        { key: 'call', class: 'call' },
        resting ? null : h('p', { key: 'exercise', class: 'strong' }, zone.exercise),
        resting ? null : h('p', { key: 'sentence', class: 'middle' }, zone.sentence),
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
        zone.figure ? figureView(hands, zone.figure) : null,
        zone.prompt ? h('p', { key: 'prompt', class: 'strong', id: 'prompt' }, zone.prompt) : null,
        zone.effort.length > 0
            ? h('div', { key: 'efforts', class: 'efforts', role: 'group', 'aria-labelledby': zone.prompt ? 'prompt' : null }, zone.effort.map((effort) => effortView(hands, effort)))
            : null,
        // Beside effort keys a main key is the second choice: putting a set right as it was.
        zone.main ? keyView(hands, zone.main, zone.effort.length > 0 ? 'plain' : 'now', true) : null,
        keysView(hands, small),
    );
}

/** What was done, a step down and up beside it. */
function figureView(hands: Hands, figure: Figure): Made {
    return h(
        'div',
        { key: 'figure', class: `figure${figure.runs ? ' runs' : ''}` },
        keyView(hands, figure.down, 'plain', true),
        // A figure that runs by itself is read when it is looked at; one that was stepped is said.
        h('p', { key: 'text', class: 'figure-text', 'aria-live': figure.runs ? 'off' : 'polite' }, figure.text, ' ', h('span', { class: 'unit' }, figure.unit)),
        keyView(hands, figure.up, 'plain', true),
    );
}

/** What is seldom needed, open over the thumb zone. */
function panelView(hands: Hands, panel: Panel): Made {
    return h(
        'section',
        { key: `panel ${panel.id}`, class: 'thumb panel', 'aria-labelledby': 'panel-title' },
        h('h2', { id: 'panel-title', class: 'middle', tabindex: '-1', 'data-focus': panel.id }, panel.title),
        rowsView(hands, panel.rows),
        keysView(hands, panel.keys),
        fieldsView(hands, panel.fields),
        keyView(hands, panel.close),
    );
}
