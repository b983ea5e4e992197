// The engine's worker: opens the browser's files, loads the engine, and answers one call after
// another.

import init, * as engine from '../../../target/engine/engine.js';
import wasm from '../../../target/engine/engine_bg.wasm?url';
import type { Answered, Asked, Call, Reply } from './protocol';

/** Where the files lie. */
const FOLDER = 'barwright';
/** As many stand ready as a copy and what is set aside may take between two calls. */
const READY = 12;
/** A worker that was just ended lets go of its files a moment later. */
const PATIENCE_MS = 6000;
const COPY = 'copy.barwright';
const RESTORED = 'restored.barwright';

class Lacking extends Error {
    constructor(
        readonly lack: 'files' | 'busy' | 'unread' | 'program',
        detail: string,
    ) {
        super(detail);
    }
}

function words(thrown: unknown): string {
    return thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown);
}

async function folder(): Promise<FileSystemDirectoryHandle> {
    try {
        if (!('createSyncAccessHandle' in FileSystemFileHandle.prototype)) throw new Error('createSyncAccessHandle');
        const root = await navigator.storage.getDirectory();
        return await root.getDirectoryHandle(FOLDER, { create: true });
    } catch (thrown) {
        throw new Lacking('files', words(thrown));
    }
}

/** What only a worker's file has. */
interface Opens {
    createSyncAccessHandle(): Promise<FileSystemSyncAccessHandle>;
}

type FileSystemSyncAccessHandle = Parameters<typeof engine.take>[0];

async function take(file: FileSystemFileHandle, until: number): Promise<void> {
    for (;;) {
        try {
            engine.take(await (file as unknown as Opens).createSyncAccessHandle());
            return;
        } catch (thrown) {
            const held = thrown instanceof DOMException && thrown.name === 'NoModificationAllowedError';
            if (!held) throw new Lacking('files', words(thrown));
            if (performance.now() > until) throw new Lacking('busy', words(thrown));
            await new Promise((then) => setTimeout(then, 50));
        }
    }
}

async function more(): Promise<void> {
    const into = await folder();
    while (engine.free() < READY) {
        const file = await into.getFileHandle(crypto.randomUUID(), { create: true });
        await take(file, performance.now());
    }
}

async function begin(): Promise<void> {
    const into = await folder();
    try {
        await init({ module_or_path: new URL(wasm, self.location.href) });
    } catch (thrown) {
        throw new Lacking('program', words(thrown));
    }
    const until = performance.now() + PATIENCE_MS;
    const files: FileSystemFileHandle[] = [];
    for await (const entry of into.values()) if (entry.kind === 'file') files.push(entry as FileSystemFileHandle);
    await Promise.all(files.map((file) => take(file, until)));
    await more();
}

let open = '';

function said(json: string): Reply {
    let entries = 0;
    if (open) {
        const counted: unknown = JSON.parse(engine.entries());
        if (typeof counted === 'object' && counted && 'done' in counted) entries = Number(counted.done);
    }
    return { kind: 'said', json, entries };
}

function opens(name: string, json: string): Reply {
    open = json.startsWith('{"done"') ? name : '';
    return said(json);
}

/** A copy of the records as bytes; the file it was made in goes again. */
function copy(): Reply {
    engine.remove_file(COPY);
    const json = engine.back_up(COPY);
    if (json.startsWith('{"error"')) return said(json);
    try {
        return { kind: 'bytes', bytes: engine.read_file(COPY) as Uint8Array<ArrayBuffer> };
    } finally {
        engine.remove_file(COPY);
    }
}

function restore(name: string, locale: string, bytes: Uint8Array): Reply {
    engine.close();
    open = '';
    engine.remove_file(RESTORED);
    try {
        engine.write_file(RESTORED, bytes);
        return said(engine.restore(RESTORED, name, locale));
    } finally {
        engine.remove_file(RESTORED);
    }
}

function answer(call: Call): Reply {
    switch (call.kind) {
        case 'open':
            if (engine.unread() > 0 && !engine.is_there(call.name)) throw new Lacking('unread', String(engine.unread()));
            return opens(call.name, engine.open(call.name, call.locale));
        case 'line':
            return said(engine.answer(JSON.stringify(call.line)));
        case 'suspend': {
            const json = engine.suspend();
            return { kind: 'said', json, entries: 0 };
        }
        case 'close': {
            open = '';
            return said(engine.close());
        }
        case 'check':
            return said(engine.check());
        case 'versions':
            return said(engine.versions());
        case 'copy':
            return copy();
        case 'restore':
            return restore(call.name, call.locale, call.bytes);
        case 'recover': {
            engine.close();
            open = '';
            return said(engine.recover(call.name, call.locale));
        }
    }
}

/** Calls that may leave fewer files ready. */
function makesFiles(call: Call): boolean {
    return call.kind !== 'line' && call.kind !== 'suspend';
}

const begun = begin();
let last: Promise<void> = Promise.resolve();
let unfit = false;

async function serve({ id, call }: Asked): Promise<void> {
    let reply: Reply;
    try {
        await begun;
        if (unfit) return;
        reply = answer(call);
        if (makesFiles(call)) await more();
    } catch (thrown) {
        if (thrown instanceof Lacking) {
            reply = { kind: 'lacks', lack: thrown.lack, detail: thrown.message };
        } else {
            // A panic has no way back here: nothing in memory can be trusted.
            unfit = true;
            reply = { kind: 'trapped', detail: words(thrown) };
        }
    }
    const answered: Answered = { id, reply };
    self.postMessage(answered);
}

begun.catch(() => undefined);
self.onmessage = (event: MessageEvent<Asked>) => {
    last = last.then(() => serve(event.data));
};
