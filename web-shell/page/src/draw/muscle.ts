// One muscle: planned as an outline, done as a fill, of which sets under six repetitions are hatched;
// left and right apart where a side matters. The words over it say the same.

import type { MuscleBar } from '../contract';
import { h, type Made } from '../view/dom';
import type { Room } from '../view/hands';

const HIGH = 22;
const HATCH = 4;

export function muscleDrawing(bar: MuscleBar, full: number, room: Room): Made {
    const wide = Math.min(room.width, 720);
    const long = (halves: number): number => (full === 0 ? 0 : wide * Math.min(halves / full, 1));
    const done = (halves: number, from: number, to: number): Made => h('rect', { class: 'fill', x: '0', y: `${from}`, width: `${long(halves)}`, height: `${to - from}` });
    const marks: Made[] = [];
    if (bar.left_halves !== null && bar.right_halves !== null) {
        marks.push(done(bar.left_halves, 1, HIGH / 2 - 1), done(bar.right_halves, HIGH / 2 + 1, HIGH - 1));
    } else {
        marks.push(done(bar.done_halves, 1, HIGH - 1));
        const end = long(bar.done_halves);
        for (let x = Math.max(end - long(bar.under_six_halves), 0); x < end; x += HATCH) {
            marks.push(h('line', { class: 'hatch', x1: `${x}`, y1: `${HIGH - 1}`, x2: `${Math.min(x + HATCH, end)}`, y2: '1' }));
        }
    }
    if (bar.planned_halves > 0) {
        marks.push(h('rect', { class: 'planned', x: '1', y: '1', width: `${Math.max(long(bar.planned_halves) - 2, 1)}`, height: `${HIGH - 2}` }));
    }
    return h('svg', { class: 'muscle-bar', 'aria-hidden': 'true', viewBox: `0 0 ${wide} ${HIGH}`, width: `${wide}`, height: `${HIGH}` }, marks);
}
