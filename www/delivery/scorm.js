// What SCORM 1.2 and 2004 have in common: a synchronous object of the host, values by name, commit, end. Their tables of names and
// their rules are in scorm12.js and scorm2004.js.
//
// Nothing is taken as kept before the host's commit said so. What it did not take stays pending and is tried again, and the learner is
// told once when that begins and once when it is over.

import { codeOf } from './learner.js';
import { hostCalls } from './host-calls.js';
import { otherTabs } from '../base/other-tabs.js';
import { pause, retrier } from './retry.js';
import { resumed, suspended } from './suspended.js';
import { delivery as texts } from '../words/delivery.js';

/** A commit is a request to the server, in many hosts one that stops the page: at most one in this time while the attempt grows. */
const COMMIT_EVERY_MS = 5000;
/** Waits before the second and third try of handing in. */
const TRIES_MS = [1000, 3000];

/**
 * @import { Delivery, DeliveryActs, Result } from './choose.js'
 * @import { Failure, HostCall, HostObject } from './host-calls.js'
 *
 * A field of the host and its value.
 * @typedef {[key: string, value: string | number]} Field
 *
 * What the host had when the page was opened: the status, and the score as a number of 100, NaN where it has none.
 * @typedef {{ status: string, raw: number }} Before
 *
 * A version of SCORM: its names, limits and rules.
 * @typedef {object} Form
 * @property {'scorm12' | 'scorm2004'} name
 * @property {string} title
 * @property {Record<HostCall, string>} names of the methods
 * @property {string[]} lasting codes of errors that stay however often it is tried
 * @property {string} unset code of a value that was never set
 * @property {string[]} closed codes of a session that is not open
 * @property {Record<'suspend' | 'exit' | 'location' | 'time' | 'learner' | 'mode' | 'status' | 'raw' | 'mastery', string>} keys
 * @property {string[]} essential fields whose refusal the learner is told
 * @property {number} suspendMost characters
 * @property {(seconds: number) => string} time
 * @property {(mark: number) => number} percent of the host's pass mark
 * @property {(failure: Failure, host: { get: (key: string) => string | null }) => boolean} alreadyOpen
 * @property {(before: Before) => Field[]} opened what is said as the page opens
 * @property {(result: Result, before: Before, mark: number) => { passed: boolean, better: boolean, values: Field[] }} result
 * @property {(step: Result['steps'][number], n: number) => Field[]} step
 */

const rawOf = (/** @type {number} */ score) => Math.floor(score * 1e4 + 1e-6) / 100;

/**
 * A Delivery over `api`, the host's object; `form` is the version's table.
 * @param {Form} form
 * @param {HostObject} api
 * @param {DeliveryActs} act
 * @returns {Delivery}
 */
export function scormDelivery(form, api, { notice, lesson = null }) {
  const host = hostCalls(api, form);
  const retry = retrier();
  const began = performance.now();
  /**
   * Not yet known to be accepted, in the order of setting; a value that the host will never take is let go.
   * @type {Map<string, string | number>}
   */
  const pending = new Map();
  /**
   * What was said already, by kind.
   * @type {Set<string>}
   */
  const said = new Set();
  /**
   * Fields of the result that the host will never take.
   * @type {Set<string>}
   */
  const refused = new Set();
  /** @type {{ receipt: string | null, lines: string[] | null }} */
  const kept = { receipt: null, lines: null };
  let open = begin();
  let ended = false;
  let troubled = false;
  let lastCommit = -Infinity;
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let later;
  /** @type {Before} */
  let before = { status: '', raw: NaN };
  let steps = 0;
  /**
   * What the host had when the page was opened; null until it could be read, and nothing is written over it before. `missing`: lines of the log
   * that were too many for it.
   * @type {ReturnType<typeof resumed> & { missing?: number } | null}
   */
  let found = null;

  /** Says a thing once, however often its numbers change. */
  const once = (/** @type {string} */ sentence, kind = sentence) => {
    if (said.has(kind)) return;
    said.add(kind);
    notice([sentence]);
  };

  const tabs = otherTabs(`downbeam.${form.name}.${location.pathname}.${(open && host.get(form.keys.learner)) || ''}`, heard);
  if (open) look();
  else once(texts.notOpened(form.title));
  // Some hosts remove the frame without a word: what is pending is handed over and the session closed.
  addEventListener('pagehide', close);
  // A page that comes back out of the browser's cache has a closed session: begin anew.
  addEventListener('pageshow', (event) => event.persisted && location.reload());

  /**
   * A host that follows the standard begins a new attempt after any end but `suspend`, and what the old one kept is then out of reach:
   * an attempt under way, and the result that a worse one must not replace. So every session ends in `suspend`, that which only looks
   * and that which could not read too.
   */
  function begin() {
    const error = host.start();
    const good = error === null || form.alreadyOpen(error, host);
    if (good && recording()) pending.set(form.keys.exit, 'suspend');
    return good;
  }

  /**
   * Another page of this learner has handed in: its result and receipt are this session's too, which else would be written over them.
   * @param {{ result: Result, receipt: string }} message
   */
  function heard({ result, receipt }) {
    if (ended || !recording()) return;
    const mark = Number.parseFloat(host.get(form.keys.mastery) ?? '');
    const { values, passed, better } = form.result(result, before, mark);
    if (!better) return;
    for (const [key, value] of values) pending.set(key, value);
    kept.receipt = receipt;
    before = { status: passed ? 'passed' : 'failed', raw: rawOf(result.score) };
    if (found) write();
  }

  /** Reads what the host has; false when it cannot be read. */
  function look() {
    const { keys } = form;
    const [text, status, raw] = [keys.suspend, keys.status, keys.raw].map((key) => host.get(key));
    if (text === null || status === null || raw === null) {
      once(texts.notRead);
      return false;
    }
    found = resumed(text);
    kept.receipt = found.receipt;
    before = { status, raw: Number.parseFloat(raw) };
    steps = Number.parseInt(host.get('cmi.interactions._count') ?? '', 10) || 0;
    // How much of a log that was too long for the host was kept: `kept/all`, from `write`.
    const [, all] = /^\d+\/(\d+)$/.exec(host.get(form.keys.location) ?? '') ?? [];
    if (found.lines && Number(all) > found.lines.length) found.missing = Number(all) - found.lines.length;
    if (open && recording()) for (const [key, value] of form.opened(before)) pending.set(key, value);
    return true;
  }

  /** False when the host opened the lesson to look at only. */
  function recording() {
    return !['browse', 'review'].includes(host.get(form.keys.mode) ?? '');
  }

  /** Hands over all that is pending. Whether the host took it. */
  function flush() {
    if (ended) return false;
    open ||= begin();
    let accepted = open;
    for (const [key, value] of open ? pending : []) {
      const error = host.set(key, value);
      if (error?.lasting) {
        pending.delete(key);
        if (form.essential.includes(key)) {
          refused.add(key);
          once(texts.refusedValue(key, error.why));
        }
      } else if (error) {
        accepted = false;
        if (form.closed.includes(error.code)) open = false;
        break;
      }
    }
    lastCommit = performance.now();
    accepted &&= host.commit() === null;
    if (accepted) {
      pending.clear();
      retry.stop();
      if (troubled) notice([texts.takenAgain]);
      troubled = false;
    } else {
      if (!troubled) notice([texts.notTaken]);
      troubled = true;
      retry.again(flush);
    }
    return accepted;
  }

  /** Puts the attempt under way into the host's field. */
  function write() {
    const made = suspended(kept, form.suspendMost);
    pending.set(form.keys.suspend, made.text);
    pending.set(form.keys.exit, 'suspend');
    if (kept.lines) {
      pending.set(form.keys.location, `${made.lines}/${kept.lines.length}`);
      if (made.lines < kept.lines.length) once(texts.tooLong(form.suspendMost, made.lines, kept.lines.length), 'too long');
    }
    if (kept.receipt && !made.receiptKept) once(texts.receiptTooLong(form.suspendMost));
  }

  const time = () => pending.set(form.keys.time, form.time((performance.now() - began) / 1000));

  function close() {
    if (ended) return;
    clearTimeout(later);
    time();
    flush();
    retry.stop();
    host.end();
    ended = true;
  }

  return {
    name: form.name,
    lesson,
    learner: open ? codeOf(host.get(form.keys.learner) ?? '') : null,
    keepsProgress: open && found !== null && recording(),
    async resume() {
      if (!found && !(open && look())) return null;
      if (!found) return null;
      if (found.lines && found.missing) notice([texts.resumedOf(found.lines.length, found.missing)]);
      else if (!found.whole) notice([found.lines ? texts.resumedPart(found.lines.length) : texts.resumedNone]);
      found.whole = true;
      found.missing = 0;
      return found.lines;
    },
    keep(lines) {
      if (ended || !found || !recording()) return;
      kept.lines = found.lines = lines;
      write();
      clearTimeout(later);
      if (retry.waiting()) return;
      later = setTimeout(flush, Math.max(0, lastCommit + COMMIT_EVERY_MS - performance.now()));
    },
    async finish(result) {
      if (ended) return { accepted: false, said: texts.sessionOver };
      if (open && !recording()) return { accepted: false, said: texts.review };
      const readable = found !== null || (open && look());
      clearTimeout(later);
      const mark = Number.parseFloat(host.get(form.keys.mastery) ?? '');
      const { values, passed, better } = form.result(result, before, mark);
      // What the host has may be a pass: only a pass may be written over what cannot be read.
      if (open && !readable && !passed) return { accepted: false, said: texts.resultUnread };
      kept.lines = null;
      if (found) found.lines = null;
      if (better || !kept.receipt) kept.receipt = result.receipt;
      if (found) write();
      refused.clear();
      for (const [key, value] of better ? values : []) pending.set(key, value);
      for (const step of result.steps) {
        for (const [key, value] of form.step(step, steps)) pending.set(key, value);
        steps += 1;
      }
      time();
      let accepted = flush();
      for (const wait of TRIES_MS) {
        if (accepted) break;
        await pause(wait);
        accepted = troubled ? flush() : true;
      }
      if (!accepted) return { accepted: false, said: texts.pending };
      if (better && values.some(([key]) => refused.has(key))) return { accepted: false, said: texts.resultRefused };
      if (better) {
        before = { status: passed ? 'passed' : 'failed', raw: rawOf(result.score) };
        tabs.tell({ result: { ...result, receipt: '', lines: [] }, receipt: result.receipt });
      }
      return { accepted: true, said: better ? differing(passed, result, mark) : texts.earlierBetter };
    },
    leave() {
      if (ended || !open) return;
      clearTimeout(later);
      time();
      flush();
    },
  };

  /**
   * A sentence when the host's pass mark says something else than the lesson's.
   * @param {boolean} passed
   * @param {Result} result
   * @param {number} mark
   */
  function differing(passed, result, mark) {
    return passed === result.passed ? null : texts.otherMark(form.percent(mark), passed);
  }
}
