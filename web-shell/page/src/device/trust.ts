// The addresses of our own scripts, named to a browser that lets a page load no others.

import workerUrl from '../core/worker.ts?worker&url';

type Address = string | TrustedScriptURL;

interface TrustedScriptURL {
    readonly __trusted: never;
}

interface Policy {
    createScriptURL(address: string): TrustedScriptURL;
}

interface Types {
    createPolicy(name: string, rules: { createScriptURL: (address: string) => string }): Policy;
}

const OURS = new Set([workerUrl, 'sw.js']);
const types = (globalThis as { readonly trustedTypes?: Types }).trustedTypes;
const policy = types?.createPolicy('barwright', {
    createScriptURL: (address) => {
        if (!OURS.has(address)) throw new TypeError(address);
        return address;
    },
});

/** An address of ours as the browser wants it. */
export function script(address: string): Address {
    return policy ? policy.createScriptURL(address) : address;
}

export function worker(): Worker {
    return new Worker(script(workerUrl) as string, { type: 'module', name: 'engine' });
}
