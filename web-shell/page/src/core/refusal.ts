// An error of the core's as what is said of it.

import type { Action, EngineError } from '../contract';

export interface Refusal {
    readonly text: string;
    /** What does it all the same. */
    readonly anyway: Action | null;
    /** The file itself may be at fault. */
    readonly storage: boolean;
}

export function refusal(error: EngineError): Refusal {
    const said = (...lines: string[]): Refusal => ({ text: lines.filter((line) => line).join(' '), anyway: null, storage: false });
    if ('refused' in error) return { ...said(error.refused.reason), anyway: error.refused.ask ?? null };
    if ('storage' in error) return { ...said(error.storage.reason, error.storage.kept_at), storage: true };
    if ('newer_file' in error) return said(error.newer_file.reason);
    if ('closed' in error) return said(error.closed.reason);
    if ('broken' in error) return said(error.broken.reason, error.broken.report);
    const left: never = error;
    return said(String(left));
}
