// Which view shows which screen. A kind of screen that joins the contract does not compile until it
// has its line here.

import type { Screen } from '../contract';
import type { Made } from '../view/dom';
import type { Hands } from '../view/hands';
import { floorView } from './floor';
import { formView } from './form';
import { balanceView, careView, equipmentView, liftView, notShownView, planView, tallyView, todayView, weeksView } from './sheets';

/** What the page around a screen needs of it. */
export interface Page {
    readonly kind: string;
    readonly title: string;
    readonly aloud: string;
    readonly view: Made;
}

export function page(hands: Hands, screen: Screen): Page {
    const of = (kind: string, { title, aloud }: { readonly title: string; readonly aloud: string }, view: Made): Page => ({ kind, title, aloud, view });
    if ('today' in screen) return of('today', screen.today.today, todayView(hands, screen.today.today));
    if ('floor' in screen) return of('floor', screen.floor.floor, floorView(hands, screen.floor.floor));
    if ('tally' in screen) return of('tally', screen.tally.tally, tallyView(hands, screen.tally.tally));
    if ('weeks' in screen) return of('weeks', screen.weeks.weeks, weeksView(hands, screen.weeks.weeks));
    if ('lift' in screen) return of('lift', screen.lift.lift, liftView(hands, screen.lift.lift));
    if ('balance' in screen) return of('balance', screen.balance.balance, balanceView(hands, screen.balance.balance));
    if ('equipment' in screen) return of('equipment', screen.equipment.equipment, equipmentView(hands, screen.equipment.equipment));
    if ('plan' in screen) return of('plan', screen.plan.plan, planView(hands, screen.plan.plan));
    if ('care' in screen) return of('care', screen.care.care, careView(hands, screen.care.care));
    if ('form' in screen) return of('form', screen.form.form, formView(hands, screen.form.form));
    if ('not_shown' in screen) return of('not_shown', screen.not_shown.not_shown, notShownView(hands, screen.not_shown.not_shown));
    const left: never = screen;
    return left;
}
