// How the browsers are started: nothing of theirs may ask the network for anything.

export const CHROMIUM = {
    executablePath: process.env.BARWRIGHT_CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', '--autoplay-policy=user-gesture-required'],
};
export const FIREFOX = { browser: 'firefox', executablePath: process.env.BARWRIGHT_FIREFOX ?? '/usr/bin/firefox-esr', headless: true };
