// The page as a program: kept for use without a network, installed, brought up to date.

import { script } from './trust';

interface InstallPrompt extends Event {
    prompt(): Promise<unknown>;
}

export class Install {
    private offer: InstallPrompt | null = null;
    private waiting: ServiceWorker | null = null;
    private taking = false;

    constructor(private readonly changed: () => void) {
        window.addEventListener('beforeinstallprompt', (event) => {
            event.preventDefault();
            this.offer = event as InstallPrompt;
            changed();
        });
        window.addEventListener('appinstalled', () => {
            this.offer = null;
            changed();
        });
    }

    get canInstall(): boolean {
        return this.offer !== null;
    }

    /** A newer version is here and waits. */
    get updateWaits(): boolean {
        return this.waiting !== null;
    }

    install(): void {
        void this.offer?.prompt();
        this.offer = null;
        this.changed();
    }

    /** The newer version takes over, and the page begins again with it. */
    update(): void {
        this.taking = true;
        this.waiting?.postMessage('take over');
    }

    async begin(): Promise<void> {
        if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
        navigator.serviceWorker.addEventListener('controllerchange', () => {
            if (this.taking) location.reload();
        });
        try {
            const registration = await navigator.serviceWorker.register(script('sw.js') as string, { updateViaCache: 'none' });
            const look = (): void => {
                // The first one to be installed waits for nobody.
                this.waiting = navigator.serviceWorker.controller ? registration.waiting : null;
                this.changed();
            };
            registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
            document.addEventListener('visibilitychange', () => {
                if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
            });
            look();
        } catch {
            // Without one the page works while there is a network.
        }
    }
}

/** Whether the browser has promised to keep what is stored; none where it doesn't say. */
export async function promised(): Promise<boolean | null> {
    return 'persisted' in navigator.storage ? navigator.storage.persisted() : null;
}

export async function askPromise(): Promise<void> {
    if ('persist' in navigator.storage) await navigator.storage.persist();
}
