// A chart as the core lays it out: places on two axes become places on a sheet, nothing more.

import type { Chart, ChartAxis, ChartPoint, ChartSeries } from '../contract';
import { h, type Made } from '../view/dom';
import type { Room } from '../view/hands';

/** A line of words, in type. */
const LINE = 1.3;
/** About how wide a letter is, in type. */
const LETTER = 0.58;

function share(axis: ChartAxis, at: number): number {
    return axis.to === axis.from ? 0.5 : (at - axis.from) / (axis.to - axis.from);
}

function line(kind: string, x1: number, y1: number, x2: number, y2: number): Made {
    return h('line', { class: kind, x1: `${x1}`, y1: `${y1}`, x2: `${x2}`, y2: `${y2}` });
}

function dot(x: number, y: number): Made {
    return h('circle', { class: 'mark', cx: `${x}`, cy: `${y}`, r: '4' });
}

/** What failed: a cross, told from a mark by its shape. */
function cross(x: number, y: number): Made {
    return h('path', { class: 'failed', d: `M${x - 5},${y - 5}l10,10m0,-10l-10,10` });
}

export function chartDrawing(chart: Chart, room: Room): Made {
    const type = Math.min(room.type, 26);
    const row = type * LINE;
    const wide = Math.min(room.width, 720);
    const high = Math.max(200, Math.min(wide * 0.62, 340));
    const width = (words: string): number => words.length * type * LETTER;
    const words = (text: string, x: number, y: number, hold: 'start' | 'middle' | 'end'): Made =>
        h('text', { class: 'words', x: `${x}`, y: `${y}`, 'font-size': `${type}`, 'text-anchor': hold }, text);
    const left = Math.max(0, ...chart.up.ticks.map((tick) => width(tick.label))) + 8;
    const right = wide - 8;
    const above = chart.series.length * row;
    const top = above + row * 1.5;
    const bottom = above + high;
    const x = (at: number): number => left + (right - left) * share(chart.across, at);
    const y = (at: number): number => bottom - (bottom - top) * share(chart.up, at);
    const marks: Made[] = [];

    // What each series is, a line each.
    chart.series.forEach((series, at) => {
        const middle = row * (at + 0.5);
        if (series.kind === 'band') marks.push(h('rect', { class: 'band', x: '0', y: `${middle - 6}`, width: '22', height: '12' }));
        if (series.kind === 'line') marks.push(line('line', 0, middle, 22, middle));
        if (series.kind === 'marks') marks.push(dot(11, middle));
        if (series.kind === 'failed') marks.push(cross(11, middle));
        marks.push(words(series.label, 28, middle, 'start'));
    });
    marks.push(words(chart.up.label, 0, above + row * 0.6, 'start'));
    for (const tick of chart.up.ticks) {
        marks.push(line('grid', left, y(tick.at), right, y(tick.at)), words(tick.label, left - 6, y(tick.at), 'end'));
    }
    let free = 0;
    for (const tick of chart.across.ticks) {
        const half = width(tick.label) / 2;
        const at = Math.max(half, Math.min(x(tick.at), wide - half));
        // A label that would run into the one before it is left out; the chart is also said in words.
        if (at - half < free) continue;
        marks.push(words(tick.label, at, bottom + row * 0.8, 'middle'));
        free = at + half + 8;
    }
    marks.push(...chart.series.flatMap((series) => drawn(series, x, y)));
    return h(
        'svg',
        { key: 'chart', class: 'chart', role: 'img', 'aria-label': `${chart.title}. ${chart.aloud}`, viewBox: `0 0 ${wide} ${bottom + row * 1.5}`, width: `${wide}`, height: `${bottom + row * 1.5}` },
        marks,
    );
}

function drawn(series: ChartSeries, x: (at: number) => number, y: (at: number) => number): Made[] {
    const low = series.points.map((point) => `${x(point.x)},${y(point.low)}`);
    switch (series.kind) {
        case 'band': {
            const high = series.points.map((point: ChartPoint) => `${x(point.x)},${y(point.high)}`);
            return [h('polygon', { class: 'band', points: [...high, ...low.reverse()].join(' ') })];
        }
        case 'line':
            return [h('polyline', { class: 'line', points: low.join(' ') })];
        case 'marks':
            return series.points.map((point) => dot(x(point.x), y(point.low)));
        case 'failed':
            return series.points.map((point) => cross(x(point.x), y(point.low)));
    }
}
