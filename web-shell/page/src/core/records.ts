// The records as one file: a copy out, one put in their place, whether they are whole, what is good of
// a damaged one.

import type { EngineError } from '../contract';
import type { Words } from '../words/words';
import * as files from '../device/files';
import type { Core } from './core';
import type { Done } from './protocol';

/** Whoever shows what came of it. */
export interface Told {
    says(text: string): void;
    refused(error: EngineError): void;
    /** Other records are in front. */
    begunAnew(): Promise<void>;
}

export class Records {
    constructor(
        private readonly core: Core,
        private readonly words: Words,
        private readonly told: Told,
    ) {}

    async copy(then: (file: File) => void): Promise<void> {
        const copied = await this.core.copy();
        if ('error' in copied) {
            this.told.refused(copied.error);
            return;
        }
        then(files.records(copied));
        this.told.says(this.words.copied);
    }

    async check(): Promise<void> {
        const checked = await this.core.check();
        if ('error' in checked) this.told.refused(checked.error);
        else this.told.says(this.words.whole(checked.done));
    }

    async restore(bytes: Uint8Array<ArrayBuffer>): Promise<void> {
        await this.anew(await this.core.restore(bytes));
    }

    async recover(): Promise<void> {
        await this.anew(await this.core.recover());
    }

    private async anew(done: Done<string>): Promise<void> {
        await this.told.begunAnew();
        if ('error' in done) this.told.refused(done.error);
        else this.told.says(done.done);
    }
}
