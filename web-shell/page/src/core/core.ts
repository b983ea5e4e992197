// The engine as the page has it: one worker, asked one thing after another, replaced when it traps.

import type { Action, EngineError, Intent, Look, Reading } from '../contract';
import type { Answered, Asked, Call, Done, Lack, Line, Reply, Shown } from './protocol';

/** Where the engine runs: a worker, or what stands for one. */
export interface Place {
    postMessage(asked: Asked): void;
    terminate(): void;
    onmessage: ((event: MessageEvent<Answered>) => unknown) | null;
    onerror: ((event: ErrorEvent) => unknown) | null;
}

/** The engine ended in the middle of a tap; whether the log has it is known again. */
export interface Replaced {
    readonly recorded: boolean;
    readonly detail: string;
}

/** Nothing can be kept in this browser, or not now. */
export class Lacks extends Error {
    constructor(
        readonly lack: Lack,
        readonly detail: string,
    ) {
        super(lack);
    }
}

interface Waiting {
    readonly asked: Asked;
    readonly then: (reply: Reply) => void;
    readonly fails: (why: unknown) => void;
}

/** Traps in a row after which it is given up. */
const MOST_TRAPS = 3;

export class Core {
    private place: Place | null = null;
    private waiting: Waiting[] = [];
    private id = 0;
    private entries = 0;
    private traps = 0;
    private name = '';

    constructor(
        private readonly make: () => Place,
        private readonly locale: string,
        /** Told whether something is being waited for. */
        private readonly busy: (waits: boolean) => void = () => undefined,
    ) {}

    /** Opens a file of records, or makes it. */
    async open(name: string): Promise<Done<null>> {
        this.name = name;
        return this.done(await this.ask({ kind: 'open', name, locale: this.locale }));
    }

    act(action: Action, reading: Reading): Promise<Shown | Replaced> {
        return this.line({ reading, action });
    }

    dispatch(intent: Intent, reading: Reading): Promise<Shown | Replaced> {
        return this.line({ reading, intent });
    }

    view(look: Look, reading: Reading): Promise<Shown | Replaced> {
        return this.line({ reading, view: look });
    }

    async check(): Promise<Done<number>> {
        return this.done(await this.ask({ kind: 'check' }));
    }

    async versions(): Promise<Done<readonly [string, number, number]>> {
        return this.done(await this.ask({ kind: 'versions' }));
    }

    /** A checked copy of the records. */
    async copy(): Promise<Uint8Array<ArrayBuffer> | { readonly error: EngineError }> {
        const reply = await this.ask({ kind: 'copy' });
        if (reply.kind === 'bytes') return reply.bytes;
        const said = this.done<number>(reply);
        if ('error' in said) return said;
        throw new Error('a copy is bytes');
    }

    /** Puts a copy in the place of the records, which are kept beside it; then opens them. */
    async restore(bytes: Uint8Array<ArrayBuffer>): Promise<Done<string>> {
        return this.reopened(this.done(await this.ask({ kind: 'restore', name: this.name, locale: this.locale, bytes })));
    }

    /** Reads what is good in damaged records; then opens that. */
    async recover(): Promise<Done<string>> {
        return this.reopened(this.done(await this.ask({ kind: 'recover', name: this.name, locale: this.locale })));
    }

    /** Closes the file and lets the worker go. */
    async end(): Promise<void> {
        if (!this.place) return;
        await this.ask({ kind: 'close' });
        this.drop();
    }

    /** Lets the worker go as it is: what it acknowledged is on disk. */
    drop(): void {
        this.place?.terminate();
        this.place = null;
        this.waiting = [];
    }

    private async reopened(said: Done<string>): Promise<Done<string>> {
        const opened = await this.open(this.name);
        return 'error' in said || 'done' in opened ? said : opened;
    }

    private async line(line: Line): Promise<Shown | Replaced> {
        const reply = await this.ask({ kind: 'line', line });
        if (reply.kind === 'trapped') return { recorded: reply.detail.startsWith(RECORDED), detail: reply.detail };
        if (reply.kind !== 'said') throw new Error('a line is answered by a screen');
        return JSON.parse(reply.json) as Shown;
    }

    private done<T>(reply: Reply): Done<T> {
        if (reply.kind === 'said') return JSON.parse(reply.json) as Done<T>;
        throw new Error(reply.kind === 'trapped' ? reply.detail : 'not an answer in words');
    }

    private ask(call: Call): Promise<Reply> {
        return new Promise((then, fails) => {
            this.id += 1;
            const waiting = { asked: { id: this.id, call }, then, fails };
            this.waiting.push(waiting);
            this.busy(true);
            this.worker().postMessage(waiting.asked);
        });
    }

    private worker(): Place {
        if (this.place) return this.place;
        const place = this.make();
        place.onmessage = (event) => this.answered(event.data);
        place.onerror = (event) => {
            if (this.place === place) void this.trapped(event.message || 'the worker ended');
        };
        this.place = place;
        return place;
    }

    private answered({ id, reply }: Answered): void {
        if (reply.kind === 'trapped') {
            void this.trapped(reply.detail);
            return;
        }
        const at = this.waiting.findIndex((one) => one.asked.id === id);
        const [waiting] = at < 0 ? [] : this.waiting.splice(at, 1);
        if (!waiting) return;
        this.busy(this.waiting.length > 0);
        if (reply.kind === 'lacks') {
            waiting.fails(new Lacks(reply.lack, reply.detail));
            return;
        }
        if (reply.kind === 'said') {
            // What was looked at is no later than what was recorded.
            if (reply.entries > 0) this.entries = reply.entries;
            this.traps = 0;
        }
        waiting.then(reply);
    }

    /** Another worker opens the file: the state is rebuilt from the log. What was asked is not asked
     *  again, since the log may have it; what waited behind it is. */
    private async trapped(detail: string): Promise<void> {
        const [first, ...later] = this.waiting;
        this.place?.terminate();
        this.place = null;
        this.waiting = [];
        this.traps += 1;
        const before = this.entries;
        try {
            if (this.traps > MOST_TRAPS) throw new Lacks('program', detail);
            const { kind } = first?.asked.call ?? { kind: 'line' };
            if (kind !== 'open' && this.name) {
                const traps = this.traps;
                await this.ask({ kind: 'open', name: this.name, locale: this.locale });
                this.traps = traps;
            }
            const recorded = this.entries > before;
            first?.then({ kind: 'trapped', detail: recorded ? `${RECORDED}${detail}` : detail });
        } catch (why) {
            first?.fails(why);
        }
        for (const waiting of later) {
            this.waiting.push(waiting);
            this.worker().postMessage(waiting.asked);
        }
    }
}

const RECORDED = 'recorded, ';
