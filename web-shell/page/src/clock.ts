// The only place that asks for the time: readings for the core, and how long until it wants to be
// looked at again.

import type { Reading } from './contract';

/** The clocks as they stand. A browser has no clock that counts from the device's start through its
 *  sleep, so there is none in it. */
export function read(): Reading {
    const now = new Date();
    return { wall_ms: now.getTime(), offset_minutes: -now.getTimezoneOffset(), boot_ms: null, boot_id: null };
}

/** Milliseconds from now until a wall time; none once it has passed. */
export function until(wallMs: number): number {
    return Math.max(0, wallMs - Date.now());
}
