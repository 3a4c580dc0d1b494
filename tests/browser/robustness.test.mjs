// Whatever fails from outside leaves a usable page and one sentence.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { failed, open, setUp, settled, typeAngle, useTheme, openSheet } from './harness.mjs';
import { mark } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const stillUsable = async (page) => {
  await failed(page);
  await page.locator('#turn-oblique').press('PageUp');
  await page.waitForFunction(() => document.documentElement.dataset.settled === 'yes');
  assert.match(await page.textContent('#gantry-feet-text'), /degrees to the patient/);
  assert.ok(await page.locator('#step-true_ap').isVisible());
  assert.match(await page.textContent('#checks-body'), /The checks come with the picture/);
  assert.ok(await page.locator('#retry').isVisible());
  for (const choice of ['#gantry-tools', '#lit-part']) assert.equal(await page.locator(choice).isVisible(), false, `${choice}: nothing to choose without bones`);
};

for (const [name, answer, sentence] of [
  ['is missing', { status: 404, body: '' }, /the server answered 404/],
  ['is garbage', { status: 200, contentType: 'application/wasm', body: 'not a module' }, /not a WebAssembly module/],
  ['is cut short', { status: 200, contentType: 'application/wasm', body: Buffer.from([0, 97, 115, 109, 1, 0]) }, /not a WebAssembly module/],
  ['is another module', { status: 200, contentType: 'application/wasm', body: Buffer.from([0, 97, 115, 109, 1, 0, 0, 0]) }, /could not be started/],
]) {
  test(`wasm that ${name}: a sentence, a usable page, and a second try that works`, async () => {
    const { page, close } = await open(site, { ready: false, prepare: (p) => p.route('**/*.wasm', (route) => route.fulfill(answer)) });
    await stillUsable(page);
    assert.match(await page.textContent('#film-state-text'), sentence);
    await page.unroute('**/*.wasm');
    await page.click('#retry');
    await settled(page);
    await typeAngle(page, 'oblique', 5);
    assert.match(await page.textContent('#total-value'), /of 100/);
    await close();
  });
}

test('a page without an engine is the page of its address, and keeps it for the second try', async () => {
  const hash = '#patient=small&level=L2&side=right&start=7&oblique=15&tilt=-6&self-test=on';
  const { page, close } = await open(site, { hash, ready: false, prepare: (p) => p.route('**/*.wasm', (route) => route.fulfill({ status: 404 })) });
  await failed(page);
  const shown = () => page.evaluate(() => [document.getElementById('level-L2').checked, document.getElementById('side-right').checked, ...['turn-oblique', 'turn-tilt', 'patient'].map((id) => document.getElementById(id).value)]);
  assert.deepEqual((await shown()).slice(0, 4), [true, true, '15', '-6']);
  await page.locator('#turn-oblique').press('ArrowLeft');
  await page.waitForTimeout(600);
  assert.equal(await page.evaluate(() => location.hash), hash);
  await page.unroute('**/*.wasm');
  await page.click('#retry');
  await settled(page);
  assert.deepEqual(await shown(), [true, true, '16', '-6', 'small'], 'the learner’s own turn is kept');
  await close();
});

test('no connection, and glue that is missing', async () => {
  for (const pattern of ['**/*.wasm', '**/pkg/downbeam.js']) {
    const { page, close } = await open(site, { ready: false, prepare: (p) => p.route(pattern, (route) => route.abort()) });
    await stillUsable(page);
    await page.unroute(pattern);
    await page.click('#retry');
    await settled(page);
    await close();
  }
});

test('what comes after the picture and is missing: a sentence that names it, and a usable page', async () => {
  for (const [pattern, name] of [['**/injection/attempt-file.js', 'Save attempt.json, Open an attempt'], ['**/help/on-demand.js', 'Menu'], ['**/history/tools.js', 'Views so far, comparing and saving'], ['**/gantry/link.js', 'C-arm and patient']]) {
    const { page, close } = await open(site, { prepare: (p) => p.route(pattern, (route) => route.abort()) });
    await page.waitForSelector('#notice:not([hidden])');
    assert.match(await page.textContent('#notice-text'), new RegExp(`“${name}” could not be loaded .*load the page again`));
    await typeAngle(page, 'oblique', 5);
    assert.match(await page.textContent('#total-value'), /of 100/);
    await close();
  }
});

test('the engine’s second part that does not come: the picture stays, it is said, and who asks for the injection brings it', async () => {
  const { page, close } = await open(site, { prepare: (p) => p.route('**/downbeam_rest.wasm', (route) => route.abort()) });
  await page.waitForSelector('#notice:not([hidden])');
  assert.match(await page.textContent('#notice-text'), /could not be loaded/);
  await typeAngle(page, 'oblique', 5);
  assert.match(await page.textContent('#total-value'), /of 100/);
  assert.ok(await page.isDisabled('#spot'), 'no exposure without it');
  await page.unroute('**/downbeam_rest.wasm');
  await page.click('#notice-close');
  await page.locator('label[for=activity-injection]').click();
  await page.waitForSelector('#stage-list:not([hidden])');
  await settled(page);
  assert.ok(await page.isHidden('#notice'));
  assert.ok(await page.isEnabled('#spot'), 'exposures are back');
  await close();
});

/** Opens the page and holds a module back until `release()`. */
async function openWithout(pattern, hash) {
  let release;
  const held = new Promise((go) => (release = go));
  const opened = await open(site, { hash, ready: false, prepare: (p) => p.route(pattern, (route) => held.then(() => route.continue())) });
  await opened.page.waitForFunction(() => document.documentElement.dataset.settled === 'yes' && document.getElementById('film-state').hidden);
  return { ...opened, release };
}

test('an attempt that is to be saved before what saves it has come is saved when it comes', async () => {
  const { page, errors, close, release } = await openWithout('**/injection/attempt-file.js', '#injection=on&level=L4&side=left');
  await mark(page, [0, 0]);
  await openSheet(page, 'needle');
  const downloads = [];
  page.on('download', (file) => downloads.push(file.suggestedFilename()));
  await page.click('#attempt-save');
  assert.deepEqual(downloads, [], 'what saves it has not come');
  const saved = page.waitForEvent('download');
  release();
  await saved;
  assert.deepEqual(downloads, ['attempt.json']);
  assert.deepEqual(errors, []);
  await close();
});

test('a button or key of a part that has not come yet is not lost: it is done when the part comes', async () => {
  const pressings = [
    [(page) => page.locator('#picture').press('?'), '#keymap[open]'],
    [(page) => page.locator('#welcome-tour').click(), '#tour:not([hidden])'],
    [async (page) => {
      await page.locator('#menu-button').click();
      await page.locator('#tour-open').click();
      await page.locator('#keys-open').click();
    }, '#keymap[open]', '#tour:not([hidden])'],
    [(page) => page.locator('#picture').press('r'), '#description-said:not(:empty)'],
  ];
  for (const [press, shows, not] of pressings) {
    const { page, errors, close, release } = await openWithout('**/help/on-demand.js');
    await press(page);
    assert.equal(await page.locator(shows).count(), 0, 'its part has not come');
    release();
    await page.waitForSelector(shows, { state: 'attached' });
    if (not) assert.equal(await page.locator(not).count(), 0, 'only the last wish');
    assert.deepEqual(errors, []);
    await close();
  }
});

test('wasm sent as octet-stream, and a browser that cannot compile a stream', async () => {
  for (const prepare of [
    (p) => p.route('**/*.wasm', async (route) => route.fulfill({ response: await route.fetch(), headers: { 'content-type': 'application/octet-stream' } })),
    (p) => p.addInitScript(() => delete WebAssembly.compileStreaming),
  ]) {
    const { page, errors, close } = await open(site, { prepare });
    assert.match(await page.textContent('#total-value'), /of 100/);
    assert.deepEqual(errors, []);
    await close();
  }
});

test('an engine that stops in mid-flight is said, and can be loaded again', async () => {
  const { page, close } = await open(site);
  await page.evaluate(async () => {
    const { TeachingRoom } = await import('./pkg/downbeam.js');
    const report = TeachingRoom.prototype.report;
    TeachingRoom.prototype.report = () => {
      TeachingRoom.prototype.report = report;
      throw new Error('unreachable');
    };
  });
  await page.locator('#turn-tilt').press('PageUp');
  await failed(page);
  assert.match(await page.textContent('#film-state-text'), /The engine stopped \(unreachable\)/);
  const kept = await page.inputValue('#turn-tilt-number');
  await page.click('#retry');
  await settled(page);
  assert.equal(await page.inputValue('#turn-tilt-number'), kept);
  await close();
});

test('a broken address is ignored with a sentence', async () => {
  let opened;
  for (const [hash, sentence] of [
    ['#level=L9', /asks for level “L9”; allowed is L1, L2/],
    ['#oblique=NaN&level=L3', /oblique “NaN”; allowed is a number from -110 to 110/],
    ['#tilt=1e99', /tilt “1e99”/],
    ['#side=%E0%A4%A', /side/],
    ['#patient=<script>alert(1)</script>', /patient “<script>/],
    ['#colour=red', /unknown entry “colour”/],
    [`#level=${'x'.repeat(5000)}`, /x…”/],
    ['#====&&&=;;;', /unknown entry/],
  ]) {
    // The first as the page is opened, the others while it is open.
    opened ??= await open(site, { hash });
    const { page, errors } = opened;
    await page.evaluate((next) => (location.hash = next), hash);
    await page.waitForSelector('#notice:not([hidden])');
    await settled(page);
    assert.match(await page.textContent('#notice-text'), sentence, hash);
    assert.match(await page.textContent('#total-value'), /of 100/);
    assert.deepEqual(errors, []);
    await page.click('#notice-close');
    assert.ok(await page.locator('#notice').isHidden());
  }
  await opened.close();
});

test('the address keeps the case and brings it back, also while the page is open', async () => {
  const { page, close } = await open(site, { hash: '#level=L2&side=right&patient=small&oblique=-20&tilt=3.5' });
  await typeAngle(page, 'oblique', -21);
  const hash = await page.evaluate(() => location.hash);
  const again = await open(site, { hash });
  const shown = (p) => p.evaluate(() => ['#level-L2', '#side-right'].map((s) => document.querySelector(s).checked).concat(['#patient', '#turn-oblique', '#turn-tilt'].map((s) => document.querySelector(s).value)));
  assert.deepEqual(await shown(again.page), [true, true, 'small', '-21', '3.5']);
  await again.page.evaluate(() => (location.hash = '#level=L5&side=left&oblique=10&tilt=-4'));
  await again.page.waitForFunction(() => document.getElementById('level-L5').checked);
  await settled(again.page);
  assert.equal(await again.page.inputValue('#turn-tilt-number'), '-4');
  await again.close();
  await close();
});

test('storage that throws, and storage with nonsense in it', async () => {
  const broken = await open(site, {
    prepare: (p) =>
      p.addInitScript(() =>
        Object.defineProperty(globalThis, 'localStorage', {
          get() {
            throw new DOMException('denied', 'SecurityError');
          },
        }),
      ),
  });
  assert.match(await broken.page.textContent('#notice-text'), /does not keep settings/);
  await useTheme(broken.page, 'light');
  assert.equal(await broken.page.getAttribute('html', 'data-theme'), 'light');
  assert.deepEqual(broken.errors, []);
  await broken.close();
  // Further nonsense is in storage.test.mjs.
  for (const nonsense of ['{"theme":7,"bone":{}}']) {
    const { page, errors, close } = await open(site, { prepare: (p) => p.addInitScript((text) => localStorage.setItem('downbeam.settings', text), nonsense) });
    assert.equal(await page.getAttribute('html', 'data-theme'), 'dark');
    assert.ok(await page.isChecked('#bone-dark'));
    assert.deepEqual(errors, []);
    await close();
  }
});

test('settings are kept between visits', async () => {
  const { page, close } = await open(site);
  await useTheme(page, 'light');
  await page.uncheck('#bone-dark');
  await page.reload();
  await settled(page);
  assert.equal(await page.getAttribute('html', 'data-theme'), 'light');
  assert.ok(!(await page.isChecked('#bone-dark')));
  await close();
});
