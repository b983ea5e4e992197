// Files in and out: by a picker, dropped, pasted; as a download or by the device's own share sheet.

import type { FileKind } from '../view/hands';

/** No further than any file of ours could go; the core says when a text is too long. */
const MOST_TEXT = 2 << 20;
const TYPE = 'application/vnd.sqlite3';
/** How a copy of the records begins, as any file of SQLite's. */
const BEGINS = 'SQLite format 3';
const NAME = 'barwright.backup';

export interface Came {
    readonly kind: FileKind;
    readonly text: string;
    readonly bytes: Uint8Array<ArrayBuffer>;
}

const ACCEPTS: Readonly<Record<FileKind, string>> = { plan: '.toml,.txt,text/*', gym: '.toml,.txt,text/*', records: '.backup,.db,application/*' };

/** Asks for a file of a kind; `came` gets it, or null for one that can't be read. */
export function pick(kind: FileKind, came: (file: Came | null) => void): void {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = ACCEPTS[kind];
    input.className = 'hidden';
    input.dataset['picks'] = kind;
    input.onchange = () => {
        const [file] = input.files ?? [];
        input.remove();
        if (file) void readFile(file, kind).then(came);
    };
    input.addEventListener('cancel', () => input.remove());
    document.body.append(input);
    input.click();
}

async function readFile(file: File, kind: FileKind): Promise<Came | null> {
    try {
        const bytes = new Uint8Array(await file.arrayBuffer());
        if (kind === 'records') return { kind, text: '', bytes };
        if (bytes.length > MOST_TEXT) return null;
        return { kind, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), bytes };
    } catch {
        return null;
    }
}

/** What is dropped or pasted anywhere: a file, or the text of a plan itself. */
export function listen(kind: () => FileKind, came: (file: Came | null) => void): void {
    const takes = (data: DataTransfer | null): boolean => {
        const [file] = data?.files ?? [];
        if (file) {
            void dropped(file, kind()).then(came);
            return true;
        }
        const text = data?.getData('text/plain') ?? '';
        if (!text.includes('\n')) return false;
        came({ kind: kind(), text, bytes: new Uint8Array() });
        return true;
    };
    document.addEventListener('dragover', (event) => event.preventDefault());
    document.addEventListener('drop', (event) => {
        event.preventDefault();
        takes(event.dataTransfer);
    });
    document.addEventListener('paste', (event) => {
        if (event.target instanceof HTMLInputElement) return;
        if (takes(event.clipboardData)) event.preventDefault();
    });
}

async function dropped(file: File, kind: FileKind): Promise<Came | null> {
    const begins = await file.slice(0, BEGINS.length).text();
    return readFile(file, begins === BEGINS ? 'records' : kind);
}

/** Hands bytes to the browser to be saved. */
export function save(bytes: Uint8Array<ArrayBuffer>): void {
    const url = URL.createObjectURL(new Blob([bytes], { type: TYPE }));
    const link = document.createElement('a');
    link.href = url;
    link.download = NAME;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

function shared(bytes: Uint8Array<ArrayBuffer>): ShareData {
    return { files: [new File([bytes], NAME, { type: 'application/octet-stream' })] };
}

export function canShare(): boolean {
    return 'canShare' in navigator && navigator.canShare(shared(new Uint8Array(1)));
}

export async function share(bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    try {
        await navigator.share(shared(bytes));
    } catch {
        // It was called off.
    }
}
