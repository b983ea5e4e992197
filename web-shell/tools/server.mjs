// A static host for the built page, as any other: files, types, compression, and nothing kept back.

import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { createGzip } from 'node:zlib';

const TYPES = {
    '.html': 'text/html; charset=utf-8',
    '.js': 'text/javascript; charset=utf-8',
    '.css': 'text/css; charset=utf-8',
    '.wasm': 'application/wasm',
    '.svg': 'image/svg+xml',
    '.png': 'image/png',
    '.webmanifest': 'application/manifest+json',
};
/** The page's own policy again, so that its workers have it too. */
const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self'; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** Serves a folder; `also` may answer a path itself, as a string of HTML. Answers the server. */
export function serve(folder, port, { also = () => null, seen = () => undefined } = {}) {
    const server = createServer((request, response) => {
        const path = normalize(decodeURIComponent(new URL(request.url, 'http://localhost').pathname));
        seen(path);
        const own = also(path);
        if (own !== null) {
            response.writeHead(200, { 'content-type': TYPES['.html'] }).end(own);
            return;
        }
        const name = join(folder, path.endsWith('/') ? `${path}index.html` : path);
        if (!name.startsWith(folder) || !existsSync(name) || !statSync(name).isFile()) {
            response.writeHead(404).end();
            return;
        }
        const hashed = path.startsWith('/assets/');
        const headers = {
            'content-type': TYPES[extname(name)] ?? 'application/octet-stream',
            'cache-control': hashed ? 'max-age=31536000, immutable' : 'no-cache',
            'content-security-policy': POLICY,
            'x-content-type-options': 'nosniff',
            'referrer-policy': 'no-referrer',
        };
        if (/\bgzip\b/.test(request.headers['accept-encoding'] ?? '') && !name.endsWith('.png')) {
            response.writeHead(200, { ...headers, 'content-encoding': 'gzip', vary: 'accept-encoding' });
            createReadStream(name).pipe(createGzip()).pipe(response);
        } else {
            response.writeHead(200, headers);
            createReadStream(name).pipe(response);
        }
    });
    return new Promise((then, fails) => {
        server.once('error', fails);
        server.listen(port, 'localhost', () => then(server));
    });
}
