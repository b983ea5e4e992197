// Keeps the program for use without a network. Every file has its content in its name or in the list's
// version, so a version is whole or it is not there. A newer one waits until the page says that it may
// take over.

/// <reference lib="webworker" />

declare const self: ServiceWorkerGlobalScope;

// Both are written in when the page is built.
const BUILD = '%BUILD%';
const FILES: readonly string[] = '%FILES%'.split(' ');
const NAME = `barwright ${BUILD}`;

self.addEventListener('install', (event) => {
    event.waitUntil(
        (async () => {
            const cache = await caches.open(NAME);
            await cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })));
        })(),
    );
});

self.addEventListener('activate', (event) => {
    event.waitUntil(
        (async () => {
            for (const name of await caches.keys()) if (name.startsWith('barwright ') && name !== NAME) await caches.delete(name);
            await self.clients.claim();
        })(),
    );
});

self.addEventListener('message', (event) => {
    if (event.data === 'take over') void self.skipWaiting();
});

self.addEventListener('fetch', (event) => {
    const { request } = event;
    const address = new URL(request.url);
    if (request.method !== 'GET' || address.origin !== self.location.origin) return;
    event.respondWith(
        (async () => {
            const cache = await caches.open(NAME);
            const wanted = request.mode === 'navigate' ? './' : request;
            return (await cache.match(wanted, { ignoreSearch: true, ignoreVary: true })) ?? fetch(request);
        })(),
    );
});

export {};
