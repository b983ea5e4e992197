import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig } from 'vite';

const here = fileURLToPath(new URL('.', import.meta.url));
const out = fileURLToPath(new URL('../target/site', import.meta.url));

function files(folder) {
    return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
        const path = join(folder, entry.name);
        return entry.isDirectory() ? files(path) : [path];
    });
}

/** What the service worker keeps, and the version that its content comes to. */
const keeps = {
    name: 'keeps',
    apply: 'build',
    async closeBundle() {
        const all = files(out).filter((path) => !path.endsWith('sw.js')).sort();
        const sum = createHash('sha256');
        for (const path of all) sum.update(relative(out, path)).update(readFileSync(path));
        const version = sum.digest('hex').slice(0, 12);
        const { output } = await build({
            configFile: false,
            root: here,
            logLevel: 'warn',
            publicDir: false,
            build: { write: false, target: 'es2022', lib: { entry: join(here, 'src/sw.ts'), formats: ['es'], fileName: 'sw' } },
        }).then(([one]) => one);
        const list = ['./', ...all.map((path) => relative(out, path)).filter((name) => name !== 'index.html')];
        const code = output[0].code.replace('%BUILD%', version).replace('%FILES%', list.join(' '));
        writeFileSync(join(out, 'sw.js'), code);
        writeFileSync(join(out, '..', 'build'), version);
    },
};

export default defineConfig({
    root: here,
    base: './',
    build: { outDir: out, emptyOutDir: true, target: 'es2022', assetsInlineLimit: 0, modulePreload: { polyfill: false }, cssCodeSplit: false },
    worker: { format: 'es' },
    plugins: [keeps],
});
