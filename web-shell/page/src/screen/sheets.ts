// The sheets: what is read like a coach's paper.

import type {
    BalanceScreen,
    CareScreen,
    EquipmentScreen,
    FileFault,
    LiftScreen,
    NotShownScreen,
    PlanScreen,
    TallyScreen,
    TodayScreen,
    WeekOfPlan,
    WeeksScreen,
} from '../contract';
import { chartDrawing } from '../draw/chart';
import { muscleDrawing } from '../draw/muscle';
import { h, type Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { keysView } from '../view/key';
import { fieldsView, linesView, rowsView, warningsView } from '../view/rows';
import { sheetView } from '../view/sheet';

/** Today's sheet. With nothing on, a plan is the first thing there is to do. */
export function todayView(hands: Hands, today: TodayScreen): Made {
    const bare = today.rows.length === 0;
    return sheetView(
        hands,
        {
            subtitle: today.subtitle,
            keys: today.keys,
            begins: 'first',
            opens: bare ? 'plan' : null,
        },
        today.duration ? h('p', { key: 'duration', class: 'strong' }, today.duration) : null,
        warningsView(today.cautions),
        fieldsView(hands, today.needs),
        rowsView(hands, today.rows),
        linesView(today.left_out, 'left-out quiet'),
    );
}

/** The end of a session. */
export function tallyView(hands: Hands, tally: TallyScreen): Made {
    return sheetView(
        hands,
        { subtitle: tally.subtitle, keys: tally.keys },
        rowsView(hands, tally.done, 'done'),
        rowsView(hands, tally.changes, 'changes'),
        linesView(tally.notes, 'notes'),
        warningsView(tally.cautions),
        fieldsView(hands, tally.fields),
    );
}

/** The plan as weeks. */
export function weeksView(hands: Hands, weeks: WeeksScreen): Made {
    return sheetView(hands, { subtitle: weeks.subtitle, keys: weeks.keys }, weeks.weeks.map((week) => weekView(hands, week)));
}

const HERE = '▸ ';

function weekView(hands: Hands, week: WeekOfPlan): Made {
    return h(
        'section',
        { key: week.title, class: `week${week.current ? ' current' : ''}`, 'aria-current': week.current ? 'true' : null },
        // Where we are is marked with a sign.
        h('h2', { class: 'middle' }, week.current ? h('span', { 'aria-hidden': 'true' }, HERE) : null, week.title),
        rowsView(hands, week.rows),
    );
}

/** One exercise over time: the drawing first. */
export function liftView(hands: Hands, lift: LiftScreen): Made {
    return sheetView(
        hands,
        { subtitle: lift.subtitle, keys: lift.keys },
        lift.chart ? chartDrawing(lift.chart, hands.room) : null,
        rowsView(hands, lift.records, 'records'),
        fieldsView(hands, lift.fields),
        rowsView(hands, lift.sessions, 'sessions'),
    );
}

/** Each muscle and side, planned and done. */
export function balanceView(hands: Hands, balance: BalanceScreen): Made {
    return sheetView(
        hands,
        { subtitle: balance.subtitle, keys: balance.keys },
        h(
            'div',
            { key: 'bars', class: 'muscles' },
            balance.bars.map((bar) =>
                h(
                    'div',
                    { key: bar.muscle, class: `muscle${bar.behind ? ' behind' : ''}` },
                    h('p', { class: bar.behind ? 'strong' : '' }, bar.text),
                    muscleDrawing(bar, balance.full_halves, hands.room),
                    bar.detail ? h('p', { class: 'detail' }, bar.detail) : null,
                ),
            ),
        ),
        rowsView(hands, balance.sentences, 'sentences'),
        balance.kinds.length > 0 ? h('h2', { key: 'kinds-title', class: 'middle' }, hands.words.kindsOfWeek) : null,
        rowsView(hands, balance.kinds, 'kinds', true),
    );
}

/** What this gym has. */
export function equipmentView(hands: Hands, equipment: EquipmentScreen): Made {
    return sheetView(
        hands,
        { subtitle: equipment.subtitle, keys: equipment.keys, opens: 'gym', file: equipment.file ?? null },
        h('div', { key: 'gyms' }, keysView(hands, equipment.gyms)),
        rowsView(hands, equipment.rows, 'rows', true),
    );
}

/** A plan, or what is wrong with a file and where. */
export function planView(hands: Hands, plan: PlanScreen): Made {
    return sheetView(
        hands,
        { subtitle: plan.subtitle, keys: plan.keys, begins: 'any', opens: 'plan' },
        plan.faults.map((fault) => faultView(hands, fault)),
        rowsView(hands, plan.rows),
    );
}

/** A fault in its place: the line as it is written, underlined, and what to write instead. */
function faultView(hands: Hands, fault: FileFault): Made {
    const kind = [fault.label, fault.check].filter((word) => word).join(' · ');
    return h(
        'section',
        { key: `${fault.line} ${fault.column} ${fault.problem}`, class: `fault${fault.advises ? ' advises' : ''}` },
        h('p', { class: 'quiet' }, hands.words.place(fault.line, fault.column, kind)),
        h('pre', { tabindex: '0', 'aria-label': fault.text }, h('span', {}, fault.text), '\n', h('span', { class: 'under', 'aria-hidden': 'true' }, fault.underline)),
        h('p', { class: fault.advises ? '' : 'strong' }, fault.problem),
        fault.advice ? h('p', {}, fault.advice) : null,
    );
}

/** The general cautions: headings, and what is said under each. */
export function careView(hands: Hands, care: CareScreen): Made {
    return sheetView(hands, { subtitle: care.subtitle, keys: care.keys }, rowsView(hands, care.rows, 'rows', true));
}

/** What stands where a screen could not be made after a tap that is recorded. */
export function notShownView(hands: Hands, not: NotShownScreen): Made {
    return sheetView(hands, { subtitle: '', keys: not.keys }, warningsView([not.reason, not.report].filter((line) => line)));
}
