// Where an attempt can be played back from: its result, the views so far, and the address that the check page gives. The player is loaded when it is
// first wanted.

import { late } from '../base/late.js';
import { button } from '../base/dom.js';
import { reason } from '../engine/room.js';
import { replay as english } from '../pkg/texts/en/replay.js';
import { pageSayer } from '../words/language.js';

/**
 * @import { AttemptFile } from '../pkg/values.js'
 * @import { App } from '../state/page-state.js'
 * @import { AttemptKeeper } from '../injection/attempt.js'
 * @import { AttemptOf } from '../lesson/on-demand.js'
 */

const say = pageSayer('replay', english);

/**
 * Puts the buttons there. `notice(sentences)`. Returns `{ update(), open() }`.
 * @param {App} app
 * @param {Pick<AttemptKeeper, 'on' | 'report' | 'trace'>} attempt
 * @param {(sentences: string[]) => void} notice
 */
export function replayOffer(app, attempt, notice) {
  // What an address has brought with its attempt: the lesson that it is of, and for which log that holds.
  /** @type {{ of: AttemptOf, log: string } | null} */
  let handed = null;
  const own = () => {
    const trace = attempt.trace();
    if (!trace) return;
    if (handed && handed.log === '') handed.log = String(trace.log);
    play(trace, handed?.log === String(trace.log) ? handed.of : null);
  };
  const inResult = button(say('open'), own, { id: 'replay-result', hidden: true });
  const inHistory = button(say('open'), own, { id: 'replay-history', hidden: true });

  /** Asked of while it runs, the film would show for nothing what an exposure costs, and tell what may not be told. */
  const mayPlay = () => {
    const report = attempt.on() ? attempt.report() : null;
    if (!report || report.actions === 0) return false;
    return report.finished || !(app.state.byExposure || app.state.selfTest || app.lesson?.assessment || app.lesson?.asks.has('name_parts'));
  };

  /**
   * @param {AttemptFile} trace
   * @param {AttemptOf | null} of
   */
  async function play(trace, of) {
    const { room, lesson } = app;
    if (!room) return;
    try {
      const { playBack } = await late(() => import('./player.js'), new URL('./player.js', import.meta.url));
      const desk = of ? new (await (await late(() => import('../lesson/desk.js'), new URL('../lesson/desk.js', import.meta.url))).lessonDesk())(of.lesson, of.learner) : null;
      const marks = lesson || desk ? (/** @type {string[]} */ lines) => lesson?.standing(lines) ?? /** @type {NonNullable<typeof desk>} */ (desk).standing(lines) : null;
      await playBack({ trace, marks, exposures: Boolean(trace.case.exposures), Room: /** @type {typeof import('../pkg/downbeam.js').TeachingRoom} */ (room.constructor), boneDark: app.state.boneDark });
    } catch (error) {
      notice([say('bad', { why: reason(error) })]);
    }
  }

  let wanted = false;
  return {
    /** After each frame. */
    update() {
      if (wanted && attempt.on() && (attempt.report()?.actions ?? 0) > 0) {
        wanted = false;
        own();
      }
      const may = mayPlay();
      const finished = Boolean(attempt.on() && attempt.report()?.finished);
      // Results and strip are built by others, some of them anew: the buttons go to where they stand now.
      const row = document.querySelector('.row:has(> #lesson-again)') ?? document.querySelector('#stage-finish .stage-body');
      if (row && inResult.parentElement !== row) row.append(inResult);
      const history = document.getElementById('history');
      if (history && inHistory.parentElement !== history) history.append(inHistory);
      inResult.hidden = !(may && finished);
      inHistory.hidden = !may;
    },
    /** Plays the attempt that an address brings, once it stands on the page. */
    open(/** @type {AttemptOf | null} */ of) {
      wanted = true;
      handed = of && { of, log: '' };
    },
  };
}
