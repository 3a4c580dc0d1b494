// Help on the page: the first minute, the tour, the keys and their list, what is said without a network.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, setUp, settled, typeAngle } from './harness.mjs';
import { drawn, press } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

const focused = (page) => page.evaluate(() => document.activeElement.id);
const single = async (page, on) => {
  await page.locator('#menu-button').press('Enter');
  await page.locator('#keys-open').press('Enter');
  await page.waitForSelector('#keymap[open]');
  await page.locator('#single-keys').setChecked(on);
  await page.keyboard.press('Escape');
};

/** The move that a sentence of advice asks for: `[angle, degrees]`, or null. */
function move(sentence) {
  const degrees = Number(sentence.match(/(\d+) degrees?/)?.[1] ?? 0);
  const by = degrees || 0.5;
  if (/towards the patient's (left|right)/.test(sentence)) return ['oblique', /left/.test(sentence) ? by : -by];
  if (/cephalad|caudad/.test(sentence)) return ['tilt', /cephalad/.test(sentence) ? by : -by];
  return null;
}

test('a newcomer who follows nothing but the advice has a true AP within a dozen moves, and sees why', async () => {
  const { page, errors, close } = await open(site);
  assert.ok(await page.locator('#welcome').isVisible());
  assert.match(await page.textContent('#welcome'), /Make a true AP/);
  const counts = [];
  for (let start = 0; start < 4; start++) {
    if (start > 0) await page.click('#start-random');
    await settled(page);
    let moves = 0;
    const done = () => page.locator('#step-square[data-phase="done"]').count();
    while (!(await done())) {
      // The one strong button says what is off; the line under it then keeps saying it.
      if (await page.locator('#way-row').isVisible() || await page.locator('#step-said').isHidden()) await page.click('#check');
      await drawn(page);
      const sentences = [await page.textContent('#step-said')];
      const asked = sentences.map(move).find(Boolean);
      if (!asked && (await done())) break;
      assert.ok(asked, `advice that says what to do: ${sentences}`);
      moves += 1;
      assert.ok(moves <= 12, `${moves} moves: ${sentences}`);
      const [angle, by] = asked;
      const now = Number(await page.inputValue(`#turn-${angle}-number`));
      await typeAngle(page, angle, (now + by).toFixed(1));
    }
    counts.push(moves);
    // The mark and its reason stay where they were made, also once the checks have gone on to the next view.
    const why = await page.textContent('#step-square .step-result');
    assert.match(why, /True AP: 100 of 100\..*Spinous process centred: \d+ %, full marks within 3 %.*End plate squared: [\d.]+°, full marks within 2°/);
  }
  // At five seconds a move, reading included, this is well under a minute.
  assert.ok(Math.max(...counts) * 5 < 60, `${counts}`);
  assert.ok(await page.locator('#view-oblique').isChecked());
  await page.click('#welcome-close');
  assert.equal(await focused(page), 'picture');
  await page.reload();
  await settled(page);
  assert.ok(await page.locator('#welcome').isHidden(), 'a second visit has no first line');
  assert.deepEqual(errors, []);
  await close();
});

test('the tour points at each part and covers none, moves nothing but the page, and notices what is done', async () => {
  for (const viewport of [{ width: 1280, height: 800 }, { width: 320, height: 640 }]) {
    const { page, errors, close } = await open(site, { options: { viewport, reducedMotion: 'reduce' } });
    await page.locator('#welcome-tour').press('Enter');
    await page.waitForSelector('#tour:not([hidden])');
    assert.equal(await page.locator('#welcome').isVisible(), false);
    const titles = [];
    for (;;) {
      assert.equal(await focused(page), 'tour-heading');
      titles.push(await page.textContent('#tour-heading'));
      const seen = await page.evaluate(async () => {
        const at = () => [scrollX, scrollY, ...['[data-tour]', '#tour'].flatMap((s) => Object.values(document.querySelector(s).getBoundingClientRect().toJSON()))].join();
        const [part, panel, caution] = ['[data-tour]', '#tour', '.caution'].map((s) => document.querySelector(s).getBoundingClientRect());
        const now = at();
        await new Promise((next) => setTimeout(next, 120));
        return {
          still: now === at(),
          over: part.left < panel.right && panel.left < part.right && part.top < panel.bottom && panel.top < part.bottom,
          // The caution stands at the foot of the column beside the film, or of the window.
          inSight: part.top >= 0 && Math.min(part.bottom, part.top + 60) <= (part.right <= caution.left ? innerHeight : caution.top) && panel.top >= 0 && panel.bottom <= caution.top + panel.height * 0.1,
          outlined: getComputedStyle(document.querySelector('[data-tour]')).outlineStyle,
          sideways: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        };
      });
      assert.deepEqual(seen, { still: true, over: false, inSight: true, outlined: 'solid', sideways: 0 }, `${viewport.width}: ${titles.at(-1)}`);
      if (titles.length === 2) {
        // Back and forth, by Tab from the heading.
        await page.locator('#tour-back').press('Enter');
        assert.equal(await page.textContent('#tour-heading'), titles[0]);
        await page.locator('#tour-next').press('Enter');
        await page.locator('#turn-oblique').press('ArrowLeft');
        await drawn(page);
        assert.match(await page.textContent('.tour-noticed'), /You have turned it/);
      }
      if ((await page.textContent('#tour-next')) === 'Done') break;
      await page.locator('#tour-next').press('Enter');
    }
    assert.equal(titles.length, 6, `${titles}`);
    await page.keyboard.press('Escape');
    assert.equal(await page.locator('#tour').isVisible(), false);
    assert.equal(await page.locator('[data-tour]').count(), 0);
    assert.equal(await focused(page), 'picture', 'its opener has gone');
    // At any time from the menu, also where a part is not there.
    await page.check('#activity-injection', { force: true });
    await page.locator('#menu-button').press('Enter');
    await page.locator('#tour-open').press('Enter');
    await page.waitForSelector('#tour:not([hidden])');
    await page.keyboard.press('Escape');
    assert.equal(await focused(page), 'menu-button');
    assert.deepEqual(errors, []);
    await close();
  }
});

test('the list of keys is that of the tables, opens by its key and by the menu, and single keys can be switched off for good', async () => {
  const { page, errors, close } = await open(site, { hash: '#level=L4&side=left&oblique=-9&tilt=12' });
  await page.locator('#turn-oblique').focus();
  await page.keyboard.press('?');
  await page.waitForSelector('#keymap[open]');
  const missing = await page.evaluate(async () => {
    const { NEEDLE_KEYS, PAGE_KEYS, UNDO_KEYS, VIEW_KEYS } = await import('./controls/keys.js');
    const shown = [...document.querySelectorAll('#keymap kbd')].map((e) => e.textContent);
    const empty = [...document.querySelectorAll('#keymap dd')].filter((e) => !e.textContent || e.textContent.includes('undefined')).length;
    return { keys: [...NEEDLE_KEYS, ...PAGE_KEYS, ...VIEW_KEYS].map(([key]) => key.toUpperCase()).concat(UNDO_KEYS.map(([key]) => `Ctrl ${key.toUpperCase()}`)).filter((key) => !shown.includes(key)), empty };
  });
  assert.deepEqual(missing, { keys: [], empty: 0 });
  await page.keyboard.press('l');
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('#keymap').isVisible(), false);
  assert.equal(await focused(page), 'turn-oblique', 'back where it was');
  assert.ok(await page.isChecked('#view-true_ap'), 'no key acts behind the dialog');

  // Keys of the views, and arrows on the picture.
  await page.locator('#picture').focus();
  for (const [key, view] of [['o', 'oblique'], ['l', 'lateral'], ['p', 'true_ap']]) {
    await press(page, key);
    assert.ok(await page.isChecked(`#view-${view}`), key);
  }
  const angles = async () => [await page.inputValue('#turn-oblique-number'), await page.inputValue('#turn-tilt-number')].map(Number);
  for (const [key, oblique, tilt] of [['ArrowLeft', -8, 12], ['Shift+ArrowRight', -13, 12], ['ArrowUp', -13, 13], ['Shift+ArrowDown', -13, 8]]) {
    await press(page, key);
    assert.deepEqual(await angles(), [oblique, tilt], key);
  }

  await settled(page);
  await single(page, false);
  await page.reload();
  await settled(page);
  await page.locator('#picture').focus();
  for (const key of ['o', '?', 'r']) await press(page, key);
  await page.waitForTimeout(100);
  assert.ok(await page.isChecked('#view-true_ap'));
  assert.equal(await page.locator('#keymap[open]').count(), 0);
  await press(page, 'ArrowLeft');
  assert.deepEqual(await angles(), [-12, 8], 'what has the focus answers');
  await single(page, true);
  await page.locator('#turn-oblique-number').press('o');
  assert.ok(await page.isChecked('#view-true_ap'), 'not while a number is typed');
  await page.locator('#picture').focus();
  await press(page, 'o');
  assert.ok(await page.isChecked('#view-oblique'));
  assert.deepEqual(errors, []);
  await close();
});

test('true AP and oblique to full marks by keyboard alone, from the advice', async () => {
  const { page, close } = await open(site, { hash: '#level=L5&side=right&start=4' });
  await page.locator('#picture').focus();
  for (let i = 0; i < 40 && !(await page.locator('#steps-note').isVisible()); i++) {
    if (await page.locator('#which-way').isVisible()) await page.locator('#which-way').press('Enter');
    else if (await page.locator('#way-row').isVisible()) await page.locator('#check').press('Enter');
    await page.locator('#picture').focus();
    await drawn(page);
    const asked = [await page.textContent('#step-said')].map(move).find(Boolean);
    if (!asked) break;
    const [angle, by] = asked;
    if (Math.abs(by) < 1) {
      // Less than an arrow moves: the number beside the slider.
      const field = page.locator(`#turn-${angle}-number`);
      const now = Number(await field.inputValue());
      await field.press('ControlOrMeta+A');
      await page.keyboard.type((now + by / 2).toFixed(1));
      await page.keyboard.press('Enter');
      await page.locator('#picture').focus();
    } else {
      const key = angle === 'oblique' ? (by > 0 ? 'ArrowLeft' : 'ArrowRight') : by > 0 ? 'ArrowUp' : 'ArrowDown';
      await press(page, `Shift+${key}`, Math.floor(Math.abs(by) / 5));
      await press(page, key, Math.abs(by) % 5);
    }
    await settled(page);
  }
  assert.match(await page.textContent('#steps-progress'), /4 of 4/);
  assert.match(await page.textContent('#step-square_again .step-result'), /Oblique: 100 of 100/);
  await close();
});

test('without a network the page says at its foot what goes on working, and moves nothing', async () => {
  const { page, close } = await open(site);
  const top = () => page.evaluate(() => document.getElementById('picture').getBoundingClientRect().top);
  const before = await top();
  await page.context().setOffline(true);
  await page.waitForFunction(() => document.getElementById('network')?.textContent);
  assert.match(await page.textContent('#network'), /No network\. What is open goes on working/);
  assert.equal(await top(), before);
  // The key list has not been opened yet: said in one sentence, and the page goes on.
  await page.keyboard.press('?');
  await page.waitForSelector('#notice:not([hidden])');
  assert.match(await page.textContent('#notice-text'), /could not be loaded.*try again/);
  await page.context().setOffline(false);
  await page.waitForFunction(() => /back/.test(document.getElementById('network').textContent));
  await page.locator('#picture').focus();
  await page.keyboard.press('?');
  await page.waitForSelector('#keymap[open]');
  await close();
});
