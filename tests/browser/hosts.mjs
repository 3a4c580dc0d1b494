// Places that a lesson is delivered to: small servers on the loopback, each an origin of its own.

import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { launch, TYPES } from './harness.mjs';

export const WWW = fileURLToPath(new URL('../../www/', import.meta.url));
export const MODULES = fileURLToPath(new URL('./node_modules/', import.meta.url));
export const SCORING = fileURLToPath(new URL('../scoring/', import.meta.url));

/** The log of a recorded attempt, a line an event. */
export const recorded = async (name) => (await readFile(`${SCORING}${name}.log`, 'utf8')).trim().split('\n').slice(2);

/**
 * Serves `routes`, pairs of a path's beginning and either a folder or `async (request, rest) => ({ status, headers, body })`; the first that
 * fits answers.
 */
export async function origin(routes, headers = {}) {
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, 'http://x').pathname);
    const [start, source] = routes.find(([prefix]) => path.startsWith(prefix)) ?? [];
    const rest = path.slice(start?.length ?? 0);
    try {
      const reply = typeof source === 'string' ? { body: await readFile(join(source, normalize(`/${rest || 'index.html'}`))), headers: { 'Content-Type': TYPES[extname(path) || '.html'] ?? 'application/octet-stream' } } : await source(request, rest);
      response.writeHead(reply.status ?? 200, { 'Cache-Control': 'no-store', ...headers, ...reply.headers });
      response.end(reply.body ?? '');
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  const address = `http://127.0.0.1:${server.address().port}`;
  return { address, close: () => new Promise((done) => (server.closeAllConnections(), server.close(done))) };
}

/** What checks of a delivery begin with: a recorded attempt, a browser, and an origin with www and `routes`. */
export async function lessonSite(routes) {
  const attempt = await recorded('few-pictures-fixed');
  const browser = await launch();
  return { attempt, browser, site: await origin([['/www/', WWW], ...routes]) };
}

/** The whole body of a request. */
export async function bodyOf(request) {
  const pieces = [];
  for await (const piece of request) pieces.push(piece);
  return Buffer.concat(pieces).toString('utf8');
}

/** An HTML answer. */
export const html = (body, head = '') => ({ headers: { 'Content-Type': 'text/html; charset=utf-8' }, body: `<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">${head}${body}` });

/** A page that does nothing but connect a lesson to where it was opened: `globalThis.delivery`, and `notices` of what the learner was told. */
export const connected = (form) =>
  html(
    `<script type="module">
      import { connect } from '/www/delivery/choose.js';
      globalThis.notices = [];
      globalThis.delivery = await connect({ notice: (sentences) => notices.push(...sentences) });
      document.documentElement.dataset.connected = delivery.name;
    </script>`,
    form ? `<meta name="downbeam-delivery" content="${form}">` : '',
  );

/** What the lesson page hands in at the end of an attempt. */
export const resultOf = (lines, { score = 0.85, passed = true, complete = true } = {}) => ({
  lesson: 'few-pictures',
  title: 'As few pictures as it takes',
  score,
  passed,
  complete,
  seconds: 133.4,
  steps: [
    { id: 'true_ap', name: 'True AP', score: 0.9 },
    { id: 'oblique', name: 'Oblique', score: complete ? 0.8 : null },
  ],
  receipt: JSON.stringify({ format: 1, learner: 'é', log: lines, claim: { total: score } }, null, 2),
  lines,
});
