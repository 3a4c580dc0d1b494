// WebKit for the checks: Debian's WebKitGTK and its driver (W3C WebDriver), spoken to by selenium-webdriver, in the calls of Playwright's
// pages that the checks use, so that one text of a check runs in every browser. What the driver cannot do throws `NotInWebKit`.

import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Builder, Capabilities } from 'selenium-webdriver';
import { kept } from './kept-process.mjs';
import { NotInWebKit, pageOf } from './webkit-page.mjs';
import { proxyFor } from './webkit-proxy.mjs';

const wait = (ms) => new Promise((done) => setTimeout(done, ms));

/** Where Debian keeps the browser that the driver drives: a folder of the library, by machine. */
function miniBrowser() {
  if (process.env.MINIBROWSER) return process.env.MINIBROWSER;
  const listed = execFileSync('dpkg', ['-L', 'libwebkit2gtk-4.1-0'], { encoding: 'utf8' });
  const found = listed.split('\n').find((path) => path.endsWith('/MiniBrowser'));
  if (!found) throw new Error('no MiniBrowser in libwebkit2gtk-4.1-0: install webkit2gtk-driver');
  return found;
}

const freePort = () =>
  new Promise((done) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address();
      server.close(() => done(port));
    });
  });

/**
 * A browser like Playwright's: `newContext`, `newPage`, `version`, `close`. A context is a driver and a session of its own, with nothing
 * kept from others, and has one page. `direct`: without the proxy, so also without routes, scripts and the console (for measuring).
 */
export async function launchWebKit({ direct = false } = {}) {
  const contexts = new Set();
  const screen = kept('Xvfb', ['-displayfd', '1', '-screen', '0', '2200x1600x24', '-nolisten', 'tcp']);
  const display = await new Promise((said, failed) => {
    screen.stdout.once('data', (data) => said(`:${String(data).trim()}`));
    screen.stdout.once('close', () => failed(new Error('Xvfb did not start')));
  });
  let version = '';

  async function newContext(options = {}) {
    const home = mkdtempSync(join(tmpdir(), 'downbeam-webkit-'));
    const downloads = join(home, 'downloads');
    mkdirSync(downloads);
    mkdirSync(join(home, '.config'));
    writeFileSync(join(home, '.config/user-dirs.dirs'), `XDG_DOWNLOAD_DIR="${downloads}"\n`);
    const port = await freePort();
    const driver = kept('WebKitWebDriver', [`--port=${port}`], {
      DISPLAY: display,
      HOME: home,
      // The language of the browser is the locale's; WebKit wants one that exists.
      LANG: 'en_US.UTF-8',
      // Without it WebKit asks for a sandbox that root does not get in a container.
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
      LIBGL_ALWAYS_SOFTWARE: '1',
      ...(options.locale ? { LANGUAGE: options.locale.replace('-', '_') } : {}),
    });
    const proxy = direct ? null : await proxyFor();
    const address = `http://127.0.0.1:${port}`;
    for (let tries = 0; ; tries += 1) {
      if (await fetch(`${address}/status`).then((r) => r.ok, () => false)) break;
      if (tries > 400) throw new Error('WebKitWebDriver did not start');
      await wait(25);
    }
    const session = await new Builder()
      .disableEnvironmentOverrides()
      .usingServer(address)
      .withCapabilities(
        new Capabilities({
          browserName: 'MiniBrowser',
          unhandledPromptBehavior: 'accept',
          ...(proxy ? { proxy: { proxyType: 'manual', httpProxy: proxy.address } } : {}),
          'webkitgtk:browserOptions': { binary: miniBrowser(), args: ['--automation'] },
        }),
      )
      .build();
    version = (await session.getCapabilities()).get('browserVersion');
    await session.manage().setTimeouts({ script: 120_000, pageLoad: 60_000 });
    let page = null;
    const context = {
      async newPage() {
        if (page) throw new NotInWebKit('a second page in a context');
        page = await pageOf({ session, context, proxy, downloads, options });
        return page;
      },
      pages: () => (page ? [page] : []),
      setOffline: async (on) => proxy.setOffline(on),
      addInitScript: async (what, value) => proxy.addScript(what, value),
      newCDPSession: () => {
        throw new NotInWebKit('a CDP session');
      },
      async close() {
        if (!contexts.delete(context)) return;
        // The window may be gone with its last page.
        await session.quit().catch(() => {});
        await driver.end();
        await proxy?.close();
        rmSync(home, { recursive: true, force: true, maxRetries: 5 });
      },
    };
    contexts.add(context);
    return context;
  }

  return {
    newContext,
    newPage: async (options) => (await newContext(options)).newPage(),
    version: () => `WebKitGTK ${version}`,
    contexts: () => [...contexts],
    async close() {
      await Promise.all([...contexts].map((context) => context.close()));
      await screen.end();
    },
  };
}
