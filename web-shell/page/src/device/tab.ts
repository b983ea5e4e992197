// One tab has the records. Another one is refused, and can take them over: the first is asked to let
// go, and where it does not answer its hold is taken from it.

const NAME = 'barwright';
const PATIENCE_MS = 1500;

export class Tab {
    private readonly others = new BroadcastChannel(NAME);
    private letGo: (() => void) | null = null;

    /** `leaves` closes everything when another tab takes over. */
    constructor(private readonly leaves: () => Promise<void>) {
        this.others.onmessage = (event: MessageEvent<unknown>) => {
            if (event.data === 'let go') void this.goes();
        };
    }

    get has(): boolean {
        return this.letGo !== null;
    }

    /** Takes the records where no other tab has them; answers whether it did. */
    take(): Promise<boolean> {
        return this.request({ ifAvailable: true });
    }

    /** Takes them from whichever tab has them. */
    async takeOver(): Promise<void> {
        this.others.postMessage('let go');
        const waits = new AbortController();
        const timer = setTimeout(() => waits.abort(), PATIENCE_MS);
        try {
            await this.request({ signal: waits.signal });
        } catch {
            // It sleeps or hangs.
            await this.request({ steal: true });
        } finally {
            clearTimeout(timer);
        }
    }

    private request(options: LockOptions): Promise<boolean> {
        return new Promise((then, fails) => {
            navigator.locks
                .request(NAME, options, async (lock) => {
                    if (!lock) {
                        then(false);
                        return;
                    }
                    const held = new Promise<void>((release) => {
                        this.letGo = release;
                    });
                    then(true);
                    await held;
                })
                .catch((why: unknown) => {
                    fails(why);
                    // It was taken from us.
                    if (this.letGo) void this.goes();
                });
        });
    }

    private async goes(): Promise<void> {
        const release = this.letGo;
        if (!release) return;
        this.letGo = null;
        try {
            await this.leaves();
        } finally {
            release();
        }
    }
}
