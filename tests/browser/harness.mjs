// A page of Downbeam in a real browser, served by a small static server on the loopback. The browser is Chromium, or the one that the
// variable BROWSER names: firefox or webkit.

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { extname, join, normalize, resolve } from 'node:path';
import { after } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium, firefox } from 'playwright-core';
import { DOINGS } from './doings.mjs';
import { nextDownload } from './downloads.mjs';

/** The project's folder. */
export const ROOT = fileURLToPath(new URL('../../', import.meta.url));
const axe = createRequire(import.meta.url)('axe-core');
/** What axe-core is asked: WCAG 2.2 AA, and its own good practice. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
export const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript', '.css': 'text/css', '.svg': 'image/svg+xml', '.wasm': 'application/wasm', '.json': 'application/json', '.jsonld': 'application/ld+json' };

/**
 * Serves a folder of the project, or one anywhere, on a free port of the loopback; `asked`: the paths that were asked for, in order.
 * `gzip`: packed as web hosts do (by a copy that lies beside, where there is one); `headers(path)`: more headers; `change(path, text)`: what
 * a page's author would edit in a page; `pages`: pages made for a check, by path.
 */
export async function serve(folder = 'www', { gzip = false, headers = () => ({}), change = (_, text) => text, pages = {} } = {}) {
  const root = resolve(ROOT, folder);
  const asked = [];
  const server = createServer(async (request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url, 'http://x').pathname));
    asked.push(path);
    const file = join(root, path.endsWith('/') ? `${path}index.html` : path);
    try {
      if (!file.startsWith(root)) throw new Error('outside');
      const made = pages[path];
      const type = made === undefined ? TYPES[extname(file)] : TYPES['.html'];
      let body = made === undefined ? await readFile(file) : Buffer.from(made);
      if (type === TYPES['.html']) body = Buffer.from(change(path, body.toString('utf8')));
      if (gzip) body = await readFile(`${file}.gz`).catch(() => gzipSync(body, { level: 9 }));
      response.writeHead(200, { 'Content-Type': type ?? 'application/octet-stream', 'Content-Length': body.length, 'Cache-Control': 'no-store', ...(gzip ? { 'Content-Encoding': 'gzip' } : {}), ...headers(path) });
      response.end(body);
    } catch {
      response.writeHead(404, headers(path)).end();
    }
  });
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  return { address: `http://127.0.0.1:${server.address().port}/`, asked, close: () => new Promise((done) => (server.closeAllConnections(), server.close(done))) };
}

/** Which browser the checks run in. */
export const BROWSER = process.env.BROWSER ?? 'chromium';

const LAUNCHERS = {
  chromium: () => {
    const executablePath = process.env.CHROMIUM ?? execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
    return chromium.launch({ executablePath, headless: true, args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'] });
  },
  firefox: launchFirefox,
  // Its libraries are loaded for it alone.
  webkit: async (options) => (await import('./webkit.mjs')).launchWebKit(options),
};

/** Debian's Firefox as it is, over WebDriver BiDi. It does not number its downloads, and Playwright tells of none without a number. */
async function launchFirefox() {
  const home = mkdtempSync(join(tmpdir(), 'downbeam-firefox-'));
  const downloads = join(home, 'downloads');
  mkdirSync(downloads);
  const browser = await firefox.launch({ channel: 'moz-firefox', executablePath: join(ROOT, 'tests/browser/firefox'), headless: true, downloadsPath: downloads, firefoxUserPrefs: { 'browser.download.alwaysOpenPanel': false } });
  browser.on('disconnected', () => rmSync(home, { recursive: true, force: true }));
  browser.on('context', (context) => context.on('page', (page) => {
    const { waitForEvent } = page;
    page.waitForEvent = (name, ...rest) => (name === 'download' ? nextDownload(downloads) : waitForEvent.call(page, name, ...rest));
  }));
  return browser;
}

/** All that there are. */
export const BROWSERS = Object.keys(LAUNCHERS);

const launched = new Set();
/** Ends all browsers that were launched. */
export const closeBrowsers = () => Promise.all([...launched].map((browser) => browser.close()));
// However a file of tests ends, its browsers end with it.
if (process.env.NODE_TEST_CONTEXT) after(closeBrowsers);

/** The browser, with a fresh user data directory each time. `kind`: another than BROWSER; `direct`: see webkit.mjs. Where several files share a process they share its browser. */
export async function launch({ kind = BROWSER, ...options } = {}) {
  if (!LAUNCHERS[kind]) throw new Error(`no browser '${kind}': allowed are ${BROWSERS.join(', ')}`);
  if (process.env.CHECKS_ONE_BROWSER) return shared(kind, options);
  const browser = await LAUNCHERS[kind](options);
  launched.add(browser);
  return browser;
}

/** The browsers of this process that are shared, by kind and options. */
const browsers = new Map();

/** A file's share in a browser: its own contexts, with nothing kept from others, which closing it closes. A browser that has gone is replaced. */
async function shared(kind, options) {
  const key = JSON.stringify([kind, options]);
  let browser = await browsers.get(key);
  if (!browser || browser.isConnected?.() === false) {
    browsers.set(key, LAUNCHERS[kind](options));
    browser = await browsers.get(key);
    launched.add(browser);
  }
  const own = new Set();
  const share = {
    newContext: async (how) => {
      const context = await browser.newContext(how);
      own.add(context);
      return context;
    },
    newPage: async (how) => {
      const page = await browser.newPage(how);
      own.add(page.context());
      return page;
    },
    contexts: () => browser.contexts().filter((context) => own.has(context)),
    close: () => Promise.all([...own].map((context) => context.close().catch(() => {}))),
  };
  return new Proxy(browser, { get: (target, name) => share[name] ?? (typeof target[name] === 'function' ? target[name].bind(target) : target[name]) });
}

/** For a test that only some browsers can do, as its option `skip`: `skip: only('chromium', 'touch by CDP')`. */
export const only = (browsers, why) => (browsers.split(' ').includes(BROWSER) ? false : `${browsers} alone: ${why}`);

/** Server and browser together, for a file of tests. */
export async function setUp(options) {
  const [server, browser] = await Promise.all([serve(), launch(options)]);
  return { server, browser, tearDown: async () => (await browser.close(), await server.close()) };
}

/** Page and element settle once nothing has happened for so long, ms (`SETTLE_MS` there); hands of tests need no such pause. */
const SETTLE_MS = { own: 350, hurried: 70 };

/** Lets what is opened from now on settle soon. */
const hurry = (page) => page.addInitScript(({ own, hurried }) => {
  const wait = globalThis.setTimeout;
  globalThis.setTimeout = (act, ms, ...given) => wait(act, ms === own ? hurried : ms, ...given);
}, SETTLE_MS);

/**
 * Opens the page. `errors` collects what reached the console as an error, and uncaught exceptions.
 * `prepare(page)` runs before the navigation (routes, broken storage). `ownPace`: it settles no sooner than for a learner.
 */
export async function open({ browser, server }, { hash = '', path = '', options = {}, prepare, ready = true, ownPace = false } = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, ...options });
  const page = await context.newPage();
  reachable(page);
  const errors = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  if (!ownPace) await hurry(page);
  await prepare?.(page);
  await page.goto(server.address + path + hash);
  if (ready) await settled(page);
  return { page, errors, close: () => context.close() };
}

/** The sheet that holds an element, opened by its button as a learner opens it; an open one that the element does not stand in is closed by Escape. */
export async function reach(locator) {
  const page = locator.page();
  const wanted = await locator.first().evaluate((element) => {
    if (element.closest('dialog')) return null;
    const now = document.querySelector('[popover]:popover-open');
    const sheet = element.closest('[popover]');
    const large = document.querySelector('#gantry[data-large]');
    return { close: Boolean(now && now !== sheet && !element.closest('[popovertarget]')), shut: Boolean(large && !large.contains(element) && element.id !== 'gantry-open'), open: sheet && sheet !== now ? sheet.id : '', large: Boolean(element.closest('#gantry') && !large && !element.checkVisibility()) };
  }, undefined, { timeout: 1500 }).catch(() => null);
  if (!wanted) return;
  if (wanted.close || wanted.shut) await page.keyboard.press('Escape');
  if (wanted.open) await openSheet(page, wanted.open);
  if (wanted.large && (await page.locator('#gantry-open').isVisible())) await pressAlone(page.locator('#gantry-open'));
}

/** Opens a sheet by its button: `case`, `picture`, `checks`, `exposure`, `needle` (its id may be given too), or the menu. */
export async function openSheet(page, name) {
  const id = name === 'menu' || name.endsWith('-sheet') ? name : `${name}-sheet`;
  const opener = page.locator(`[popovertarget="${id}"]:not([popovertargetaction])`);
  if ((await opener.count()) && (await opener.isVisible()) && !(await page.locator(`#${id}:popover-open`).count())) await pressAlone(opener);
}

let press = null;
/** A press that opens nothing first; a page in WebKit sees to that by itself, also beside others in one process. */
const pressAlone = (locator) => (press && !('before' in locator.page()) ? press.call(locator) : locator.click());
/** Lets all that a page is asked to do in these words open sheets by itself, once a run. */
function reachable(page) {
  // A page in WebKit asks by itself: it is an object of its own kind, without a prototype to change.
  if ('before' in page) return void (page.before = reach);
  if (press) return;
  const [ofLocator, ofPage] = [page.locator('body'), page].map(Object.getPrototypeOf);
  press = ofLocator.click;
  for (const name of DOINGS) {
    const own = ofLocator[name];
    ofLocator[name] = async function (...all) {
      if (this.page().frames().length === 1) await reach(this);
      return own.apply(this, all);
    };
    const onPage = ofPage[name];
    if (!onPage) continue;
    ofPage[name] = async function (selector, ...all) {
      if (this.frames().length === 1) await reach(this.locator(selector));
      return onPage.call(this, selector, ...all);
    };
  }
}

/** The picture is there, the page has said all it has to say about it, and what comes after it has come or failed. */
export async function settled(page) {
  await page.waitForFunction(() => {
    const { settled: still, later } = document.documentElement.dataset;
    return still === 'yes' && later !== 'coming' && document.getElementById('film-state').hidden;
  }, null, { timeout: 30_000 }).catch(async (error) => {
    // What it waited for.
    const stands = await page.evaluate(() => ({ ...document.documentElement.dataset, picture: document.getElementById('film-state').textContent.trim(), notice: document.getElementById('notice-text').textContent })).catch(() => 'the page does not answer');
    throw new Error(`not settled: ${JSON.stringify(stands)}; ${String(error).split('\n')[0]}`);
  });
}

/** The lesson that was begun runs, and its patient stands. */
export async function lessonStands(page) {
  await page.waitForFunction(() => document.body.dataset.lesson === 'running' && !document.getElementById('stage-list').hidden, null, { timeout: 30_000 });
  await settled(page);
}

/** The picture has failed to come, the page says so, and what comes after a picture has come. */
export async function failed(page) {
  await page.waitForSelector('#film-state[data-failed=true]');
  await page.waitForFunction(() => document.documentElement.dataset.later === 'done', null, { timeout: 30_000 });
}

/** The live film is as sharp as it becomes at rest; any other picture is so at once. */
export const filmRests = (page) => page.waitForFunction(() => document.documentElement.dataset.film !== 'moving', null, { timeout: 30_000 });

/** A hash of the radiograph's pixels, once it rests: a page under load may draw it coarsely once more between the wait and the look. */
export async function pictureHash(page, id = 'radiograph') {
  for (;;) {
    await filmRests(page);
    const hash = await page.evaluate(async (canvasId) => {
      if (document.documentElement.dataset.film === 'moving') return null;
      const canvas = document.getElementById(canvasId);
      const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
      const digest = await crypto.subtle.digest('SHA-256', data);
      return [...new Uint8Array(digest)].map((b) => b.toString(16).padStart(2, '0')).join('');
    }, id);
    if (hash) return hash;
  }
}

/** Types an angle as a learner would, and waits for the page to settle. */
export async function typeAngle(page, key, degrees) {
  const field = page.locator(`#turn-${key}-number`);
  await field.press('ControlOrMeta+A');
  if (degrees === '') await field.press('Delete');
  else await field.pressSequentially(String(degrees));
  await field.press('Enter');
  await page.waitForTimeout(30);
  await settled(page);
}

/**
 * What axe-core finds on the page: a sentence a violation, and the rules that it found kept. `rules`: these alone, such as
 * `['color-contrast']` where only colours differ from a look that was seen whole. `nodes`: with what it looked at, which takes longer.
 */
export async function axeFinds(page, { rules, nodes = false } = {}) {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  // Nothing is fetched anew for it; what is kept is listed once a rule.
  const options = { runOnly: rules ? { type: 'rule', values: rules } : { type: 'tag', values: RULES }, preload: false, ...(nodes ? {} : { resultTypes: ['violations'] }) };
  const { violations, passes } = await page.evaluate((o) => globalThis.axe.run(o), options);
  return { violations: violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(', ')}`), passes };
}

/** axe-core finds nothing in the look that the page has, nor in its colours in the other theme and in forced colours. */
export async function axeClean(page, what, { looks = ['light', 'forced'] } = {}) {
  const seen = await axeFinds(page);
  assert.deepEqual(seen.violations, [], what);
  assert.ok(seen.passes.length > 20, 'axe looked at the page');
  const colours = async (look) => assert.deepEqual((await axeFinds(page, { rules: ['color-contrast'] })).violations, [], `${what}, ${look}`);
  const theme = (name) => page.evaluate((to) => {
    const { dataset } = document.documentElement;
    const was = dataset.theme;
    dataset.theme = to;
    return was;
  }, name);
  if (looks.includes('light')) {
    const was = await theme('light');
    await colours('light');
    await theme(was);
  }
  if (looks.includes('forced')) {
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    await colours('forced colours');
    await page.emulateMedia({ forcedColors: null, reducedMotion: null });
  }
}

/** How far the page can be scrolled sideways, CSS px. */
export const sideways = (page) => page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

/** What `cargo run` with these words prints, in a folder. */
export const cargo = (folder, ...words) => execFileSync('cargo', ['run', '--locked', '--quiet', '--manifest-path', join(ROOT, 'Cargo.toml'), ...words], { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 28 });

/** Sets the theme, in the menu where the page has one. */
export async function useTheme(page, name) {
  const menu = page.locator('#menu-button');
  if (await menu.count()) await menu.click();
  await page.selectOption('#theme', name);
  if (await menu.count()) await page.keyboard.press('Escape');
}
