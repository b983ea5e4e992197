// The loaded sleeve to scale, side on: shaft, inner collar, plates with their numbers, the lock, the
// sleeve's end. One scale holds along the sleeve and one across it; the sleeve is drawn longer than it
// is, so that a thin plate has room for its number.

import type { BarZone } from '../contract';
import { h, type Made } from '../view/dom';
import type { Room } from '../view/hands';

/** 415 mm of sleeve to 450 mm of plate, and so much longer than it is. */
const SLEEVE = (415 / 450) * 2.6;
const THOUSAND = 1000;
const COLLAR = 10;
const THIN = 16;
/** On a screen with little height to give. */
const LOW = 50;

function box(kind: string, x: number, y: number, width: number, height: number, round: number, fill?: string): Made {
    return h('rect', { class: kind, x: `${x}`, y: `${y}`, width: `${Math.max(width, 0)}`, height: `${Math.max(height, 0)}`, rx: `${round}`, fill: fill || null });
}

export function barDrawing(zone: BarZone, room: Room): Made {
    const high = zone.change ? (room.low ? LOW : 120) : room.low ? LOW : 76;
    const wide = Math.min(room.width, 460);
    const middle = high / 2;
    const shaft = wide * 0.08;
    const begin = shaft + COLLAR;
    const sleeve = Math.max(0, Math.min(wide - 8 - begin, high * SLEEVE));
    const steel = (from: number, to: number, share: number, round: number): Made => box('steel', from, middle - high * share, to - from, high * share * 2, round);
    const marks: Made[] = [steel(0, begin, 0.035, 0), steel(shaft, begin, 0.11, 2), steel(begin, begin + sleeve, 0.055, 3)];
    let x = begin;
    for (const plate of zone.plates) {
        const thick = Math.max((sleeve * plate.width) / THOUSAND, THIN);
        const tall = (high * plate.height) / THOUSAND;
        marks.push(box('plate', x + 0.5, middle - tall / 2 + 0.5, thick - 1, tall - 1, 3, plate.colour));
        // The number stands upright along the plate's edge, as large as it has room for.
        const most = Math.min(thick * 0.85, 18);
        const long = plate.label.length * most * 0.6;
        const size = Math.min(most, (most * Math.max(tall - 4, 1)) / long);
        const at = x + thick / 2;
        marks.push(
            h(
                'text',
                { class: 'number', x: `${at}`, y: `${middle}`, 'font-size': `${size}`, fill: plate.ink || null, transform: `rotate(-90 ${at} ${middle})` },
                plate.label,
            ),
        );
        x += thick;
    }
    if (zone.collar) marks.push(box('steel lock', x + 1, middle - high * 0.13, 8, high * 0.26, 2));
    const spoken = [zone.bar, ...zone.plates.map((plate) => plate.label), zone.counts].filter((word) => word).join(', ');
    return h('svg', { key: 'sleeve', class: 'sleeve', role: 'img', 'aria-label': spoken, viewBox: `0 0 ${wide} ${high}`, width: `${wide}`, height: `${high}` }, marks);
}
