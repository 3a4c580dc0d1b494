// Every way of turning changes the picture, the words and the drawing of the C-arm alike.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { only, open, pictureHash, settled, setUp, typeAngle, openSheet } from './harness.mjs';

const START = '#level=L4&side=left&oblique=0&tilt=0';
let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const angle = async (page, key) => Number(await page.inputValue(`#turn-${key}-number`));

test('sliders by keyboard', async () => {
  const { page, errors, close } = await open(site, { hash: START });
  const seen = new Set([await pictureHash(page)]);
  const slider = page.locator('#turn-oblique');
  // The left arrow moves the thumb left, where the patient's left is.
  for (const [key, degrees, words] of [
    ['ArrowLeft', 1, '1 degree to the patient’s left'],
    ['ArrowUp', 2, '2 degrees to the patient’s left'],
    ['PageUp', 7, '7 degrees to the patient’s left'],
    ['ArrowRight', 6, '6 degrees to the patient’s left'],
    ['PageDown', 1, '1 degree to the patient’s left'],
    ['ArrowDown', 0, 'straight above, 0 degrees'],
    ['ArrowRight', -1, '1 degree to the patient’s right'],
  ]) {
    await slider.press(key);
    await settled(page);
    assert.equal(await angle(page, 'oblique'), degrees, key);
    assert.equal(await slider.getAttribute('aria-valuetext'), words);
    assert.ok((await page.textContent('#gantry-feet-text')).includes(words));
    assert.ok((await page.textContent('#picture-text')).includes(words));
    seen.add(await pictureHash(page));
  }
  assert.equal(seen.size, 6, 'each of -1, 0, 1, 2, 6 and 7 degrees has a picture of its own');
  await page.locator('#turn-tilt').press('ArrowRight');
  await settled(page);
  assert.equal(await page.locator('#turn-tilt').getAttribute('aria-valuetext'), '1 degree cephalad');
  assert.ok((await page.textContent('#gantry-side-text')).includes('1 degree cephalad'));
  const before = await pictureHash(page);
  await page.locator('#turn-tilt').press('End');
  await settled(page);
  assert.equal(await angle(page, 'tilt'), 50);
  assert.notEqual(await pictureHash(page), before);
  assert.deepEqual(errors, []);
  await close();
});

test('typed numbers, also those that are none or too large', async () => {
  const { page, close } = await open(site, { hash: START });
  await typeAngle(page, 'oblique', 25.5);
  assert.equal(await page.inputValue('#turn-oblique'), '25.5');
  await typeAngle(page, 'oblique', 400);
  assert.equal(await angle(page, 'oblique'), 110);
  assert.match(await page.textContent('#turn-oblique-control .complaint'), /from -110 to 110/);
  await typeAngle(page, 'oblique', -12);
  assert.ok(await page.locator('#turn-oblique-control .complaint').isHidden());
  await typeAngle(page, 'oblique', '');
  assert.equal(await angle(page, 'oblique'), -12);
  assert.match(await page.textContent('#turn-oblique-control .complaint'), /needs a number/);
  await close();
});

test('one-degree buttons', async () => {
  const { page, close } = await open(site, { hash: START });
  await page.getByRole('button', { name: 'Oblique 1° right' }).click();
  await page.getByRole('button', { name: 'Tilt 1° cephalad' }).click();
  await settled(page);
  assert.equal(await angle(page, 'oblique'), -1);
  assert.equal(await angle(page, 'tilt'), 1);
  await close();
});

test('dragging the picture: the receptor follows the hand, along the axis that it has set out on', async () => {
  const { page, close } = await open(site, { hash: START });
  const before = await pictureHash(page);
  const film = await page.locator('#overlay').boundingBox();
  const [x, y] = [film.x + film.width / 2, film.y + film.height / 2];
  const drag = async (right, down, steps = 5) => {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + right, y + down, { steps });
    await page.mouse.up();
    await settled(page);
  };
  await drag(3, -3, 1);
  assert.deepEqual([await angle(page, 'oblique'), await angle(page, 'tilt')], [0, 0], 'a hand that trembles does not turn');
  await drag(-film.width / 9, -film.height / 18);
  assert.ok(Math.abs((await angle(page, 'oblique')) - 10) < 0.5, 'a ninth of the width to the left is ten degrees left');
  assert.equal(await angle(page, 'tilt'), 0, 'the other axis stays');
  await drag(film.width / 40, -film.height / 18);
  assert.ok(Math.abs((await angle(page, 'tilt')) - 5) < 0.5, 'up is cephalad');
  assert.ok(Math.abs((await angle(page, 'oblique')) - 10) < 0.5);
  assert.notEqual(await pictureHash(page), before);
  await close();
});

test('two fingers enlarge the film and never turn the C-arm', { skip: only('chromium', 'touch by the DevTools protocol') }, async () => {
  const { page, close } = await open(site, { hash: START, options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } });
  const film = await page.locator('#overlay').boundingBox();
  const touch = await page.context().newCDPSession(page);
  const at = (...xs) => xs.map((dx, id) => ({ id, x: film.x + film.width / 2 + dx, y: film.y + film.height / 2 }));
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(-20) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(-40) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(-40, 20) });
  for (let i = 1; i <= 6; i++) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(-40 - 8 * i, 20 + 8 * i) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: at(-88) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(-20) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await settled(page);
  assert.deepEqual([await angle(page, 'oblique'), await angle(page, 'tilt')], [0, 0]);
  assert.match(await page.evaluate(() => document.getElementById('film-image').style.transform), /scale\((1\.[5-9]|2)/);
  await close();
});

test('a finger on the picture turns and does not scroll', { skip: only('chromium', 'touch by the DevTools protocol') }, async () => {
  const { page, close } = await open(site, { hash: START, options: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } });
  assert.equal(await page.evaluate(() => getComputedStyle(document.getElementById('overlay')).touchAction), 'none');
  const film = await page.locator('#overlay').boundingBox();
  const touch = await page.context().newCDPSession(page);
  const at = (dx) => [{ x: film.x + film.width / 2 + dx, y: film.y + film.height / 2 }];
  await touch.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: at(0) });
  for (let i = 1; i <= 6; i++) await touch.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: at(i * 8) });
  await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await settled(page);
  assert.ok((await angle(page, 'oblique')) < -8, `${await angle(page, 'oblique')}`);
  assert.equal(await page.evaluate(() => scrollY), 0);
  await close();
});

test('level, side, patient, polarity, table and image rotation change the picture', async () => {
  const { page, errors, close } = await open(site, { hash: '#level=L4&side=left&oblique=20&tilt=5' });
  const hashes = [await pictureHash(page)];
  const step = async (name, act) => {
    await act();
    await settled(page);
    const hash = await pictureHash(page);
    assert.ok(!hashes.includes(hash), `${name} left the picture as it was`);
    hashes.push(hash);
  };
  await step('polarity', () => page.uncheck('#bone-dark'));
  await step('level', () => page.check('#level-L2'));
  await step('patient', () => page.selectOption('#patient', { index: 1 }));
  await openSheet(page, 'picture');
  await step('table', () => page.getByRole('button', { name: 'Move the table 5 mm: To the head' }).click());
  await step('rotation', () => page.locator('#turn-rotation').press('PageUp'));
  const overlay = await pictureHash(page, 'overlay');
  await page.check('#side-right');
  await settled(page);
  assert.notEqual(await pictureHash(page, 'overlay'), overlay, 'the other side has another articular process standing out');
  await page.uncheck('#outlines');
  await settled(page);
  assert.notEqual(await pictureHash(page, 'overlay'), overlay);
  assert.deepEqual(errors, []);
  await close();
});

test('names of the dog stand on the picture and in a list', async () => {
  const { page, close } = await open(site, { hash: '#level=L4&side=left&oblique=25&tilt=6' });
  const before = await pictureHash(page, 'overlay');
  await page.check('#labels');
  await settled(page);
  assert.notEqual(await pictureHash(page, 'overlay'), before);
  const list = await page.textContent('#dog-list');
  for (const name of ['eye: pedicle of L4', 'nose: transverse process of L4', 'neck: pars of L4', 'foreleg: inferior articular process of L4', 'next dog’s ear: superior articular process of L5']) {
    assert.ok(list.includes(name), `${name} in ${list}`);
  }
  await close();
});

test('while a patient is shaped the page goes on: sliders move, and a later choice overtakes an earlier one', async () => {
  const { page, close } = await open(site);
  const average = await pictureHash(page);
  const turned = await page.evaluate(async () => {
    const list = document.getElementById('patient');
    const choose = (value) => {
      list.value = value;
      list.dispatchEvent(new Event('change', { bubbles: true }));
    };
    const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
    choose('large');
    await pause(60);
    // The page runs this between two bones: the first choice is not done yet.
    const busy = !document.getElementById('film-state').hidden;
    choose('small');
    const slider = document.getElementById('turn-tilt');
    slider.value = '4';
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    return { busy };
  });
  assert.ok(turned.busy);
  await page.waitForFunction(() => document.getElementById('film-state').hidden);
  await settled(page);
  const overtaken = await pictureHash(page);
  assert.notEqual(overtaken, average);
  await close();
  const { page: straight, close: shut } = await open(site, { hash: '#patient=small&tilt=4' });
  assert.equal(await straight.inputValue('#patient'), 'small');
  assert.equal(await straight.inputValue('#turn-tilt-number'), '4');
  assert.equal(await pictureHash(straight), overtaken, 'the same picture as that patient gives alone');
  await shut();
});

test('contrast and brightness change the greys alone, by keyboard, and go back with one button', async () => {
  const { page, close } = await open(site);
  await openSheet(page, 'picture');
  const before = await pictureHash(page);
  const mean = () =>
    page.evaluate(() => {
      const { width, height } = document.getElementById('radiograph');
      const data = document.getElementById('radiograph').getContext('2d').getImageData(0, 0, width, height).data;
      let sum = 0;
      for (let i = 0; i < data.length; i += 4) sum += data[i];
      return sum / (data.length / 4);
    });
  const dim = await mean();
  await page.locator('#window-brightness').press('ArrowRight');
  await page.locator('#window-brightness').press('ArrowRight');
  await settled(page);
  assert.ok((await mean()) > dim + 5, 'brighter');
  assert.equal(await page.getAttribute('#window-brightness', 'aria-valuetext'), '10 %');
  await page.locator('#window-contrast').press('End');
  await settled(page);
  assert.equal(await page.getAttribute('#window-contrast', 'aria-valuetext'), '200 %');
  await page.click('#straighten');
  await settled(page);
  assert.equal(await pictureHash(page), before);
  await close();
});
