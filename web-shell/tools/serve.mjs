// Serves the built page on this machine: `node tools/serve.mjs PORT`.

import { fileURLToPath } from 'node:url';
import { serve } from './server.mjs';

const port = Number(process.argv[2] ?? 8080);
await serve(fileURLToPath(new URL('../target/site', import.meta.url)), port);
console.log(`http://localhost:${port}/`);
