// What WebKit's driver lacks and a proxy between browser and loopback servers can give: scripts that run before a page's own, answers in
// place of the server's, a network that is gone, and what reached the console.

import { createServer, request as ask } from 'node:http';

/** Runs in every page and frame before all else: keeps what reaches the console as an error or warning, and what nobody caught. */
function listen() {
  const said = (globalThis.downbeamSaid = []);
  for (const type of ['error', 'warn']) {
    const real = console[type];
    console[type] = (...all) => {
      said.push({ type: type === 'warn' ? 'warning' : type, text: all.map(String).join(' ') });
      real.apply(console, all);
    };
  }
  addEventListener('error', ({ error, message }) => message && said.push({ type: 'uncaught', text: String(error ?? message) }));
  addEventListener('unhandledrejection', ({ reason }) => said.push({ type: 'uncaught', text: String(reason) }));
  addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) => said.push({ type: 'error', text: `refused by policy: ${violatedDirective} ${blockedURI}` }));
}

/** A pattern of Playwright's routes: `*` within a folder, `**` across, or a regular expression. */
const matcher = (pattern) => (pattern instanceof RegExp ? pattern : new RegExp(`^${pattern.replace(/[.+^$()|[\]\\?]/g, '\\$&').replace(/\{([^}]*)\}/g, (_, list) => `(?:${list.replaceAll(',', '|')})`).replaceAll('**', '\0').replaceAll('*', '[^/]*').replaceAll('\0', '.*')}$`));

/**
 * A proxy on a free port. `addScript(what, value)`: a function with a value, or a text, that runs first in every page; `routes`:
 * `{pattern, answer}`, the last that fits answers; `setOffline(on)`; `failures()` takes out what was refused since it was last asked.
 */
export async function proxyFor() {
  const scripts = [`(${listen})()`];
  const routes = [];
  let failures = [];
  let offline = false;

  const server = createServer((request, response) => {
    if (offline) return response.destroy();
    const route = routes.findLast(({ pattern }) => matcher(pattern).test(request.url));
    return route ? byRoute(route, request, response) : onwards(request, response);
  });

  function onwards(request, response) {
    const forward = ask(request.url, { method: request.method, headers: { ...request.headers, 'accept-encoding': 'identity' } }, (reply) => {
      if (reply.statusCode >= 400) failures.push(`${reply.statusCode} for ${request.url}`);
      const headers = { ...reply.headers };
      if (!/text\/html/.test(headers['content-type'] ?? '')) {
        response.writeHead(reply.statusCode, headers);
        return reply.pipe(response);
      }
      const pieces = [];
      reply.on('data', (piece) => pieces.push(piece));
      reply.on('end', () => {
        delete headers['content-length'];
        response.writeHead(reply.statusCode, headers);
        // Right after the doctype: before a policy in the page's head, which would refuse it.
        response.end(Buffer.concat(pieces).toString('utf8').replace(/^(<!doctype html>)?/i, (start) => `${start}<script>${[...scripts, 'document.currentScript.remove()'].join(';\n')}</script>`));
      });
    });
    forward.on('error', () => response.destroy());
    request.pipe(forward);
  }

  async function byRoute({ answer }, request, response) {
    await answer({
      request: () => ({ url: () => request.url, method: () => request.method }),
      fulfill: ({ status = 200, body = '', contentType = 'text/plain', headers = {} }) => {
        if (status >= 400) failures.push(`${status} for ${request.url}`);
        response.writeHead(status, { 'Content-Type': contentType, ...headers });
        response.end(body);
      },
      abort: () => response.destroy(),
      continue: () => onwards(request, response),
    });
  }

  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  return {
    address: `127.0.0.1:${server.address().port}`,
    addScript: (what, value) => scripts.push(typeof what === 'function' ? `(${what})(${JSON.stringify(value ?? null)});` : `${what.content ?? what};`),
    routes,
    setOffline: (on) => {
      offline = on;
      if (on) server.closeAllConnections();
    },
    failures: () => failures.splice(0),
    close: () => new Promise((done) => (server.closeAllConnections(), server.close(done))),
  };
}
