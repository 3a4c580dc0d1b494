// A page in WebKit with the calls of Playwright's that the checks use, done by the driver: real keys, presses, files and downloads.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Button, error as refused, Key, Origin } from 'selenium-webdriver';
import { DOINGS } from './doings.mjs';
import { nextDownload } from './downloads.mjs';

/** What the driver has no way to do. */
export class NotInWebKit extends Error {
  constructor(what) {
    super(`${what}: not in WebKit's driver`);
  }
}

const TIMEOUT_ms = 10_000;
const NARROWEST_px = 447;
const wait = (ms) => new Promise((done) => setTimeout(done, ms));
const KEYS = { ArrowLeft: Key.ARROW_LEFT, ArrowRight: Key.ARROW_RIGHT, ArrowUp: Key.ARROW_UP, ArrowDown: Key.ARROW_DOWN, PageUp: Key.PAGE_UP, PageDown: Key.PAGE_DOWN, ControlOrMeta: Key.CONTROL, Space: ' ' };
const keyOf = (name) => KEYS[name] ?? (name.length > 1 ? Key[name.toUpperCase()] ?? name : name);
const isExpression = (text) => {
  try {
    return Boolean(new Function(`return (${text})`));
  } catch {
    return false;
  }
};

/**
 * Runs in the page: the elements that a chain of steps leads to, through open shadow roots. Steps: `['css', selector]`, `['nth', i]` (from
 * the end when negative), `['text', words or pattern, flags]`, `['seen']`, `['holds', chain]`.
 */
function found(chain, from = document) {
  const within = (root, css) => [...root.querySelectorAll(css), ...[...root.querySelectorAll('*')].concat(root).flatMap((e) => (e.shadowRoot ? within(e.shadowRoot, css) : []))];
  const words = (text) => text.replace(/\s+/g, ' ').trim();
  const seen = (e) => (e.checkVisibility?.({ visibilityProperty: true }) ?? true) && e.getClientRects().length > 0 && e.getBoundingClientRect().width > 0;
  const steps = {
    css: (now, css) => [...new Set(now.flatMap((root) => within(root, css)))],
    nth: (now, i) => now.slice(i, i === -1 ? undefined : i + 1),
    text: (now, wanted, flags) => now.filter((e) => (flags === undefined ? words(e.textContent).toLowerCase().includes(words(wanted).toLowerCase()) : new RegExp(wanted, flags).test(words(e.textContent)))),
    seen: (now) => now.filter(seen),
    holds: (now, inner) => now.filter((e) => found(inner, e).length > 0),
  };
  return chain.reduce((now, [step, ...values]) => steps[step](now, ...values), [from]);
}

/** The steps of a selector: CSS, with Playwright's `>>`, `nth=` and a `:visible` at the end of a part. */
const stepsOf = (selector) =>
  selector.split(' >> ').flatMap((part) => {
    if (part.startsWith('nth=')) return [['nth', Number(part.slice(4))]];
    // With a list of selectors each has to be seen.
    const css = part.replaceAll(':visible', '');
    if (css === part) return [['css', css]];
    if (/:visible\s+\S/.test(part.replace(/,.*/, ''))) {
      const [before, ...after] = part.split(':visible');
      return [['css', before], ['seen'], ...stepsOf(after.join(':visible').trim())];
    }
    return [['css', css], ['seen']];
  });

const stepsOfFilter = ({ hasText, has, visible }) => [
  ...(hasText instanceof RegExp ? [['text', hasText.source, hasText.flags]] : hasText === undefined ? [] : [['text', hasText]]),
  ...(has ? [['holds', has.chain]] : []),
  ...(visible ? [['seen']] : []),
];

export async function pageOf({ session, context, proxy, downloads, options }) {
  const listeners = { console: [], pageerror: [] };
  let last = Promise.resolve();
  // The window becomes no narrower than its own buttons: a narrower page stands in a frame of its own site.
  const narrow = options.viewport?.width < NARROWEST_px ? options.viewport : null;

  // One command after the other, each in its frame: the session has one place at a time.
  const run = (frame, work) => {
    const next = last.then(async () => {
      await enter(frame);
      return work();
    });
    last = next.catch(() => {});
    return next;
  };
  async function enter(frame) {
    if (!frame) {
      await session.switchTo().defaultContent();
      if (narrow) await session.switchTo().frame(0);
      return;
    }
    await enter(frame.parent);
    await session.switchTo().frame(frame.element);
  }

  function tell(said) {
    for (const { type, text } of said) {
      if (type === 'uncaught') for (const hear of listeners.pageerror) hear(new Error(text));
      else for (const hear of listeners.console) hear({ type: () => type, text: () => text, location: () => ({ url: '' }) });
    }
    for (const text of proxy?.failures() ?? []) for (const hear of listeners.console) hear({ type: () => 'error', text: () => `Failed to load resource: ${text}`, location: () => ({ url: text.split(' for ')[1] ?? '' }) });
  }

  /** A script's value by way of JSON; what the console had is told on the way. */
  async function valueOf(frame, body, values) {
    const script = `const said = () => (globalThis.downbeamSaid ? globalThis.downbeamSaid.splice(0) : []);
      return (async () => { ${body} })().then((v) => ({ v: JSON.stringify(v), said: said() }), (e) => ({ e: String(e && e.stack ? e + ' ' + e.stack : e), said: said() }));`;
    const { v, e, said } = await run(frame, () => session.executeScript(script, ...values));
    tell(said);
    if (e !== undefined && e !== null) throw new Error(e);
    return typeof v === 'string' ? JSON.parse(v) : undefined;
  }
  const evaluate = (frame, what, value) => valueOf(frame, typeof what === 'function' ? `return (${what})(...arguments)` : isExpression(what) ? `return (${what})` : what, value === undefined ? [] : [value]);

  async function until(ask, what, timeout_ms = TIMEOUT_ms, every_ms = 25) {
    for (const end = Date.now() + timeout_ms; ; ) {
      let value;
      try {
        value = await ask();
      } catch (error) {
        // The page or a frame is going: what comes after it is asked again.
        if (!(error instanceof refused.WebDriverError) || error instanceof refused.NoSuchSessionError) throw error;
      }
      if (value) return value;
      if (Date.now() > end) throw new Error(`waited in vain for ${what}`);
      await wait(every_ms);
    }
  }

  const press = async (frame, combination) => {
    const parts = combination === '+' ? ['+'] : combination.split('+');
    const held = parts.slice(0, -1).map(keyOf);
    const name = parts.at(-1);
    const key = held.includes(Key.SHIFT) && /^[a-z]$/.test(name) ? name.toUpperCase() : keyOf(name);
    await run(frame, () => {
      let keys = session.actions({ async: true });
      for (const modifier of held) keys = keys.keyDown(modifier);
      keys = keys.keyDown(key).keyUp(key);
      for (const modifier of held.reverse()) keys = keys.keyUp(modifier);
      return keys.perform();
    });
  };
  const type = (frame, text) => run(frame, () => session.actions({ async: true }).sendKeys(text).perform());

  function locatorIn(frame, chain) {
    const find = `const found = ${found}; const all = found(${JSON.stringify(chain)});`;
    const said = JSON.stringify(chain);
    const ask = (body, value) => valueOf(frame, `${find} ${body}`, value === undefined ? [] : [value]);
    const present = (timeout) => until(() => ask('return all.length > 0'), said, timeout);
    const on = async (act, value, timeout) => (await present(timeout), ask(`return (${act})(all[0], ...arguments)`, value));
    const element = () => run(frame, () => session.executeScript(`${find} return all[0] ?? null`));
    const self = {
      chain,
      page: () => page,
      locator: (selector) => locatorIn(frame, [...chain, ...(typeof selector === 'string' ? stepsOf(selector) : selector.chain)]),
      filter: (wanted) => locatorIn(frame, [...chain, ...stepsOfFilter(wanted)]),
      first: () => locatorIn(frame, [...chain, ['nth', 0]]),
      last: () => locatorIn(frame, [...chain, ['nth', -1]]),
      nth: (i) => locatorIn(frame, [...chain, ['nth', i]]),
      count: () => ask('return all.length'),
      all: async () => Array.from({ length: await self.count() }, (_, i) => self.nth(i)),
      element: async () => (await present(), element()),
      async click() {
        for (const end = Date.now() + TIMEOUT_ms; ; ) {
          try {
            await present();
            // An input under its own label is pressed through it, as by hand.
            const target = await run(frame, () =>
              session.executeScript(`${find} const e = all[0]; if (!e || e.matches(':disabled')) return null;
                const box = e.getBoundingClientRect(); const label = e.closest('label') ?? e.labels?.[0];
                const at = e.getRootNode().elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
                return e.tagName === 'INPUT' && label && at !== e && !(box.width > 4 && getComputedStyle(e).opacity !== '0') ? label : e`),
            );
            if (target) return await run(frame, () => target.click());
          } catch (error) {
            if (!(error instanceof refused.WebDriverError) || Date.now() > end) throw error;
            await on(`(e) => e.scrollIntoView({ block: 'center', inline: 'nearest', behavior: 'instant' })`);
          }
          if (Date.now() > end) throw new Error(`cannot be pressed: ${said}`);
          await wait(50);
        }
      },
      async press(key) {
        await on('(e) => e.focus()');
        await press(frame, key);
      },
      focus: () => on('(e) => e.focus()'),
      async fill(text) {
        await on('(e) => { e.focus(); e.select?.(); }');
        if (text === '') await press(frame, 'Delete');
        else await type(frame, text);
      },
      async pressSequentially(text) {
        await on('(e) => e.focus()');
        await type(frame, text);
      },
      async setChecked(wanted) {
        if ((await self.isChecked()) !== wanted) await self.click();
      },
      check: () => self.setChecked(true),
      uncheck: () => self.setChecked(false),
      isChecked: () => on('(e) => e.checked'),
      isVisible: () => ask(`return all.length > 0 && found([['seen']], all[0]).length > 0`),
      isHidden: async () => !(await self.isVisible()),
      isDisabled: () => on("(e) => e.matches(':disabled')"),
      isEnabled: () => on("(e) => !e.matches(':disabled')"),
      textContent: () => on('(e) => e.textContent'),
      innerText: () => on('(e) => e.innerText'),
      inputValue: () => on('(e) => e.value'),
      getAttribute: (name) => on('(e, n) => e.getAttribute(n)', name),
      allTextContents: () => ask('return all.map((e) => e.textContent)'),
      allInnerTexts: () => ask('return all.map((e) => e.innerText)'),
      boundingBox: () => on('(e) => { const { x, y, width, height } = e.getBoundingClientRect(); return { x, y, width, height }; }'),
      scrollIntoViewIfNeeded: () => on("(e) => e.scrollIntoView({ block: 'nearest' })"),
      dispatchEvent: (name) => on('(e, n) => { e.dispatchEvent(new Event(n, { bubbles: true })); }', name),
      evaluate: (act, value, { timeout } = {}) => on(String(act), value, timeout),
      evaluateAll: (act, value) => ask(`return (${act})(all, ...arguments)`, value),
      selectOption: (value) =>
        on(`(e, v) => { const wanted = [...e.options].find((o) => o.value === v || o.label === v) ?? e.options[v?.index]; e.value = wanted.value; for (const n of ['input', 'change']) e.dispatchEvent(new Event(n, { bubbles: true })); }`, value),
      async setInputFiles(files) {
        const paths = [files].flat().map((file) => {
          if (typeof file === 'string') return file;
          const path = join(downloads, '..', file.name);
          writeFileSync(path, file.buffer);
          return path;
        });
        const input = await self.element();
        await run(frame, () => input.sendKeys(paths.join('\n')));
      },
      async waitFor({ state = 'visible', timeout = 30_000 } = {}) {
        const there = { visible: () => self.isVisible(), hidden: () => self.isHidden(), attached: () => self.count(), detached: async () => (await self.count()) === 0 };
        await until(there[state], `${said} to be ${state}`, timeout);
      },
      async contentFrame() {
        return frameOf({ element: await self.element(), parent: frame });
      },
    };
    if (!frame) for (const name of DOINGS.filter((name) => self[name])) self[name] = afterBefore(self, self[name]);
    return self;
  }

  let asking = false;
  /** A doing of the page's own elements, `page.before` asked first; not again for what that does itself. */
  const afterBefore = (locator, act) => async (...all) => {
    if (page.before && !asking) {
      asking = true;
      await page.before(locator).finally(() => (asking = false));
    }
    return act(...all);
  };

  /** What page and frame have in common. */
  function frameOf(frame) {
    const self = {
      evaluate: (what, value) => evaluate(frame, what, value),
      locator: (selector) => locatorIn(frame, stepsOf(selector)),
      waitForTimeout: wait,
      waitForFunction: (what, value, { timeout = 30_000 } = {}) => until(() => valueOf(frame, `return Boolean(await ${typeof what === 'function' ? `(${what})(...arguments)` : `(${what})`})`, [value ?? null]), String(what), timeout, 30),
      async waitForSelector(selector, { state = 'visible', timeout } = {}) {
        const wanted = self.locator(selector);
        await wanted.waitFor({ state, timeout });
        return wanted;
      },
      addStyleTag: ({ content }) =>
        evaluate(frame, (text) => {
          // Not a style element: a page's policy would refuse it.
          const sheet = new CSSStyleSheet();
          sheet.replaceSync(text);
          document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
        }, content),
      $eval: (selector, act, value) => self.locator(selector).evaluate(act, value),
      $$eval: (selector, act, value) => self.locator(selector).evaluateAll(act, value),
      title: () => evaluate(frame, 'document.title'),
    };
    for (const name of ['click', 'press', 'fill', 'focus', 'check', 'uncheck', 'setChecked', 'textContent', 'innerText', 'inputValue', 'getAttribute', 'isVisible', 'isHidden', 'isChecked', 'isDisabled', 'isEnabled', 'selectOption', 'setInputFiles', 'dispatchEvent']) {
      self[name] = (selector, ...rest) => self.locator(selector)[name](...rest);
    }
    return self;
  }

  let at = { x: 0, y: 0 };
  const pointer = (work) => run(null, () => work(session.actions({ async: true })).perform());
  const mouse = {
    async move(x, y, { steps = 1 } = {}) {
      const from = at;
      at = { x, y };
      await pointer((hand) => Array.from({ length: steps }, (_, i) => (i + 1) / steps).reduce((now, share) => now.move({ origin: Origin.VIEWPORT, duration: 0, x: Math.round(from.x + (x - from.x) * share), y: Math.round(from.y + (y - from.y) * share) }), hand));
    },
    down: () => pointer((hand) => hand.press(Button.LEFT)),
    up: () => pointer((hand) => hand.release(Button.LEFT)),
    async click(x, y) {
      await mouse.move(x, y);
      await mouse.down();
      await mouse.up();
    },
    wheel: (dx, dy) => pointer((hand) => hand.scroll(Math.round(at.x), Math.round(at.y), dx, dy)),
  };

  const page = {
    ...frameOf(null),
    /** Called with the locator before anything is done to it; null for nothing. */
    before: null,
    mouse,
    keyboard: {
      press: (key) => press(null, key),
      type: (text) => type(null, text),
      down: (key) => run(null, () => session.actions({ async: true }).keyDown(keyOf(key)).perform()),
      up: (key) => run(null, () => session.actions({ async: true }).keyUp(keyOf(key)).perform()),
    },
    context: () => context,
    on: (name, hear) => listeners[name]?.push(hear),
    async goto(url) {
      if (!narrow) return run(null, () => session.get(url));
      const { origin } = new URL(url);
      const { width, height } = narrow;
      const around = { pattern: `${origin}/around`, answer: (route) => route.fulfill({ contentType: 'text/html', body: `<!doctype html><body style="margin:0"><iframe src="${url}" style="border:0;width:${width}px;height:${height}px"></iframe>` }) };
      proxy.routes.push(around);
      last = last.then(() => session.switchTo().defaultContent());
      await last;
      await session.get(`${origin}/around`);
      proxy.routes.splice(proxy.routes.indexOf(around), 1);
    },
    reload: () => run(null, () => session.navigate().refresh()),
    url: () => evaluate(null, 'location.href'),
    addInitScript: async (what, value) => {
      if (!proxy) throw new NotInWebKit('a script before the page, without the proxy');
      proxy.addScript(what, value);
    },
    route: async (pattern, answer) => {
      if (!proxy) throw new NotInWebKit('a route, without the proxy');
      proxy.routes.push({ pattern, answer });
    },
    unroute: async (pattern) => void proxy.routes.splice(0, proxy.routes.length, ...proxy.routes.filter((route) => String(route.pattern) !== String(pattern))),
    waitForEvent: (name) => {
      if (name === 'download') return nextDownload(downloads);
      throw new NotInWebKit(`waiting for ${name}`);
    },
    emulateMedia: async () => {
      throw new NotInWebKit('another medium');
    },
    bringToFront: async () => {},
    viewportSize: () => page.evaluate(() => ({ width: innerWidth, height: innerHeight })),
    async setViewportSize({ width, height }) {
      // The window is larger than the page in it.
      for (let tries = 0; tries < 20; tries += 1) {
        const [w, h] = await evaluate(null, '[innerWidth, innerHeight]');
        if (w === width && h === height) return;
        const rect = await run(null, () => session.manage().window().getRect());
        await run(null, () => session.manage().window().setRect({ x: 0, y: 0, width: rect.width + width - w, height: rect.height + height - h }));
        await wait(50);
      }
      throw new NotInWebKit(`a window of ${width} by ${height}`);
    },
    async screenshot({ path } = {}) {
      const png = Buffer.from(await run(null, () => session.takeScreenshot()), 'base64');
      if (path) writeFileSync(path, png);
      return png;
    },
    close: () => context.close(),
  };
  if (narrow) await session.manage().window().setRect({ x: 0, y: 0, width: NARROWEST_px + 153, height: narrow.height + 100 });
  else if (options.viewport) await page.setViewportSize(options.viewport);
  return page;
}
