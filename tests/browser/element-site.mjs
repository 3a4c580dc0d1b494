// Pages with the course element, from servers on the loopback: the whole project, or only the engine's folder with CORS.

import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.wasm': 'application/wasm', '.json': 'application/json' };

/**
 * Serves a folder of the project. `headers(path)`: more headers; `change(path, text)`: what a page's author would edit in a page;
 * `pages`: pages made for a test, by path.
 */
export async function serveFolder(folder, { headers = () => ({}), change = (_, text) => text, pages = {} } = {}) {
  const root = join(ROOT, folder);
  const asked = [];
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, 'http://x').pathname));
    asked.push(path);
    const file = join(root, path.endsWith('/') ? `${path}index.html` : path);
    try {
      if (!file.startsWith(root)) throw new Error('outside');
      let body = pages[path] === undefined ? await readFile(file) : Buffer.from(pages[path]);
      const type = pages[path] === undefined ? TYPES[extname(file)] : TYPES['.html'];
      if (type === TYPES['.html']) body = Buffer.from(change(path, body.toString('utf8')));
      response.writeHead(200, { 'Content-Type': type ?? 'application/octet-stream', 'Content-Length': body.length, 'Cache-Control': 'no-store', ...headers(path) });
      response.end(body);
    } catch {
      response.writeHead(404, headers(path)).end();
    }
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  return { address: `http://127.0.0.1:${server.address().port}/`, asked, close: () => new Promise((done) => (server.closeAllConnections(), server.close(done))) };
}

/** Counts, in the page, how often WebAssembly is compiled and instantiated. */
export function countInstances() {
  globalThis.wasmCalls = { compile: 0, compileStreaming: 0, instantiate: 0, instantiateStreaming: 0 };
  for (const name of Object.keys(globalThis.wasmCalls)) {
    const real = WebAssembly[name];
    WebAssembly[name] = function (...all) {
      globalThis.wasmCalls[name] += 1;
      return real.apply(this, all);
    };
  }
}

/** Resolves once every element of the page has its picture. */
export const allReady = (page) => page.evaluate(() => Promise.all([...document.querySelectorAll('downbeam-view')].map((e) => ((e.loading = 'eager'), e.ready))));
