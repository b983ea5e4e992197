// Files in and out: by a picker, dropped, pasted; as a download or by the device's own share sheet.

import type { FormFile } from '../contract';

/** Files of a kind that the core reads. */
export type FileKind = 'plan' | 'gym' | 'records';

/** No further than any file of ours could go; the core says when a text is too long. */
const MOST_TEXT = 17 << 20;
/** Types of what goes out. */
export const RECORDS = 'application/octet-stream';
export const TEXT = 'text/plain';
/** How a copy of the records begins, as any file of SQLite's. */
const BEGINS = 'SQLite format 3';

export interface Came {
    readonly kind: FileKind;
    readonly text: string;
    readonly bytes: Uint8Array<ArrayBuffer>;
}

const ACCEPTS: Readonly<Record<FileKind, string>> = { plan: '.toml,.txt,.jsonl,text/*', gym: '.toml,.txt,text/*', records: '.backup,.db,application/*' };

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

/** Files as they go out, by what is in them. */
export function records(bytes: Uint8Array<ArrayBuffer>): File {
    return new File([bytes], 'barwright.backup', { type: RECORDS });
}

export function text(file: FormFile): File {
    return new File([file.text], file.name, { type: TEXT });
}

/** The same by a name that share sheets take: they go by its end. */
export function sharedText(file: FormFile): File {
    return new File([file.text], `${file.name}.txt`, { type: TEXT });
}

/** Hands a file to the browser to be saved. */
export function save(file: File): void {
    const url = URL.createObjectURL(file);
    const link = document.createElement('a');
    link.href = url;
    link.download = file.name;
    document.body.append(link);
    link.click();
    link.remove();
    setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Whether the device's share sheet takes files of a type. */
export function canShare(type: string): boolean {
    return 'canShare' in navigator && navigator.canShare({ files: [new File(['x'], 'x', { type })] });
}

/** To the share sheet; where the browser shares no file of that name, to be saved. */
export async function share(file: File): Promise<void> {
    try {
        await navigator.share({ files: [file] });
    } catch (why) {
        const calledOff = why instanceof DOMException && why.name === 'AbortError';
        if (!calledOff) save(file);
    }
}
