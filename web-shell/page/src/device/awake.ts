// The screen kept on while a session runs, where the browser can.

export class Awake {
    private wanted = false;
    private lock: WakeLockSentinel | null = null;

    /** `dark` is told when the screen can't be kept on. */
    constructor(private readonly dark: () => void) {
        document.addEventListener('visibilitychange', () => {
            if (document.visibilityState === 'visible') void this.take();
        });
    }

    /** A session runs, so far as the core has said. */
    get on(): boolean {
        return this.wanted;
    }

    set(on: boolean): void {
        this.wanted = on;
        if (on) {
            void this.take();
        } else {
            void this.lock?.release();
            this.lock = null;
        }
    }

    private async take(): Promise<void> {
        if (!this.wanted || (this.lock && !this.lock.released)) return;
        if (!('wakeLock' in navigator)) {
            this.dark();
            return;
        }
        try {
            const lock = await navigator.wakeLock.request('screen');
            if (this.wanted) this.lock = lock;
            else void lock.release();
        } catch {
            // A page that is not looked at is refused, and asks again when it is.
            if (document.visibilityState === 'visible') this.dark();
        }
    }
}
