// The whole injection by keyboard alone: to full marks, and into each place where it should not end.
// Where to aim comes from a second room of the same engine, as a teacher would point; everything done is done through the page's keys.

import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { open, setUp } from './harness.mjs';
import { align, behindWall, depth, mark, marks, press, steerTo, total, turnTo, use } from './keyboard.mjs';

let site;
before(async () => (site = await setUp()));
after(() => site.tearDown());

/** Best views of a target, and a place on the oblique picture that earns full marks, from another room of the same engine. */
const pointedOut = (page, patient, level, side) =>
  page.evaluate(
    async ([name, at, on]) => {
      const { TeachingRoom } = await import('/pkg/downbeam.js');
      const room = new TeachingRoom(name, at, on);
      const tenths = ({ oblique, tilt }) => ({ oblique: Math.round(oblique * 10) / 10, tilt: Math.round(tilt * 10) / 10 });
      const best = Object.fromEntries(room.report().views.map((v) => [v.view, tenths(v.best)]));
      room.setOrientation(best.oblique.oblique, best.oblique.tilt);
      const area = room.procedure(0).area_mm;
      const [left, right] = [Math.min(...area.map((p) => p[0])), Math.max(...area.map((p) => p[0]))];
      const [low, high] = [Math.min(...area.map((p) => p[1])), Math.max(...area.map((p) => p[1]))];
      const middle = [0, 1].map((i) => area.reduce((sum, p) => sum + p[i], 0) / area.length);
      const fits = (u, v) => {
        room.act(0, { do: 'mark', u: Math.round(u * 100), v: Math.round(v * 100) });
        return room.score().steps.find((s) => s.id === 'target').score >= 1;
      };
      // Clear all around, so that a needle that strays a little still passes.
      const places = [];
      for (let u = Math.ceil(left); u <= right; u += 0.6)
        for (let v = Math.ceil(low); v <= high; v += 0.6) {
          const at = [Math.round(u * 5) / 5, Math.round(v * 5) / 5];
          const room_mm = [2.4, 1.6, 0.8, 0].find((r) => [[0, 0], [r, 0], [-r, 0], [0, r], [0, -r]].every(([a, b]) => fits(at[0] + a, at[1] + b)));
          if (room_mm !== undefined) places.push({ at, room_mm, off: Math.hypot(at[0] - middle[0], at[1] - middle[1]) });
        }
      places.sort((a, b) => b.room_mm - a.room_mm || a.off - b.off);
      room.free();
      return { best, target: places[0]?.at };
    },
    [patient, level, side],
  );

/** Views, mark, needle, hub over tip: as far as the skin. */
async function toTheSkin(page, { best, target }) {
  await turnTo(page, best.true_ap);
  await use(page, 'keep-true_ap');
  await turnTo(page, best.oblique);
  await use(page, 'keep-oblique');
  await mark(page, target);
  await use(page, 'place');
  await align(page);
}

for (const [level, side] of [['L4', 'left'], ['L5', 'right']]) {
  test(`${level} ${side} by keyboard alone, to full marks`, async () => {
    const { page, errors, close } = await open(site, { hash: `#injection=on&level=${level}&side=${side}` });
    const pointed = await pointedOut(page, 'average', level, side);
    await toTheSkin(page, pointed);
    await steerTo(page, 45);
    // On in short steps, with a look from the side whenever it is deep.
    await turnTo(page, pointed.best.lateral);
    await use(page, 'keep-lateral');
    for (let i = 0; i < 30; i++) {
      const behind = await behindWall(page);
      if (behind < 3.4) break;
      await press(page, 'o');
      await steerTo(page, (await depth(page)) + (behind > 14 ? 8 : behind > 6 ? 2 : 0.5));
      await press(page, 'l');
    }
    await press(page, 'p');
    await use(page, 'aspirate');
    assert.equal(await page.textContent('#aspirated'), 'Nothing comes back.');
    await use(page, 'inject-50');
    await use(page, 'inject-10');
    await use(page, 'pattern', 'ArrowDown');
    await use(page, 'name');
    assert.match(await page.textContent('#verdict'), /Named rightly.*the spread that is wanted/);
    await use(page, 'finish');
    const said = await marks(page);
    console.log(said, await page.textContent('#met'));
    assert.ok((await total(page)) >= 0.99, JSON.stringify(said));
    assert.ok(await page.locator('#notice').isHidden());
    assert.deepEqual(errors, []);
    await close();
  });
}
