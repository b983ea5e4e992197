import { App } from './app';
import { wordsFor } from './language';
import './style.css';

const { language, words } = wordsFor(navigator.language);
document.documentElement.lang = language;
// The name and the words that a device shows of an installed page are of its language too.
document.querySelector('link[rel=manifest]')?.setAttribute('href', ['manifest', language, 'webmanifest'].join('.'));
document.querySelector('meta[name=description]')?.setAttribute('content', words.description);

const into = document.getElementById('page');
const live = document.getElementById('said');

/** What has to be there before anything is tried; in words where it is not. */
function lacks(): string | null {
    if (!window.isSecureContext) return words.lacks.secure;
    if (!('WebAssembly' in window && 'Worker' in window && 'locks' in navigator && 'BroadcastChannel' in window)) return words.lacks.old;
    if (typeof navigator.storage?.getDirectory !== 'function') return words.lacks.files;
    return null;
}

if (into && live) {
    const lack = lacks();
    if (lack) into.textContent = lack;
    else void new App(into, live).begin();
}
