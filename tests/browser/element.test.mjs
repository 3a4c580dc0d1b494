// The course element in pages of others: one engine, another origin, strict policies, coming and going, and what it says.

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import { SHAPES } from '../../www/element/interface.js';
import { allReady, countInstances } from './element-site.mjs';
import { launch, only, serve } from './harness.mjs';

const CORS = { 'Access-Control-Allow-Origin': '*' };
let browser;
let site;
const PAGES = {};
before(async () => {
  browser = await launch();
  site = await serve('.', { pages: PAGES });
});
after(async () => {
  await browser.close();
  await site.close();
});

/** A page with these elements, as the project's server has it. */
function pageOf(body, script = '/www/element/downbeam-view.js') {
  const path = `/page-${Object.keys(PAGES).length}.html`;
  PAGES[path] = `<!doctype html><html lang="en"><meta charset="utf-8"><link rel="icon" href="data:,"><title>Course</title><script type="module" src="${script}"></script><main><h1>Course</h1>${body}</main></html>`;
  return path;
}

/** Opens a path; `errors` collects what reached the console, `heard` (in the page) the element's events. */
async function open(path, { from = site, options = {}, ready = true, prepare } = {}) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  const errors = [];
  page.on('console', (message) => ['error', 'warning'].includes(message.type()) && errors.push(`${message.text()} ${message.location().url}`));
  page.on('pageerror', (error) => errors.push(String(error)));
  await page.addInitScript(countInstances);
  await page.addInitScript(() => {
    globalThis.heard = [];
    for (const type of ['ready', 'change', 'reached', 'error']) addEventListener(`downbeam-${type}`, (event) => globalThis.heard.push({ type, id: event.target.id, ...event.detail }));
  });
  await prepare?.(page);
  await page.goto(from.address + path.replace(/^\//, ''));
  if (ready) {
    await page.waitForFunction(() => customElements.get('downbeam-view'));
    await allReady(page);
  }
  return { page, errors: () => errors.filter((e) => !e.endsWith('/favicon.ico')), close: () => context.close() };
}

const heard = (page, type) => page.evaluate((wanted) => globalThis.heard.filter((event) => event.type === wanted), type);
const waitHeard = (page, type, count = 1) => page.waitForFunction(([wanted, n]) => globalThis.heard.filter((event) => event.type === wanted).length >= n, [type, count]);
// An engine is two files of wasm.
const engines = (page) => page.evaluate(() => (globalThis.wasmCalls.instantiate + globalThis.wasmCalls.instantiateStreaming) / 2);
const usage = (page) => page.evaluate(() => customElements.get('downbeam-view').usage());
const shades = (page, at = 0) =>
  page.evaluate((i) => {
    const canvas = document.querySelectorAll('downbeam-view')[i].shadowRoot.querySelector('canvas');
    const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
    return new Set(data.filter((_, k) => k % 4 === 0)).size;
  }, at);
/** Types an angle into the element's own field. */
async function type(page, key, degrees, at = 0) {
  const field = page.locator(`downbeam-view >> nth=${at}`).locator(`#turn-${key}-number`);
  await field.press('ControlOrMeta+A');
  await field.pressSequentially(String(degrees));
  await field.press('Enter');
}

test('the course page: two elements, one engine, one patient, and a listener that shows the result', async () => {
  const { page, errors, close } = await open('examples/course-page/');
  assert.equal(await engines(page), 1);
  assert.equal(await page.evaluate(() => performance.getEntriesByType('resource').filter((r) => r.name.endsWith('.wasm')).length), 2);
  assert.deepEqual(await usage(page).then(({ views, patients }) => ({ views, patients })), { views: 2, patients: ['average'] });
  assert.ok((await shades(page, 0)) > 60 && (await shades(page, 1)) > 60, 'both have a picture');
  // The figure stands at the best view, by the engine's own solver; the exercise does not.
  const [figure, exercise] = await page.evaluate(() => ['figure', 'exercise'].map((id) => ({ score: document.getElementById(id).score, reached: document.getElementById(id).reached })));
  assert.deepEqual(figure, { score: 1, reached: false });
  assert.ok(exercise.score < 0.5 && !exercise.reached);
  assert.match(await page.textContent('#result'), /^Ready/);
  const best = await page.evaluate(() => document.getElementById('figure').report().then((r) => r.best));
  await type(page, 'tilt', best.tilt.toFixed(1), 1);
  await waitHeard(page, 'change', 2);
  await type(page, 'oblique', best.oblique.toFixed(1), 1);
  await page.waitForFunction(() => document.getElementById('result').textContent.startsWith('Found'));
  assert.equal((await heard(page, 'reached')).length, 1);
  assert.equal((await heard(page, 'reached'))[0].id, 'exercise');
  await page.click('#again');
  await page.waitForFunction(() => document.getElementById('exercise').tilt === 10);
  assert.equal(await page.evaluate(() => document.getElementById('figure').oblique), Math.round(best.oblique * 10) / 10, 'the figure has not moved');
  assert.deepEqual(errors(), []);
  await close();
});

test('what stands between the tags is shown without JavaScript', { skip: only('chromium', 'a page without scripts') }, async () => {
  const { page, close } = await open('examples/course-page/', { options: { javaScriptEnabled: false }, ready: false });
  assert.ok(await page.locator('#figure p').isVisible());
  await close();
});

test('strict policy, as meta and as header: runs, and nothing is refused', async () => {
  const policy = /content="(default-src [^"]+)"/.exec(await readFile(new URL('../../examples/strict-csp/index.html', import.meta.url), 'utf8'))[1];
  const strict = await serve('.', { headers: (path) => (path.startsWith('/examples/') ? { 'Content-Security-Policy': policy } : {}) });
  const prepare = (p) => p.addInitScript(() => {
    globalThis.refused = [];
    document.addEventListener('securitypolicyviolation', (event) => globalThis.refused.push(`${event.violatedDirective} ${event.blockedURI}`));
  });
  const { page, errors, close } = await open('examples/strict-csp/', { from: strict, prepare });
  assert.ok((await shades(page, 0)) > 60 && (await shades(page, 1)) > 60);
  await page.locator('downbeam-view >> nth=1').locator('#check').click();
  await type(page, 'oblique', 12);
  await waitHeard(page, 'change', 2);
  assert.deepEqual(await page.evaluate(() => globalThis.refused.filter((r) => !r.includes('favicon'))), []);
  assert.equal(await page.evaluate(() => [...document.querySelectorAll('downbeam-view')].flatMap((e) => [...e.shadowRoot.querySelectorAll('style, link, script')]).length), 0);
  assert.equal(await page.evaluate(() => getComputedStyle(document.querySelector('downbeam-view').shadowRoot.querySelector('.downbeam')).backgroundColor), 'rgb(11, 14, 17)', 'the look is there');
  assert.deepEqual(errors().filter((e) => !e.includes('frame-ancestors')), []);
  await close();
  await strict.close();
});

test('a policy without wasm-unsafe-eval: the element says that the engine could not be started', async () => {
  const bare = await serve('.', { change: (_, text) => text.replace(" 'wasm-unsafe-eval'", '') });
  const { page, close } = await open('examples/strict-csp/', { from: bare, ready: false });
  await waitHeard(page, 'error');
  const [problem] = await heard(page, 'error');
  assert.equal(problem.about, 'engine');
  assert.match(problem.sentence, /could not be started|did not load/);
  assert.match(await page.locator('downbeam-view >> nth=0').locator('.film-state').textContent(), /The picture is not available/);
  await close();
  await bare.close();
});

for (const example of ['course-page', 'strict-csp']) {
  test(`${example} with the engine on another origin`, async () => {
    const engine = await serve('www', { headers: () => CORS });
    const course = await serve('.', {
      change: (_, text) => text.replace('../../www/', engine.address).replace("script-src 'self'", `script-src 'self' ${engine.address}`).replace("connect-src 'self'", `connect-src ${engine.address}`),
    });
    const { page, errors, close } = await open(`examples/${example}/`, { from: course });
    assert.ok(!course.asked.some((path) => path.startsWith('/www/')), 'nothing of the engine comes from the course');
    assert.ok(engine.asked.includes('/pkg/downbeam_bg.wasm') && engine.asked.includes('/element/element.css'));
    assert.ok((await shades(page, 0)) > 60 && (await shades(page, 1)) > 60);
    assert.equal(await engines(page), 1);
    assert.deepEqual(errors(), []);
    await close();
    await Promise.all([engine.close(), course.close()]);
  });
}

test('another origin without CORS on the wasm: said; on all: what stands between the tags stays', async () => {
  const half = await serve('www', { headers: (path) => (path.endsWith('.wasm') ? {} : CORS) });
  const first = await open(pageOf('<downbeam-view loading="eager"></downbeam-view>', `${half.address}element/downbeam-view.js`), { ready: false });
  await waitHeard(first.page, 'error');
  assert.match((await heard(first.page, 'error'))[0].sentence, /The engine did not load \(no answer from the server\)/);
  await first.close();
  await half.close();
  const none = await serve('www');
  const second = await open(pageOf('<downbeam-view><p id="inside">A picture</p></downbeam-view>', `${none.address}element/downbeam-view.js`), { ready: false });
  assert.ok(await second.page.locator('#inside').isVisible());
  await second.close();
  await none.close();
});

test('starts only when it comes near the screen', async () => {
  const path = pageOf('<div style="height:4000px"></div><downbeam-view id="far"></downbeam-view>');
  const { page, close } = await open(path, { ready: false });
  await page.waitForFunction(() => customElements.get('downbeam-view'));
  await page.waitForTimeout(300);
  assert.equal(await engines(page), 0);
  assert.equal(await page.evaluate(() => performance.getEntriesByType('resource').filter((r) => /\/pkg\/[^/]*$/.test(r.name)).length), 0, 'nothing of the engine is fetched');
  assert.match(await page.locator('#far').locator('.film-state').textContent(), /drawn when this comes into view/);
  await page.evaluate(() => document.getElementById('far').scrollIntoView());
  await waitHeard(page, 'ready');
  assert.equal(await engines(page), 1);
  await close();
});

/** Runs in the page before everything: counts observers that are at work. */
function countObservers() {
  globalThis.observers = 0;
  for (const name of ['ResizeObserver', 'IntersectionObserver']) {
    globalThis[name] = class extends globalThis[name] {
      #at = 0;
      observe(...all) {
        globalThis.observers += 1 - this.#at;
        this.#at = 1;
        super.observe(...all);
      }
      disconnect() {
        globalThis.observers -= this.#at;
        this.#at = 0;
        super.disconnect();
      }
    };
  }
  globalThis.listening = 0;
  const { addEventListener: add } = EventTarget.prototype;
  MediaQueryList.prototype.addEventListener = function (type, act, options) {
    globalThis.listening += 1;
    options?.signal?.addEventListener('abort', () => (globalThis.listening -= 1));
    return add.call(this, type, act, options);
  };
}

test('removed elements free what they hold, moved ones keep it, and one that is put back works again', async () => {
  const path = pageOf('<div id="one"><downbeam-view id="a"></downbeam-view><downbeam-view id="b" level="L3"></downbeam-view></div><div id="two"></div>');
  const { page, errors, close } = await open(path, { prepare: (p) => p.addInitScript(countObservers) });
  await page.evaluate(async () => {
    const { TeachingRoom } = await import('/www/pkg/downbeam.js');
    const free = TeachingRoom.prototype.free;
    globalThis.freed = 0;
    TeachingRoom.prototype.free = function () {
      globalThis.freed += 1;
      return free.call(this);
    };
  });
  const now = () => page.evaluate(() => new Promise((done) => setTimeout(() => done({ freed: globalThis.freed, observers: globalThis.observers, listening: globalThis.listening, ...customElements.get('downbeam-view').usage() }))));
  const before = await now();
  assert.deepEqual([before.freed, before.views, before.patients, before.listening], [0, 2, ['average'], 2]);
  assert.equal(before.observers, 2, 'one each for the size');
  await type(page, 'oblique', 17);
  await page.evaluate(() => document.getElementById('two').append(document.getElementById('a')));
  const moved = await now();
  assert.deepEqual([moved.freed, moved.views, moved.observers, moved.listening], [0, 2, 2, 2], 'moved');
  await page.evaluate(() => document.getElementById('one').moveBefore?.(document.getElementById('a'), null));
  const movedBack = await now();
  assert.deepEqual([movedBack.freed, movedBack.views, movedBack.observers, movedBack.listening], [0, 2, 2, 2], 'moved back');
  assert.equal((await heard(page, 'ready')).length, 2, 'a move makes no new picture');
  assert.equal(await page.evaluate(() => document.getElementById('a').oblique), 17);
  await page.evaluate(() => {
    globalThis.kept = document.getElementById('a');
    globalThis.kept.remove();
  });
  const one = await now();
  assert.deepEqual([one.freed, one.views, one.observers, one.listening], [0, 1, 1, 1], 'one removed');
  await page.evaluate(() => document.getElementById('b').remove());
  const none = await now();
  assert.deepEqual([none.freed, none.views, none.patients, none.observers, none.listening], [1, 0, [], 0, 0], 'both removed');
  await assert.rejects(page.evaluate(() => globalThis.kept.report()), /not in a page/);
  await page.evaluate(() => document.getElementById('two').append(globalThis.kept));
  await waitHeard(page, 'ready', 3);
  assert.equal(await page.evaluate(() => globalThis.kept.oblique), 17, 'where the learner left it');
  assert.ok((await shades(page)) > 60);
  await type(page, 'oblique', 3);
  await page.waitForFunction(() => globalThis.heard.at(-1).settled && globalThis.heard.at(-1).oblique === 3);
  // Coming and going does not add up: once memory has its size, eight times more take no more of it.
  const comeAndGo = () => page.evaluate(async () => {
    for (let i = 0; i < 8; i++) {
      globalThis.kept.remove();
      await new Promise((done) => setTimeout(done));
      const ready = new Promise((done) => globalThis.kept.addEventListener('downbeam-ready', done, { once: true }));
      document.getElementById('one').append(globalThis.kept);
      await ready;
    }
  });
  await comeAndGo();
  const memory = (await now()).memory_bytes;
  await comeAndGo();
  const later = await now();
  assert.equal(later.freed, 17);
  assert.ok(later.memory_bytes <= memory * 1.05, `${later.memory_bytes} after ${memory}`);
  assert.equal(await engines(page), 1);
  assert.deepEqual(errors(), []);
  await close();
});

test('removed while it loads or shapes: nothing stays, nothing is said', async () => {
  const { page, errors, close } = await open(pageOf('<downbeam-view id="a"></downbeam-view>'));
  await page.evaluate(async () => {
    const element = document.getElementById('a');
    for (const wait_ms of [0, 1, 5, 20, 60]) {
      element.patient = element.patient === 'small' ? 'large' : 'small';
      await new Promise((done) => setTimeout(done, wait_ms));
      element.remove();
      // A patient that is being shaped is given back when it is done.
      const until = performance.now() + 10_000;
      while (customElements.get('downbeam-view').usage().patients.length > 0) {
        if (performance.now() > until) throw new Error(`a patient is left after ${wait_ms} ms`);
        await new Promise((done) => setTimeout(done, 20));
      }
      document.querySelector('main').append(element);
      await new Promise((done) => setTimeout(done, wait_ms));
    }
    await element.report();
  });
  assert.deepEqual(errors(), []);
  await close();
});

test('another patient: its own handle, shaped a bone at a time; elements of one patient share', async () => {
  const { page, errors, close } = await open(pageOf('<downbeam-view id="a"></downbeam-view><downbeam-view id="b" patient="small"></downbeam-view>'));
  assert.deepEqual((await usage(page)).patients.sort(), ['average', 'small']);
  await page.evaluate(async () => {
    document.getElementById('a').patient = 'small';
    await document.getElementById('a').report();
  });
  assert.deepEqual(await usage(page).then(({ views, patients }) => ({ views, patients })), { views: 2, patients: ['small'] });
  assert.equal((await heard(page, 'ready')).length, 2, 'another patient is a change');
  assert.equal((await heard(page, 'change')).at(-1).patient, 'small');
  await page.evaluate(async () => {
    const a = document.getElementById('a');
    for (const name of ['large', 'worn', 'curved']) a.patient = name;
    await a.report();
  });
  assert.deepEqual((await usage(page)).patients.sort(), ['curved', 'small']);
  assert.equal(await page.evaluate(() => document.getElementById('a').report().then((r) => r.patient)), 'curved');
  assert.equal(await page.evaluate(() => document.getElementById('b').report().then((r) => r.patient)), 'small');
  assert.deepEqual(errors(), []);
  await close();
});

test('two elements of one patient do not disturb each other', async () => {
  const { page, close } = await open(pageOf('<downbeam-view id="a" level="L2" side="right" oblique="-20"></downbeam-view><downbeam-view id="b" level="L5" oblique="15" tilt="5"></downbeam-view>'));
  const reports = await page.evaluate(async () => {
    const [a, b] = ['a', 'b'].map((id) => document.getElementById(id));
    a.tilt = 4;
    b.tilt = -6;
    await new Promise((done) => setTimeout(done, 200));
    return Promise.all([a.report(), b.report()]);
  });
  assert.deepEqual(reports.map((r) => [r.level, r.side, Math.round(r.orientation.oblique), Math.round(r.orientation.tilt)]), [['L2', 'right', -20, 4], ['L5', 'left', 15, -6]]);
  await close();
});

test('integrity: the right digest runs, a wrong one is refused in words, one that no browser would check too', async () => {
  const digest = (file) => `sha384-${createHash('sha384').update(file).digest('base64')}`;
  const [first, rest] = await Promise.all(['bg', 'rest'].map(async (part) => digest(await readFile(new URL(`../../www/pkg/downbeam_${part}.wasm`, import.meta.url)))));
  const right = `${first} ${rest}`;
  const wrong = digest('another file');
  const good = await open(pageOf(`<downbeam-view integrity="${right}"></downbeam-view><downbeam-view integrity="${right}" level="L3"></downbeam-view>`));
  assert.equal(await engines(good.page), 1);
  assert.deepEqual(good.errors(), []);
  await good.close();

  const bad = await open(pageOf(`<downbeam-view id="a" loading="eager" integrity="${wrong}"></downbeam-view>`), { ready: false });
  await waitHeard(bad.page, 'error');
  const [problem] = await heard(bad.page, 'error');
  assert.equal(problem.about, 'integrity');
  assert.equal(problem.sentence, 'The engine was not started: downbeam_bg.wasm is not the file whose digest this page gives in “integrity”.');
  assert.match(await bad.page.locator('#a').locator('.film-state').textContent(), /not the file whose digest/);
  assert.equal(await engines(bad.page), 0);
  await bad.page.evaluate((digest) => document.getElementById('a').setAttribute('integrity', digest), right);
  await waitHeard(bad.page, 'ready');
  assert.equal(await engines(bad.page), 1);
  await bad.close();

  // Each of the engine's two files is held to it.
  const half = await open(pageOf(`<downbeam-view id="a" loading="eager" integrity="${first}"></downbeam-view>`), { ready: false });
  await waitHeard(half.page, 'error');
  assert.match((await heard(half.page, 'error'))[0].sentence, /^The engine was not started: downbeam_rest\.wasm is not the file/);
  assert.ok((await engines(half.page)) < 1);
  await half.close();

  const odd = await open(pageOf('<downbeam-view id="a" loading="eager" integrity="md5-nonsense"></downbeam-view>'), { ready: false });
  await waitHeard(odd.page, 'error');
  assert.match((await heard(odd.page, 'error'))[0].sentence, /^integrity="md5-nonsense" does not fit/);
  assert.equal(await engines(odd.page), 0);
  await odd.close();

  const mixed = await open(pageOf(`<downbeam-view id="a" loading="eager"></downbeam-view><downbeam-view id="b" loading="eager" integrity="${right}"></downbeam-view>`), { ready: false });
  await waitHeard(mixed.page, 'ready');
  await waitHeard(mixed.page, 'error');
  assert.deepEqual((await heard(mixed.page, 'error')).map((e) => [e.id, e.about]), [['b', 'integrity']]);
  await mixed.close();
});

test('attributes that do not fit: a sentence each, in the element and as an event; the rest goes on', async () => {
  const { page, errors, close } = await open(pageOf('<downbeam-view id="a" level="L9" oblique="far" patient="nobody" tilt="7"></downbeam-view>'));
  const said = (await heard(page, 'error')).map((e) => [e.attribute, e.value]);
  assert.deepEqual(said.sort(), [['level', 'L9'], ['oblique', 'far'], ['patient', 'nobody']]);
  const notice = page.locator('#a').locator('[part=notice]');
  assert.match(await notice.textContent(), /level="L9" does not fit: allowed is L1.*oblique="far".*Unknown patient 'nobody': allowed are average.*“average” is used/);
  assert.deepEqual(await page.evaluate(() => { const { level, oblique, tilt, patient } = document.getElementById('a'); return [level, oblique, tilt, patient]; }), ['L4', 0, 7, 'average']);
  assert.ok((await shades(page)) > 60);
  // Put right, it is said no more.
  await page.evaluate(() => {
    const a = document.getElementById('a');
    a.setAttribute('level', 'L2');
    a.setAttribute('oblique', '5');
    a.patient = 'small';
    return a.report();
  });
  assert.equal(await notice.textContent(), '');
  assert.deepEqual(await page.evaluate(() => document.getElementById('a').problems), []);
  await page.evaluate(() => (document.getElementById('a').oblique = NaN));
  assert.match(await notice.textContent(), /oblique="NaN"/);
  assert.equal(await page.evaluate(() => document.getElementById('a').oblique), 5);
  assert.deepEqual(errors(), []);
  await close();
});

test('each element speaks the language around it: German, Spanish, and English where there are no texts', async () => {
  const path = pageOf('<div lang="de-AT"><downbeam-view id="de" oblique="12.5" level="L9"></downbeam-view></div><div lang="es"><downbeam-view id="es" view="lateral"></downbeam-view></div><div lang="fr"><downbeam-view id="fr"></downbeam-view></div><downbeam-view id="en" level="L9"></downbeam-view>');
  const { page, errors, close } = await open(path);
  const shown = (id, selector) => page.locator(`#${id}`).locator(selector).first().textContent();
  const facts = async (id) => [await page.locator(`#${id}`).locator('.downbeam').getAttribute('lang'), await shown(id, '[part=title]'), await shown(id, '#checks-heading')];
  assert.deepEqual(await facts('de'), ['de', 'L4 links: Schräg', 'Wie genau']);
  assert.deepEqual(await facts('es'), ['es', 'L4 izquierda: Lateral', 'Qué tan cerca']);
  for (const id of ['fr', 'en']) assert.deepEqual(await facts(id), ['en', 'L4 left: Oblique', 'How close']);
  assert.match(await shown('de', '#words'), /Empfänger 12,5 Grad zur linken Seite der Person/);
  assert.match(await shown('de', '[part=caution]'), /nicht für den klinischen Gebrauch/);
  assert.match(await shown('es', '[part=caution]'), /no apto para uso clínico/);
  assert.match(await shown('fr', '[part=caution]'), /not for clinical use/);
  // What did not fit was found before the language was there; it is said in it all the same.
  assert.match(await shown('de', '[part=notice]'), /^level="L9" passt nicht: erlaubt ist L1.*Benutzt wird L4\.$/);
  assert.match(await shown('en', '[part=notice]'), /^level="L9" does not fit/);
  assert.deepEqual((await heard(page, 'error')).map((e) => [e.id, e.sentence.includes('passt nicht')]).sort(), [['de', true], ['en', false]]);
  // What to move is said in the language; what the event holds is the engine's.
  const row = await page.evaluate(async () => {
    const { views, criteria } = await document.getElementById('de').report();
    const { criteria: ids } = views.find((v) => v.view === 'oblique');
    return criteria.find((c) => ids.includes(c.id) && c.finding === 'move').id;
  });
  assert.match(await shown('de', `#check-${row} .advice`), /^Den Empfänger um .* (drehen|kippen)\.$/);
  const criterion = (await heard(page, 'ready')).find((e) => e.id === 'de').criteria.find((c) => c.id === row);
  assert.match(criterion.sentence, /^(Turn|Tilt) the receptor/);
  // A language is fetched once, and only those that are asked for.
  const fetched = await page.evaluate(() => performance.getEntriesByType('resource').map((r) => /texts\/(..\/.*)$/.exec(r.name)?.[1]).filter(Boolean));
  assert.deepEqual(fetched.sort(), ['de/element.js', 'de/view.js', 'en/element.js', 'en/view.js', 'es/element.js', 'es/view.js']);
  // One that comes later, inside a shadow root, looks out of it.
  await page.evaluate(() => {
    const root = document.querySelector('[lang=es]').attachShadow({ mode: 'open' });
    root.innerHTML = '<downbeam-view id="inner" loading="eager"></downbeam-view>';
    return root.firstChild.ready;
  });
  assert.equal(await shown('inner', '#checks-heading'), 'Qué tan cerca');
  assert.deepEqual(errors(), []);
  await close();
});

test('a language that does not load: the element speaks English and works', async () => {
  const { page, close } = await open(pageOf('<div lang="de"><downbeam-view id="a"></downbeam-view></div>'), { prepare: (p) => p.route('**/texts/de/view.js', (route) => route.abort()) });
  assert.equal(await page.locator('#a').locator('#checks-heading').textContent(), 'How close');
  assert.equal(await page.locator('#a').locator('.downbeam').getAttribute('lang'), 'en');
  assert.ok((await shades(page)) > 60);
  await close();
});

test('no engine: said with a way to try again, which works', async () => {
  let broken = true;
  const prepare = (p) => p.route('**/*.wasm', (route) => (broken ? route.fulfill({ status: 404 }) : route.continue()));
  const { page, close } = await open(pageOf('<downbeam-view id="a" loading="eager" oblique="9"></downbeam-view><downbeam-view id="b" loading="eager"></downbeam-view>'), { ready: false, prepare });
  await waitHeard(page, 'error', 2);
  assert.match((await heard(page, 'error'))[0].sentence, /The engine did not load \(the server answered 404\)/);
  await assert.rejects(page.evaluate(() => document.getElementById('a').report()), /did not load/);
  broken = false;
  await page.locator('#a').getByRole('button', { name: 'Try again' }).click();
  await waitHeard(page, 'ready');
  await page.locator('#b').getByRole('button', { name: 'Try again' }).click();
  await waitHeard(page, 'ready', 2);
  assert.equal(await page.evaluate(() => document.getElementById('a').oblique), 9);
  assert.equal(await engines(page), 1);
  await close();
});

test('an engine that stops is said and loaded afresh; the place is kept, and the other element goes on', async () => {
  const { page, errors, close } = await open(pageOf('<downbeam-view id="a"></downbeam-view><downbeam-view id="b"></downbeam-view>'));
  await page.evaluate(async () => {
    const { TeachingRoom } = await import('/www/pkg/downbeam.js');
    const draw = TeachingRoom.prototype.drawRadiograph;
    TeachingRoom.prototype.drawRadiograph = function (...all) {
      TeachingRoom.prototype.drawRadiograph = draw;
      throw new WebAssembly.RuntimeError('unreachable');
    };
    document.getElementById('a').oblique = 11;
  });
  await waitHeard(page, 'error');
  assert.match((await heard(page, 'error'))[0].sentence, /^The engine stopped \(unreachable\)/);
  await page.locator('#a').getByRole('button', { name: 'Try again' }).click();
  await waitHeard(page, 'ready', 3);
  assert.equal(await page.evaluate(() => document.getElementById('a').oblique), 11);
  assert.equal(await engines(page), 2);
  await type(page, 'oblique', 5, 1);
  await page.waitForFunction(() => globalThis.heard.at(-1).id === 'b' && globalThis.heard.at(-1).settled);
  assert.deepEqual(errors(), []);
  await close();
});

test('properties, methods and events are as the table says', async () => {
  // One property is set before the element is defined, as a framework may do.
  const early = "<script>document.getElementById('a').outlines = customElements.get('downbeam-view') === undefined ? false : 'too late'</script>";
  const { page, errors, close } = await open(pageOf(`<downbeam-view id="a" view="true_ap" oblique="14" tilt="9"></downbeam-view>${early}`));
  assert.equal(await page.evaluate(() => document.getElementById('a').outlines), false);
  assert.ok(!(await page.locator('#a').getByLabel('Outlines').isChecked()));
  const ready = (await heard(page, 'ready'))[0];
  const fields = (name) => SHAPES[name].map(([field]) => field).sort();
  assert.deepEqual(Object.keys(ready).filter((k) => !['type', 'id'].includes(k)).sort(), fields('DownbeamState'));
  assert.deepEqual(Object.keys(ready.criteria[0]).sort(), fields('DownbeamCriterion'));
  const { best, usageFields, png, report } = await page.evaluate(async () => {
    const a = document.getElementById('a');
    const blob = await a.png();
    const bitmap = await createImageBitmap(blob);
    return { best: await a.best(), usageFields: Object.keys(a.constructor.usage()), png: { type: blob.type, width: bitmap.width, height: bitmap.height }, report: await a.report() };
  });
  assert.deepEqual(Object.keys(best).sort(), fields('DownbeamBest'));
  assert.deepEqual(usageFields.sort(), fields('DownbeamUsage'));
  assert.equal(png.type, 'image/png');
  assert.ok(png.width >= 512 && png.height > png.width, 'the caution line stands below the picture');
  assert.equal(report.views.find((v) => v.view === 'true_ap').score, 1, 'best() went there');
  await page.waitForTimeout(500);
  assert.deepEqual(await heard(page, 'reached'), [], 'the best view shown is not reached');
  const back = page.locator('#a').locator('#best');
  assert.equal(await back.textContent(), 'Return to my view');
  await back.click();
  assert.deepEqual(await page.evaluate(() => [document.getElementById('a').oblique, document.getElementById('a').tilt]), [14, 9]);
  // Typed, it is; once, until it is left.
  await type(page, 'oblique', best.oblique);
  await type(page, 'tilt', best.tilt);
  await waitHeard(page, 'reached');
  assert.equal(await page.evaluate(() => document.getElementById('a').reached), true);
  await type(page, 'tilt', best.tilt + 0.2);
  await page.waitForTimeout(600);
  assert.equal((await heard(page, 'reached')).length, 1);
  await page.evaluate(() => document.getElementById('a').restart());
  await page.waitForTimeout(600);
  await type(page, 'oblique', best.oblique);
  await type(page, 'tilt', best.tilt);
  await waitHeard(page, 'reached', 2);
  await page.evaluate(() => (document.getElementById('a').view = 'free'));
  await assert.rejects(page.evaluate(() => document.getElementById('a').best()), /nothing is checked/);
  assert.equal(await page.evaluate(() => document.getElementById('a').score), null);
  assert.deepEqual(errors(), []);
  await close();
});

test('a drag turns, tells at most once a frame, and once more when it stands still', async () => {
  const { page, close } = await open(pageOf('<downbeam-view id="a"></downbeam-view>'));
  await page.evaluate(() => {
    globalThis.frames = 0;
    (function count() {
      globalThis.frames += 1;
      requestAnimationFrame(count);
    })();
  });
  const box = await page.locator('#a').locator('.overlay').boundingBox();
  await page.mouse.move(box.x + 300, box.y + 300);
  await page.mouse.down();
  const from = await page.evaluate(() => globalThis.frames);
  for (let i = 1; i <= 40; i++) await page.mouse.move(box.x + 300 - 2 * i, box.y + 300 - i);
  const during = await heard(page, 'change');
  const frames = (await page.evaluate(() => globalThis.frames)) - from;
  assert.ok(during.length > 0 && during.length <= frames + 1, `${during.length} in ${frames} frames`);
  assert.ok(during.every((event) => !event.settled), 'nothing settles while the button is held');
  await page.mouse.up();
  await page.waitForFunction(() => globalThis.heard.at(-1).settled);
  const { oblique, tilt } = (await heard(page, 'change')).at(-1);
  // Ninety degrees for the width of the picture, along the drag's main axis (turn.js).
  assert.ok(Math.abs(oblique - (90 * 80) / box.width) < 0.3 && tilt === 0, `${oblique} ${tilt}`);
  await close();
});

test('by touch: across turns, along scrolls the page and turns nothing', { skip: only('chromium', 'touch by the DevTools protocol') }, async () => {
  const { page, close } = await open(pageOf('<downbeam-view id="a" oblique="4" tilt="3"></downbeam-view><div style="height:2000px"></div>'), { options: { hasTouch: true, viewport: { width: 390, height: 700 } } });
  const touch = await page.context().newCDPSession(page);
  const box = await page.locator('#a').locator('.overlay').boundingBox();
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  async function swipe(right, down) {
    await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    for (let i = 1; i <= 12; i++) {
      await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: x + (right * i) / 12, y: y + (down * i) / 12 }] });
      await page.waitForTimeout(16);
    }
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    await page.waitForTimeout(400);
  }
  const now = () => page.evaluate(() => ({ oblique: document.getElementById('a').oblique, tilt: document.getElementById('a').tilt, scroll: scrollY }));
  await swipe(5, -150);
  const along = await now();
  assert.ok(along.scroll > 50, 'the page scrolls');
  assert.deepEqual([along.oblique, along.tilt], [4, 3]);
  await page.evaluate(() => scrollTo(0, 0));
  await swipe(-120, 5);
  const across = await now();
  assert.equal(across.scroll, 0);
  assert.ok(across.oblique > 20, `${across.oblique}`);
  await close();
});

test('checks on request: values only when asked, and reached only then', async () => {
  const { page, close } = await open(pageOf('<downbeam-view id="a" view="true_ap" checks="ask" oblique="8"></downbeam-view>'));
  const best = await page.evaluate(() => document.getElementById('a').report().then((r) => r.views.find((v) => v.view === 'true_ap').best));
  const inside = page.locator('#a');
  assert.ok(await inside.locator('#best').isDisabled());
  assert.ok(await inside.locator('.criteria').isHidden());
  assert.doesNotMatch(await inside.locator('#words').textContent(), /receptor \d+ degrees towards/i);
  await type(page, 'oblique', best.oblique.toFixed(1));
  await type(page, 'tilt', best.tilt.toFixed(1));
  await page.waitForFunction(() => globalThis.heard.at(-1).settled);
  assert.deepEqual(await heard(page, 'reached'), []);
  await inside.locator('#check').click();
  assert.equal((await heard(page, 'reached')).length, 1);
  assert.ok(await inside.locator('.criteria').isVisible());
  await type(page, 'oblique', 8);
  await inside.locator('.criteria').waitFor({ state: 'hidden' });
  assert.ok(await inside.locator('#best').isEnabled(), 'after a check the best view can be seen');
  await close();
});

test('theme, polarity and custom properties show', async () => {
  const { page, close } = await open(pageOf('<downbeam-view id="a" theme="device"></downbeam-view>'), { options: { colorScheme: 'light' } });
  const ground = () => page.evaluate(() => getComputedStyle(document.getElementById('a').shadowRoot.querySelector('.downbeam')).backgroundColor);
  assert.equal(await ground(), 'rgb(236, 233, 227)');
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.waitForFunction(() => document.getElementById('a').shadowRoot.querySelector('[data-theme=dark]'));
  assert.equal(await ground(), 'rgb(11, 14, 17)');
  await page.evaluate(() => document.getElementById('a').style.setProperty('--downbeam-bg', 'rgb(1, 2, 3)'));
  assert.equal(await ground(), 'rgb(1, 2, 3)');
  const middle = () => page.evaluate(() => [...document.getElementById('a').shadowRoot.querySelector('canvas').getContext('2d').getImageData(250, 250, 1, 1).data].at(0));
  const dark = await middle();
  await page.locator('#a').getByLabel('Bone dark').uncheck();
  await page.waitForTimeout(150);
  const white = await middle();
  assert.ok(Math.abs(dark + white - 255) <= 2, `${dark} and ${white}`);
  await close();
});
