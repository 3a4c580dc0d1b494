// The drawings of C-arm and patient: they are dragged, they show where the rays go, and picture and drawing light the same part.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { axeFinds, only, open, pictureHash, settled, setUp, sideways, typeAngle, openSheet } from './harness.mjs';
import { mark, press, turnTo, use } from './keyboard.mjs';

const START = '#level=L4&side=left&oblique=0&tilt=0';
const rad = (deg) => (deg * Math.PI) / 180;
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const angle = async (page, key) => Number(await page.inputValue(`#turn-${key}-number`));

/** The page with the drawings joined to the picture. */
async function linked(options) {
  const opened = await open(site, options);
  await opened.page.waitForSelector('#gantry-parts[data-linked=yes] option:nth-child(1)', { state: 'attached' });
  await settled(opened.page);
  return opened;
}

/**
 * Where a point of the patient's frame about the isocentre is drawn, worked out here from what the drawings are said to be: parallel, raised by
 * 9 degrees, and the one from the side turned 14 degrees towards the feet.
 */
function seen(from, [x, y, z]) {
  const [raised, turned] = [rad(9), rad(from === 'side' ? 14 : 0)];
  // Right and towards the onlooker's back, before raising: from the feet (-x, z), from the patient's right (z, x).
  const [right, ahead] = from === 'feet' ? [-x, z] : [z, x];
  const across = right * Math.cos(turned) - ahead * Math.sin(turned);
  const deep = ahead * Math.cos(turned) + right * Math.sin(turned);
  return [across, -(y * Math.cos(raised) + deep * Math.sin(raised))];
}

/** Receptor direction: oblique to the patient's left (x), tilt to the head (z), y up. */
const towards = (oblique, tilt) => [Math.sin(rad(oblique)) * Math.cos(rad(tilt)), Math.cos(rad(oblique)) * Math.cos(rad(tilt)), Math.sin(rad(tilt))];
const times = (k, v) => v.map((x) => k * x);

/** Client pixels of a place in a drawing's own mm. */
const clientOf = (page, selector, at) =>
  page.evaluate(([css, [x, y]]) => {
    const p = new DOMPoint(x, y).matrixTransform(document.querySelector(css).getScreenCTM());
    return { x: p.x, y: p.y };
  }, [selector, at]);

async function drag(page, selector, from, to) {
  await page.locator(selector).scrollIntoViewIfNeeded();
  const [a, b] = [await clientOf(page, selector, from), await clientOf(page, selector, to)];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  await page.mouse.move(b.x, b.y, { steps: 6 });
  await page.mouse.up();
  await settled(page);
}

test('the receptor follows the pointer, in each drawing its own angle', async () => {
  const { page, errors, close } = await linked({ hash: START });
  const feet = '#gantry-feet svg';
  await drag(page, feet, seen('feet', times(450, towards(0, 0))), seen('feet', times(450, towards(35, 0))));
  assert.ok(Math.abs((await angle(page, 'oblique')) - 35) <= 1, `${await angle(page, 'oblique')}`);
  assert.equal(await angle(page, 'tilt'), 0);
  await drag(page, '#gantry-side svg', seen('side', times(450, towards(35, 0))), seen('side', times(450, towards(35, -20))));
  assert.ok(Math.abs((await angle(page, 'tilt')) + 20) <= 1.5, `${await angle(page, 'tilt')}`);
  // By the source, which goes the other way, and past the limit.
  await typeAngle(page, 'tilt', 0);
  await typeAngle(page, 'oblique', 0);
  await drag(page, feet, seen('feet', times(-680, towards(0, 0))), seen('feet', times(-680, towards(-25, 0))));
  assert.ok(Math.abs((await angle(page, 'oblique')) + 25) <= 1, `${await angle(page, 'oblique')}`);
  await typeAngle(page, 'oblique', 90);
  await drag(page, feet, seen('feet', times(450, towards(90, 0))), seen('feet', times(450, towards(140, 0))));
  assert.equal(await angle(page, 'oblique'), 110);
  assert.match(await page.textContent('#gantry-feet-text'), /110 degrees to the patient’s left/);
  assert.deepEqual(errors, []);
  await close();
});

test('a press that does not move turns nothing, and the near drawing turns too', async () => {
  const { page, close } = await linked({ hash: START });
  const at = await clientOf(page, '#gantry-feet svg', seen('feet', times(600, towards(20, 0))));
  await page.mouse.click(at.x, at.y);
  assert.equal(await angle(page, 'oblique'), 0);
  await page.locator('label[for=gantry-show-near]').click();
  await drag(page, '#near-feet', seen('feet', times(60, towards(0, 0))), seen('feet', times(60, towards(15, 0))));
  assert.ok(Math.abs((await angle(page, 'oblique')) - 15) <= 1, `${await angle(page, 'oblique')}`);
  await close();
});

test('a finger on the receptor turns; elsewhere in the drawing it may scroll', { skip: only('chromium', 'touch by the DevTools protocol') }, async () => {
  const { page, close } = await linked({ hash: START, options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } });
  await page.locator('#gantry-feet').scrollIntoViewIfNeeded();
  const styles = await page.evaluate(() => ['#gantry-feet svg', '#gantry-feet .g-receptor'].map((css) => getComputedStyle(document.querySelector(css)).touchAction));
  assert.deepEqual(styles, ['pan-y', 'none']);
  const touch = await page.context().newCDPSession(page);
  const point = async (deg) => [await clientOf(page, '#gantry-feet svg', seen('feet', times(500, towards(deg, 0))))];
  // In the window, not on the page: words above may grow a line, and the browser scrolls by as much.
  const top = () => page.evaluate(() => document.getElementById('gantry-feet').getBoundingClientRect().top);
  const before = await top();
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: await point(0) });
  for (const deg of [5, 15, 25, 40]) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: await point(deg) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await settled(page);
  assert.ok(Math.abs((await angle(page, 'oblique')) - 40) <= 1.5, `${await angle(page, 'oblique')}`);
  assert.ok(Math.abs((await top()) - before) < 2, 'the page did not scroll away');
  assert.ok((await sideways(page)) <= 0);
  await close();
});

test('a drag in an attempt is one turn of its log, and the ray through the mark lands where the picture has it', async () => {
  const { page, errors, close } = await linked({ hash: '#injection=on&patient=average&level=L4&side=left' });
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  await mark(page, [-15.4, -5.6]);
  const saved = async () => {
    const [file] = await Promise.all([page.waitForEvent('download'), page.evaluate(() => document.getElementById('attempt-save').click())]);
    return JSON.parse(await (await import('node:fs/promises')).readFile(await file.path(), 'utf8'));
  };
  const turns = ({ log }) => log.filter((line) => line.split(' ')[1] === 'orient').length;
  const before = turns(await saved());
  await drag(page, '#gantry-feet svg', seen('feet', times(450, towards(23.8, -2))), seen('feet', times(450, towards(10, -2))));
  const trace = await saved();
  assert.equal(turns(trace), before + 1);
  const [oblique, tilt] = [await angle(page, 'oblique'), await angle(page, 'tilt')];

  // Another engine on the same attempt: where the mark is in the picture, and in the patient.
  const engine = await page.evaluate(async (attempt) => {
    const { loadEngine } = await import('/engine/room.js');
    const { TeachingRoom } = await loadEngine(() => {});
    const room = new TeachingRoom('average', 'L4', 'left');
    room.loadAttempt(attempt);
    return { mark: room.procedure(100000).mark_mm, aim: [...room.aimPoint()] };
  }, trace);
  const d = towards(oblique, tilt);
  // Screen axes of the picture without rotation: right = f × z, up = right × f with f = -d (imaging::projection).
  const right = times(1 / Math.hypot(d[1], d[0]), [-d[1], d[0], 0]);
  const up = [d[1] * right[2] - d[2] * right[1], d[2] * right[0] - d[0] * right[2], d[0] * right[1] - d[1] * right[0]];
  const onReceptor = d.map((x, i) => 400 * x + engine.mark[0] * right[i] + engine.mark[1] * up[i]);
  for (const from of ['feet', 'side']) {
    const dot = await page.evaluate((id) => ['cx', 'cy'].map((n) => Number(document.querySelector(`#gantry-${id} .g-landing`).getAttribute(n))), from);
    const wanted = seen(from, onReceptor);
    assert.ok(Math.hypot(dot[0] - wanted[0], dot[1] - wanted[1]) < 0.1, `${from}: ${dot} not ${wanted}`);
    // The line goes from the source to the dot and passes the target.
    const [a, b] = (await page.getAttribute(`#gantry-${from} .g-aim`, 'd')).match(/-?[\d.]+ -?[\d.]+/g).map((p) => p.split(' ').map(Number));
    const p = seen(from, engine.aim);
    const off = ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / Math.hypot(b[0] - a[0], b[1] - a[1]);
    assert.ok(Math.abs(off) < 0.2, `${from}: the line passes the target by ${off} mm`);
  }
  assert.deepEqual(errors, []);
  await close();
});

test('the table moves patient and target under the rays', async () => {
  const { page, close } = await linked({ hash: START });
  // Where the dot is drawn: in the patient's frame, which the table has moved.
  const landing = () =>
    page.evaluate(() => {
      const dot = document.querySelector('#gantry-feet .g-landing');
      const [x] = dot.closest('g').getAttribute('transform').match(/-?[\d.]+/).map(Number);
      return Number(dot.getAttribute('cx')) + x;
    });
  const before = await landing();
  await openSheet(page, 'picture');
  await page.getByRole('button', { name: 'Move the table 5 mm: Left' }).click();
  await settled(page);
  const after = await landing();
  // The target lies a few centimetres behind the isocentre: 5 mm of table are a little less than 5 · 1100 / 700 on the receptor, to the
  // patient's left, which is left here.
  assert.ok(Math.abs(after - before + (5 * 1100) / 720) < 0.25, `${before} ${after}`);
  assert.match(await page.getAttribute('#gantry-feet g', 'transform'), /translate\(-5\.0 /);
  await close();
});

test('the needle is drawn where the readings say, whole and near', async () => {
  const { page, errors, close } = await linked({ hash: '#injection=on&patient=average&level=L4&side=left' });
  await turnTo(page, { oblique: 23.8, tilt: -2 });
  await mark(page, [-15.4, -5.6]);
  await use(page, 'place');
  await settled(page);
  for (let i = 0; i < 8; i++) await press(page, 'Shift+F');
  await settled(page);
  const [file] = await Promise.all([page.waitForEvent('download'), page.evaluate(() => document.getElementById('attempt-save').click())]);
  const trace = JSON.parse(await (await import('node:fs/promises')).readFile(await file.path(), 'utf8'));
  const needle = await page.evaluate(async (attempt) => {
    const { loadEngine } = await import('/engine/room.js');
    const { TeachingRoom } = await loadEngine(() => {});
    const room = new TeachingRoom('average', 'L4', 'left');
    room.loadAttempt(attempt);
    return room.procedure(100000).needle;
  }, trace);
  const ends = [needle.hub_patient_mm, needle.tip_patient_mm];
  await page.locator('label[for=gantry-show-near]').click();
  for (const [css, from] of [['#gantry-feet .g-needle', 'feet'], ['#gantry-side .g-needle', 'side'], ['#near-feet .n-needle', 'feet'], ['#near-side .n-needle', 'side']]) {
    const drawn = (await page.getAttribute(css, 'd')).match(/-?[\d.]+ -?[\d.]+/g).map((p) => p.split(' ').map(Number));
    ends.forEach((end, i) => {
      const wanted = seen(from, end);
      assert.ok(Math.hypot(drawn[i][0] - wanted[0], drawn[i][1] - wanted[1]) < 0.15, `${css}: ${drawn[i]} not ${wanted}`);
    });
  }
  assert.match(await page.textContent('#near-feet-text'), /The needle is drawn as it lies/);
  assert.deepEqual(errors, []);
  await close();
});

test('a part under the mouse in the picture is lit in both, named, and the radiograph stays as it is', async () => {
  const { page, errors, close } = await linked({ hash: '#level=L4&side=left&oblique=0&tilt=0' });
  await page.locator('label[for=gantry-show-near]').click();
  await page.locator('#overlay').scrollIntoViewIfNeeded();
  const radiograph = await pictureHash(page);
  const before = await pictureHash(page, 'overlay');
  await page.evaluate(() => {
    globalThis.drawn = 0;
    const put = CanvasRenderingContext2D.prototype.putImageData;
    CanvasRenderingContext2D.prototype.putImageData = function (...given) {
      globalThis.drawn += 1;
      return put.apply(this, given);
    };
  });
  // The landmarks say where the tip of the transverse process falls.
  const at = await page.evaluate(async () => {
    const { loadEngine } = await import('/engine/room.js');
    const { TeachingRoom } = await loadEngine(() => {});
    const room = new TeachingRoom('average', 'L4', 'left');
    const { detector_mm: tip } = room.report().landmarks.find((l) => l.name === 'transverse_tip' && l.level === 'L4' && l.side === 'right');
    return tip;
  });
  const film = await page.locator('#overlay').boundingBox();
  await page.mouse.move(film.x + film.width * (0.5 + at[0] / 204.8), film.y + film.height * (0.5 - at[1] / 204.8));
  await page.waitForSelector('#lit-name:not([hidden])');
  assert.equal(await page.textContent('#lit-name'), 'Right transverse process of L4');
  assert.notEqual(await pictureHash(page, 'overlay'), before);
  for (const css of ['#near-feet .n-lit', '#near-side .n-lit']) assert.ok((await page.getAttribute(css, 'd')).length > 20, css);
  await page.mouse.move(2, 2);
  await page.waitForSelector('#lit-name', { state: 'hidden' });
  assert.equal(await pictureHash(page, 'overlay'), before);
  assert.equal(await page.getAttribute('#near-feet .n-lit', 'd'), '');
  assert.equal(await page.evaluate(() => globalThis.drawn), 0, 'no picture was drawn for it');
  assert.equal(await pictureHash(page), radiograph);
  assert.deepEqual(errors, []);
  await close();
});

test('a part under the mouse in the drawing is lit in the picture; a press keeps it, Escape lets go', async () => {
  const { page, close } = await linked({ hash: START });
  await page.locator('label[for=gantry-show-near]').click();
  const before = await pictureHash(page, 'overlay');
  const tip = await page.evaluate(async () => {
    const { loadEngine } = await import('/engine/room.js');
    const { TeachingRoom } = await loadEngine(() => {});
    return new TeachingRoom('average', 'L4', 'left').report().landmarks.find((l) => l.name === 'spinous_tip' && l.level === 'L4').patient_mm;
  });
  await page.locator('#near-side').scrollIntoViewIfNeeded();
  const at = await clientOf(page, '#near-side', seen('side', tip));
  await page.mouse.move(at.x, at.y);
  await page.waitForSelector('#lit-name:not([hidden])', { state: 'attached' });
  assert.equal(await page.textContent('#lit-name'), 'Spinous process of L4');
  await page.waitForTimeout(60);
  assert.notEqual(await pictureHash(page, 'overlay'), before);
  await page.mouse.down();
  await page.mouse.up();
  await page.mouse.move(2, 2);
  assert.equal(await page.inputValue('#lit-part'), 'L4 spinous_process ');
  assert.match(await page.textContent('#status'), /Spinous process of L4 is lit/);
  // It stays while the C-arm turns.
  await page.locator('#turn-oblique').press('PageUp');
  await settled(page);
  assert.equal(await page.textContent('#lit-name'), 'Spinous process of L4');
  await page.keyboard.press('Escape');
  assert.ok(await page.locator('#lit-name').isHidden());
  await close();
});

test('by keyboard: the list has the parts of the level and the process below, lights and says them', async () => {
  const { page, close } = await linked({ hash: '#level=L4&side=left&oblique=25&tilt=5' });
  const before = await pictureHash(page, 'overlay');
  const options = await page.locator('#lit-part option').allTextContents();
  for (const name of ['Spinous process of L4', 'Left lamina of L4', 'Right pedicle of L4', 'Left superior articular process of L4', 'Right inferior articular process of L4', 'Left transverse process of L4', 'Body of L4', 'Left superior articular process of L5', 'Right superior articular process of L5']) assert.ok(options.includes(name), name);
  assert.equal(options.length, 1 + 14 + 2);
  const list = page.locator('#lit-part');
  await list.focus();
  await list.press('ArrowDown');
  await page.waitForTimeout(60);
  assert.equal(await page.textContent('#lit-name'), 'Spinous process of L4');
  assert.equal(await page.textContent('#status'), 'Spinous process of L4 is lit in the picture and in the drawings.');
  assert.notEqual(await pictureHash(page, 'overlay'), before);
  await page.uncheck('#outlines');
  await list.selectOption('L5 superior_articular_process left');
  assert.match(await page.textContent('#status'), /switch the outlines on/);
  await close();
});

test('nothing is named in a self-test, nor before there is a picture', async () => {
  const { page, close } = await linked({ hash: `${START}&self-test=on` });
  assert.ok(await page.locator('#lit-part').isHidden());
  assert.ok(await page.locator('#gantry-tools').isHidden());
  assert.ok(await page.locator('#gantry-feet .g-landing').isHidden());
  const film = await page.locator('#overlay').boundingBox();
  for (let i = 1; i < 8; i++) await page.mouse.move(film.x + (film.width * i) / 8, film.y + film.height / 2);
  await page.waitForTimeout(60);
  assert.ok(await page.locator('#lit-name').isHidden());
  await close();
  const { page: exposing, errors, close: shut } = await linked({ hash: `${START}&exposures=on` });
  await exposing.locator('label[for=gantry-show-near]').click();
  assert.equal(await exposing.getAttribute('#near-feet .n-ray', 'd'), '');
  assert.match(await exposing.textContent('#near-feet-text'), /No ray is drawn/);
  await exposing.locator('#lit-part').selectOption('L4 pedicle left');
  assert.match(await exposing.textContent('#status'), /no line of it is in the picture/);
  await exposing.click('#spot');
  const first = await exposing.getAttribute('#near-feet .n-ray', 'd');
  assert.notEqual(first, '');
  await typeAngle(exposing, 'oblique', 20);
  assert.equal(await exposing.getAttribute('#near-feet .n-ray', 'd'), first, 'the ray is the last picture’s');
  assert.equal(await exposing.getAttribute('#near-feet .n-aim', 'd'), '', 'and the target is not told from elsewhere');
  assert.deepEqual(errors, []);
  await shut();
});

test('axe finds nothing and nothing goes sideways, whole and near, in both themes and at 320 px', async () => {
  for (const width of [1280, 768, 320]) {
    const { page, close } = await linked({ hash: START, options: { viewport: { width, height: 800 } } });
    for (const show of ['whole', 'near']) {
      await page.locator(`label[for=gantry-show-${show}]`).click();
      await page.locator('#lit-part').selectOption('L4 pedicle left');
      for (const theme of ['dark', 'light']) {
        // What stands half under the film that stays is no smaller for that.
        await page.evaluate((name) => ((document.documentElement.dataset.theme = name), scrollTo(0, 0)), theme);
        assert.deepEqual((await axeFinds(page)).violations, [], `${width} ${show} ${theme}`);
      }
      assert.ok((await sideways(page)) <= 0, `${width} ${show}`);
    }
    await close();
  }
});
