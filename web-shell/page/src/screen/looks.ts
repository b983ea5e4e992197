// The looks that the page itself asks for: the places to go to, and which screen a look is of.

import type { Action, Draft, Look } from '../contract';

const NOTHING: Draft = { amount: null, load: null, helped: 0, correct: null, panel: null };
export const TODAY: Look = { today: { session: null, minutes: null } };

/** Where one can go from anywhere, in the order of their keys. */
export const PLACES = [
    ['today', TODAY],
    ['floor', { floor: { draft: NOTHING } }],
    ['tally', 'tally'],
    ['weeks', 'weeks'],
    ['lift', { lift: { exercise: '', page: 0 } }],
    ['balance', { balance: { weeks: null } }],
    ['equipment', 'equipment'],
    ['plan', { plan: { text: null, week: null } }],
    ['care', 'care'],
] as const satisfies readonly (readonly [string, Look])[];

/** Which screen a look is of, whatever of it is looked at. */
function kind(look: Look): string {
    return typeof look === 'string' ? look : Object.keys(look).join();
}

export function same(one: Look | null, other: Look | null): boolean {
    return one !== null && other !== null && kind(one) === kind(other);
}

/** Whether a gym is what is looked at: a file that is dropped there is one. */
export function ofGym(look: Look | null): boolean {
    return look === 'equipment' || (look !== null && typeof look === 'object' && 'form' in look && look.form.of === 'gym');
}

/** Whether it goes to the demo; none where it does neither that nor leaves it. */
export function toDemo(action: Action): boolean | null {
    return 'do' in action && typeof action.do.intent === 'object' && 'demo' in action.do.intent ? action.do.intent.demo.on : null;
}
