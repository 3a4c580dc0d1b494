// The attempt on the page beyond the keys: pointer and touch, undo, files, refusals, self-test, exposures, and how it is reached.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { after, before, test } from 'node:test';
import { axeClean, axeFinds, open, pictureHash, setUp, settled, openSheet } from './harness.mjs';
import { depth, drawn, mark, marks, offsetIn, press, readings, turnTo, use } from './keyboard.mjs';

const L4 = '#injection=on&level=L4&side=left';
const OBLIQUE = { oblique: 23.8, tilt: -2 };
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** A needle 30 mm deep on the oblique view, both views kept. */
async function needleIn(page, { keep = true } = {}) {
  await turnTo(page, { oblique: 0, tilt: -2.1 });
  if (keep) await use(page, 'keep-true_ap');
  await turnTo(page, OBLIQUE);
  if (keep) await use(page, 'keep-oblique');
  await mark(page, [-10, -5]);
  await use(page, 'place');
  await press(page, 'Shift+F', 6);
}

/** Every stage, and help, keys and file. */
const openAll = async (page) => {
  await page.evaluate(() => document.querySelectorAll('.stage-body').forEach((body) => (body.hidden = false)));
  await drawn(page);
};

const openFile = async (page, content, name = 'attempt.json') => {
  await page.setInputFiles('#attempt-file', { name, mimeType: 'application/json', buffer: Buffer.from(content) });
  await page.waitForTimeout(100);
  await drawn(page);
};

const saved = async (page) => {
  if (!(await page.locator('#attempt-save').isVisible())) await openSheet(page, 'needle');
  const [file] = await Promise.all([page.waitForEvent('download'), page.click('#attempt-save')]);
  return readFile(await file.path(), 'utf8');
};

test('a press marks, a drag turns; the ring is dragged and the hub follows the hand', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await turnTo(page, OBLIQUE);
  await use(page, 'mark');
  const at = (u, v) =>
    page.evaluate(
      ([x, y]) => {
        scrollTo(0, 0);
        const film = document.getElementById('overlay').getBoundingClientRect();
        return [film.x + film.width * (0.5 + x / 204.8), film.y + film.height * (0.5 - y / 204.8)];
      },
      [u, v],
    );
  // A drag in this mode still turns, and marks nothing.
  await page.mouse.move(...(await at(30, 30)));
  await page.mouse.down();
  await page.mouse.move(...(await at(50, 30)), { steps: 4 });
  await page.mouse.up();
  await settled(page);
  assert.notEqual(await page.inputValue('#turn-oblique-number'), '23.8');
  assert.equal(await page.getAttribute('#mark', 'aria-pressed'), 'true');
  await turnTo(page, OBLIQUE);
  await page.mouse.click(...(await at(-10, -5)));
  await drawn(page);
  assert.equal(await page.textContent('#needle-said'), 'Target marked.');
  const trace = JSON.parse(await saved(page));
  const [u, v] = trace.log.map((line) => line.split(' ')).findLast(([, name]) => name === 'mark').slice(2).map(Number);
  assert.ok(Math.abs(u + 1000) < 60 && Math.abs(v + 500) < 60, `${u}, ${v}`);
  await use(page, 'place');
  await drawn(page);
  const hubAt = async () => offsetIn(await readings(page), 'hub');
  const before = await hubAt();
  const hub = [-10 + before[0], -5 + before[1]];
  await page.mouse.move(...(await at(...hub)));
  await page.mouse.down();
  await page.mouse.move(...(await at(hub[0] - 20, hub[1] + 6)), { steps: 6 });
  await page.mouse.up();
  await drawn(page);
  const moved = (await hubAt()).map((mm, i) => mm - before[i]);
  assert.ok(Math.hypot(moved[0] + 20, moved[1] - 6) < 5, `${moved}`);
  assert.equal(await page.inputValue('#turn-oblique-number'), '23.8', 'the C-arm stays');
  const turns = JSON.parse(await saved(page)).log.filter((line) => line.split(' ')[1] === 'angle');
  assert.equal(turns.length, 1, 'one drag is one turn in the log');
  assert.deepEqual(errors, []);
  await close();
});

test('the hub by drag and wheel; the wheel with Shift pushes', async () => {
  const { page, close } = await open(site, { hash: L4 });
  await needleIn(page, { keep: false });
  const value = async () => Number(await page.getAttribute('#hub-dial', 'aria-valuenow'));
  const before = await value();
  await page.evaluate(() => scrollTo(0, 0));
  const dial = await page.locator('#hub-dial').boundingBox();
  const [x, y] = [dial.x + dial.width / 2, dial.y + dial.height / 2];
  await page.mouse.move(x, y - 40);
  await page.mouse.down();
  await page.mouse.move(x + 30, y - 30, { steps: 3 });
  await page.mouse.move(x + 40, y, { steps: 3 });
  await page.mouse.up();
  await drawn(page);
  assert.ok(Math.abs(((await value()) - before + 360) % 360 - 90) <= 2, `${before} to ${await value()}: a quarter clockwise`);
  const quarter = await value();
  await page.mouse.wheel(0, 100);
  await page.mouse.wheel(0, 100);
  await page.waitForTimeout(300);
  await drawn(page);
  assert.ok(Math.abs((await value()) - quarter - 10) <= 1);
  const deep = await depth(page);
  await page.keyboard.down('Shift');
  await page.mouse.wheel(0, -100);
  await page.keyboard.up('Shift');
  await drawn(page);
  assert.ok(Math.abs((await depth(page)) - deep - 0.5) < 0.05);
  const words = await page.getAttribute('#hub-dial', 'aria-valuetext');
  await page.click('#half-turn');
  await drawn(page);
  const hours = (text) => [...text.matchAll(/(half past )?(\d+)/g)].map(([, half, n]) => (Number(n) + (half ? 0.5 : 0)) % 12);
  const [notch, drift] = hours(words);
  assert.equal((notch + 6) % 12, drift, words);
  assert.equal(hours(await page.getAttribute('#hub-dial', 'aria-valuetext'))[0], drift, 'half a turn puts the notch where it drifted to');
  await close();
});

test('undo and redo, by key and button, take C-arm and needle with them', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await needleIn(page);
  const deep = await depth(page);
  const picture = await pictureHash(page);
  assert.ok(await page.locator('#needle-redo').isDisabled(), 'nothing to do again');
  await press(page, 'Control+z');
  assert.ok(await page.locator('#needle-redo').isEnabled());
  assert.ok(Math.abs((await depth(page)) - (deep - 5)) < 0.05);
  assert.equal(await page.textContent('#needle-said'), 'Taken back.');
  await press(page, 'Control+Shift+Z');
  assert.ok(Math.abs((await depth(page)) - deep) < 0.01);
  assert.ok(await page.locator('#needle-redo').isDisabled());
  await settled(page);
  assert.equal(await pictureHash(page), picture);
  await press(page, 'l');
  assert.equal(await page.inputValue('#turn-oblique-number'), '90');
  await settled(page);
  await use(page, 'needle-undo');
  assert.equal(await page.inputValue('#turn-oblique-number'), '23.8');
  // All the way back, and once more.
  // One look and press in one go: the button is put out with the frame after the last press.
  const back = () => page.evaluate(() => { const undo = document.getElementById('needle-undo'); undo.click(); return !undo.disabled; });
  for (let i = 0; i < 40 && (await back()); i++) await drawn(page);
  assert.ok(await page.locator('#hand').isHidden());
  assert.deepEqual(errors, []);
  await close();
});

test('saved and opened again it stands as it stood, also over another patient and case', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await needleIn(page);
  await settled(page);
  const [text, picture, deep] = [await saved(page), await pictureHash(page), await depth(page)];
  await close();
  const { page: other, errors: more, close: shut } = await open(site, { hash: '#injection=on&patient=small&level=L2&side=right' });
  await openFile(other, text);
  await other.waitForFunction(() => document.getElementById('patient').value === 'average' && document.getElementById('film-state').hidden && !document.getElementById('hand').hidden);
  await settled(other);
  assert.equal(await other.textContent('#needle-said'), 'The attempt is open as it was left.');
  assert.equal(await depth(other), deep);
  assert.equal(await pictureHash(other), picture);
  assert.ok(await other.isChecked('#level-L4'));
  await press(other, 'f');
  assert.ok((await depth(other)) > deep, 'and goes on');
  assert.deepEqual([...errors, ...more], []);
  await shut();
});

test('a bad file is told in one sentence and nothing is lost', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await needleIn(page);
  const good = JSON.parse(await saved(page));
  const deep = await depth(page);
  const bad = [
    ['{', /not JSON/],
    ['[]', /no attempt/],
    ['null', /no attempt/],
    [JSON.stringify({ ...good, patient: 'nobody' }), /no patient “nobody”/],
    [JSON.stringify({ ...good, extra: 1 }), /extra/],
    [JSON.stringify({ ...good, log: [...good.log, '9000000000 fly'] }), /./],
    [JSON.stringify({ ...good, log: ['0 fly'] }), /unknown action 'fly'/],
    [JSON.stringify({ ...good, log: [[0, { do: 'spot' }]] }), /found sequence: allowed is a string/],
    [JSON.stringify({ ...good, log: ['0 advance 10 0'] }), /no needle yet/],
    // Another patient has to be shaped before this one shows that it does not fit.
    [JSON.stringify({ ...good, patient: 'small', log: ['0 inject 10'] }), /no needle yet/],
    ['x'.repeat(2_100_000), /larger than 2 MB/],
  ];
  for (const [content, why] of bad) {
    await openFile(page, content);
    await page.waitForFunction(() => !document.getElementById('notice').hidden);
    await page.waitForFunction(() => document.getElementById('patient').value === 'average' && document.getElementById('film-state').hidden);
    await settled(page);
    const said = await page.textContent('#notice-text');
    assert.match(said, why);
    assert.match(said, /^That file could not be opened: .*The attempt on the page is kept\.$/);
    assert.equal(await depth(page), deep, said);
    await page.click('#notice-close');
  }
  assert.deepEqual(errors, []);
  await close();
});

test('the keys of the views turn the C-arm before there is a needle, too', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await settled(page);
  await press(page, 'l');
  assert.equal(await page.inputValue('#turn-oblique-number'), '90');
  assert.match(await page.textContent('#needle-said'), /[Ll]ateral/);
  assert.deepEqual(errors, []);
  await close();
});

test('what cannot be done is said in a sentence, and nothing is lost', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  const refused = async (act, sentence) => {
    await act();
    await drawn(page);
    assert.match(await page.textContent('#notice-text'), sentence);
    await page.click('#notice-close');
  };
  await page.click('#stage-place .stage-dot');
  await refused(() => page.click('#place'), /no mark yet: mark the target/);
  await refused(() => press(page, 'o'), /No oblique view has been kept yet/);
  await refused(() => press(page, 'f'), /no needle yet/);
  await page.click('#stage-contrast .stage-dot');
  await refused(() => page.click('#aspirate'), /no needle yet/);
  await turnTo(page, OBLIQUE);
  await mark(page, [-10, -5]);
  await use(page, 'place');
  await refused(() => use(page, 'inject-10'), /tip is still at the skin/);
  await page.click('#best');
  await settled(page);
  await refused(() => use(page, 'keep-true_ap'), /not yours/);
  await press(page, 'f', 3);
  await use(page, 'finish');
  await refused(() => press(page, 'f'), /attempt is finished/);
  assert.match(await page.textContent('#needle-said'), /Finished: \d+ of 100/);
  assert.ok(Object.keys(await marks(page)).length > 8);
  await press(page, 'Control+z');
  await press(page, 'f');
  assert.equal(await depth(page), 4);
  assert.deepEqual(errors, []);
  await close();
});

test('changing the activity or the case keeps the attempt for coming back', async () => {
  const { page, errors, close } = await open(site, { hash: L4 });
  await needleIn(page);
  const [deep, picture] = [await depth(page), await pictureHash(page)];
  await page.check('#activity-views');
  await settled(page);
  assert.ok(await page.locator('#hand').isHidden());
  assert.notEqual(await pictureHash(page), picture, 'no needle in the picture of the views');
  await page.check('#activity-injection');
  await settled(page);
  assert.equal(await depth(page), deep);
  assert.equal(await pictureHash(page), picture);
  await page.check('#level-L3');
  await settled(page);
  assert.ok(await page.locator('#hand').isHidden());
  await openSheet(page, 'needle');
  await page.click('#attempt-back');
  await settled(page);
  assert.ok(await page.isChecked('#level-L4'));
  assert.equal(await depth(page), deep);
  assert.deepEqual(errors, []);
  await close();
});

test('guided shows the hint, on request it is asked for, self-test tells nothing', async () => {
  const { page, close } = await open(site, { hash: L4 });
  await needleIn(page);
  await use(page, 'show-area', 'Space');
  assert.ok(await page.locator('#needle-hint').isVisible());
  await openSheet(page, 'picture');
  assert.ok(await page.locator('#needle-key-area').isVisible());
  await page.keyboard.press('Escape');
  await openSheet(page, 'needle');
  await page.check('#help-asked');
  await drawn(page);
  assert.ok(await page.locator('#needle-hint').isHidden());
  await press(page, 'h');
  assert.ok((await page.textContent('#needle-hint-text')).length > 10);
  await press(page, 'f');
  assert.ok(await page.locator('#needle-hint').isHidden(), 'a hint is for the moment it was asked in');
  await page.check('#help-test');
  await drawn(page);
  await press(page, 'h');
  assert.ok(await page.locator('#needle-hint').isHidden());
  assert.equal(await readings(page), '');
  for (const what of ['area', 'hub', 'tip']) assert.ok(await page.locator(`#needle-key-${what}`).isHidden(), what);
  assert.ok(await page.locator('#show-area').isHidden());
  assert.ok(await page.locator('#marks').isHidden());
  assert.doesNotMatch(await page.innerText('#needle'), /of 100/);
  await press(page, 'f');
  assert.doesNotMatch(await page.textContent('#needle-said'), /of the mark/);
  await close();
});

test('by exposure nothing is told that the last picture does not show', async () => {
  const { page, errors, close } = await open(site, { hash: `${L4}&exposures=on` });
  await turnTo(page, OBLIQUE);
  await page.click('#stage-mark .stage-dot');
  await page.click('#mark');
  assert.match(await page.textContent('#notice-text'), /no picture of this position/);
  await page.click('#notice-close');
  await page.click('#spot');
  await mark(page, [-10, -5]);
  await use(page, 'place');
  await drawn(page);
  assert.equal(await readings(page), '', 'the picture is older than the needle');
  await page.click('#spot');
  await drawn(page);
  const first = await readings(page);
  assert.match(first, /As of the last picture:.*off the beam/);
  await press(page, 'Shift+F', 3);
  assert.equal(await readings(page), first);
  assert.equal(await depth(page), 15);
  await page.click('#spot');
  await drawn(page);
  assert.notEqual(await readings(page), first);
  // Without the beam it is not live, with it it is.
  await use(page, 'inject-10');
  assert.match(await page.textContent('#injected'), /without live imaging/);
  await use(page, 'needle-undo');
  await page.check('#latch');
  await page.locator('#fluoroscopy').press('Enter');
  await page.waitForTimeout(300);
  await use(page, 'aspirate');
  await use(page, 'inject-10');
  await page.locator('#fluoroscopy').press('Enter');
  assert.equal(await page.textContent('#injected'), '0.1 ml in.');
  await use(page, 'finish');
  assert.match((await marks(page)).radiation, /4 exposures/);
  assert.deepEqual(errors, []);
  await close();
});

test('contrast in a vessel runs off while one looks', async () => {
  const { page, close } = await open(site, { hash: '#injection=on&patient=small&level=L3&side=left' });
  await turnTo(page, { oblique: 0, tilt: -6.2 });
  await mark(page, [-10, -5]);
  await use(page, 'place');
  await press(page, 'Shift+F', 4);
  await use(page, 'aspirate');
  const before = await pictureHash(page);
  await page.locator('#inject-hold').focus();
  await page.keyboard.down('Space');
  // It goes in as long as the key is held, and not after.
  const ml = async () => Number.parseFloat(await page.textContent('#injected'));
  await page.waitForFunction(() => Number.parseFloat(document.getElementById('injected').textContent) >= 0.3);
  await page.keyboard.up('Space');
  await drawn(page);
  const held = await ml();
  await page.waitForTimeout(600);
  assert.equal(await ml(), held);
  assert.notEqual(await pictureHash(page), before);
  await close();
});

test('single keys can be switched off and do not act in fields', async () => {
  const { page, close } = await open(site, { hash: L4 });
  await needleIn(page, { keep: false });
  const deep = await depth(page);
  await page.locator('#turn-tilt-number').press('f');
  await page.locator('#patient').press('f');
  assert.equal(await depth(page), deep);
  for (const on of [false, true]) {
    await openSheet(page, 'needle');
    await page.locator('#needle-keys').press('Enter');
    await page.waitForSelector('#keymap[open]');
    await page.locator('#single-keys').setChecked(on);
    await page.keyboard.press('Escape');
    // The dialog tells that it closed in a task of its own.
    await page.waitForFunction(() => document.activeElement.getAttribute('popovertarget') === 'needle-sheet');
    if (on) break;
    await press(page, 'f');
    assert.equal(await depth(page), deep);
  }
  await press(page, 'f');
  assert.ok((await depth(page)) > deep);
  await close();
});

test('axe-core finds nothing in an injection: dark, light, forced colours, and on a phone', async () => {
  const { page, close } = await open(site, { hash: L4 });
  const look = async (what, { phone = true } = {}) => {
    await axeClean(page, what);
    if (!phone) return;
    await page.setViewportSize({ width: 320, height: 640 });
    // What the hand needs stands over the foot of the page: the button that leaves the step is looked at where a scroll, or its focus, brings it.
    await page.evaluate(() => [...document.querySelectorAll('.stage-body [id^="go-on"]')].find((e) => e.checkVisibility())?.scrollIntoView({ block: 'nearest' }));
    await drawn(page);
    assert.deepEqual((await axeFinds(page)).violations, [], `${what}, on a phone`);
    await page.setViewportSize({ width: 1280, height: 800 });
  };
  await look('before it');
  await needleIn(page);
  await look('the needle in');
  await openAll(page);
  await page.evaluate(() => (document.getElementById('description').open = true));
  await use(page, 'aspirate');
  await use(page, 'inject-50');
  await settled(page);
  // A phone has one step open at a time, and what its hand needs stands over what lies below.
  await look('all open', { phone: false });
  await use(page, 'finish');
  await look('finished');
  await close();
});

test('no sideways scroll with the needle in and all open, and targets large enough', async () => {
  const { page, close } = await open(site, { hash: L4 });
  await needleIn(page);
  await openAll(page);
  await use(page, 'inject-50');
  await use(page, 'finish');
  for (const width of [320, 360, 480, 768, 1024, 1100, 1280, 1920]) {
    await page.setViewportSize({ width, height: 800 });
    await drawn(page);
    await openAll(page);
    const found = await page.evaluate(() => {
      const over = [...document.querySelectorAll('body *')].filter((e) => {
        const box = e.getBoundingClientRect();
        return box.width > 1 && (box.right > innerWidth + 0.5 || box.left < -0.5) && !e.closest('.skip, .unseen, svg, .history-strip li');
      });
      const clipped = [...document.querySelectorAll('.button, .segment span')].filter((e) => e.checkVisibility() && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0);
      // A term is a word in its line (WCAG 2.2, 2.5.8: targets in a sentence).
      const small = [...document.querySelectorAll('#needle button:not(.stage-dot, .term), #hand button, #needle select, #hand label, #needle .segment')].filter((e) => e.checkVisibility() && (e.getBoundingClientRect().height < 43.5 || e.getBoundingClientRect().width < 40));
      const rows = [...document.querySelectorAll('.stage-dot')].filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 24);
      const names = (list) => list.map((e) => `${e.tagName}.${e.className}#${e.id} ${e.textContent.slice(0, 20)}`);
      return { wide: document.documentElement.scrollWidth > document.documentElement.clientWidth, over: names(over), clipped: names(clipped), small: names(small), rows: names(rows) };
    });
    assert.deepEqual(found, { wide: false, over: [], clipped: [], small: [], rows: [] }, `${width}`);
  }
  await close();
});

test('the needle stands beside the film on a desk and under the thumb on a phone, and Tab goes from the film to it', async () => {
  for (const viewport of [{ width: 390, height: 844 }, { width: 1280, height: 800 }]) {
    const { page, close } = await open(site, { hash: L4, options: { viewport } });
    await needleIn(page);
    await page.evaluate(() => scrollTo(0, 0));
    const foot = (await page.locator('.caution').boundingBox()).y;
    const inSight = async (selector, top = 0) => {
      const at = await page.locator(selector).boundingBox();
      assert.ok(at.y >= top && at.y + at.height <= foot + 1, `${viewport.width}: ${selector} ${at.y} ${at.height}`);
    };
    for (const selector of ['#picture', '#needle-hint', '#needle-next']) await inSight(selector);
    // On a phone the hand's buttons come up under the film, which stays.
    if (viewport.width < 1000) await page.evaluate(() => document.querySelector('.hand-push').scrollIntoView({ block: 'center' }));
    await inSight('#picture');
    const under = viewport.width < 1000 ? await page.locator('#picture').boundingBox().then((at) => at.y + at.height) : 0;
    for (const selector of ['.hand-push >> nth=0', '.hand-push >> nth=1', ...(viewport.width > 1000 ? ['#hub-dial', '.hand-pad', '.hand-views'] : [])]) await inSight(selector, under);
    const [film, hand] = [await page.locator('#picture').boundingBox(), await page.locator('.hand-push >> nth=0').boundingBox()];
    assert.ok(viewport.width > 1000 ? hand.x >= film.x + film.width : hand.y >= film.y + film.height);
    assert.ok(await page.evaluate(() => Boolean(document.getElementById('view').compareDocumentPosition(document.getElementById('hand')) & Node.DOCUMENT_POSITION_FOLLOWING)));
    await close();
  }
});
