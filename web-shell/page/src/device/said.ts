// What the page keeps beside the records: where the lifter was, and what was said already. Nothing of
// it is missed when it is gone.

import type { Action, Look } from '../contract';

export interface Trail {
    readonly look: Look | null;
    readonly past: readonly Look[];
}

const MOST_BACK = 20;

function get(store: Storage, key: string): string | null {
    try {
        return store.getItem(key);
    } catch {
        return null;
    }
}

function put(store: Storage, key: string, value: string): void {
    try {
        store.setItem(key, value);
    } catch {
        // Full, or forbidden.
    }
}

export function keepTrail({ look, past }: Trail): void {
    put(sessionStorage, 'trail', JSON.stringify({ look, past: past.slice(-MOST_BACK) }));
}

export function trail(): Trail {
    try {
        const kept: unknown = JSON.parse(get(sessionStorage, 'trail') ?? 'null');
        if (typeof kept === 'object' && kept && 'look' in kept && 'past' in kept && Array.isArray(kept.past)) {
            return { look: kept.look as Look | null, past: kept.past as Look[] };
        }
    } catch {
        // From another version.
    }
    return { look: null, past: [] };
}

/** The key that led to the demo, while it is shown. */
export function demo(): Action | null {
    try {
        return JSON.parse(get(localStorage, 'demo') ?? 'null') as Action | null;
    } catch {
        // From another version.
        return null;
    }
}

export function keepDemo(action: Action | null): void {
    put(localStorage, 'demo', JSON.stringify(action));
}

export function is(key: 'speaks' | 'told dark' | 'asked to keep'): boolean {
    return get(localStorage, key) === 'yes';
}

export function say(key: 'speaks' | 'told dark' | 'asked to keep', yes: boolean): void {
    put(localStorage, key, yes ? 'yes' : 'no');
}
