// Talking to a learning record store: statements in order, one request at a time, and documents of state. What did not get through
// waits and is tried again; each statement has its own id, so that one sent twice is stored once.

import { retrier } from './retry.js';
import { RECEIPT } from './statement.js';
import { delivery as texts } from '../words/delivery.js';

const VERSION = '1.0.3';
/** Browsers send requests of a page that closes up to 64 KiB, all of them together (Fetch standard, keepalive). */
export const LAST_WORDS_BYTES = 60_000;
/** Answers after which trying again may help. */
const PASSING = [408, 425, 429, 500, 502, 503, 504];

/**
 * @typedef {object} Statement
 * @property {string} id
 * @property {{ success?: boolean, extensions?: Record<string, unknown> }} [result]
 * @property {{ sha2: string, contentType: string }[]} [attachments] descriptions of what is sent beside it
 *
 * What a store answers to statements; 0 where it could not be asked.
 * @typedef {{ accepted: boolean, status: number }} Answer
 *
 * Statements that go in one request, with the receipt that one of them names as its attachment.
 * @typedef {{ statements: Statement[], receipt: string | null, done: (answer: Answer) => void }} Batch
 *
 * @typedef {ReturnType<typeof recordStore>} RecordStore
 */

/**
 * A store. `authorization` is the header's text.
 * @param {{ endpoint: string, authorization: string, notice: (sentences: string[]) => void }} of
 */
export function recordStore({ endpoint, authorization, notice }) {
  const base = endpoint.endsWith('/') ? endpoint : `${endpoint}/`;
  const retry = retrier();
  /**
   * Batches in order.
   * @type {Batch[]}
   */
  let queue = [];
  let busy = false;
  let troubled = false;
  let over = false;

  const headers = (/** @type {Record<string, string>} */ more = {}) => ({ Authorization: authorization, 'X-Experience-API-Version': VERSION, ...more });

  /**
   * A request to the store. Throws when the network fails. Only what is read is kept out of the cache: told so of what is written, a browser asks the
   * store again before each request whether it may send one, and a page that closes has no time for that.
   * @param {string} path
   * @param {RequestInit & { headers?: Record<string, string> }} options
   */
  const ask = (path, options = {}) => fetch(base + path, { ...options, credentials: 'omit', cache: options.method ? 'default' : 'no-store', headers: headers(options.headers) });

  async function drain() {
    if (busy || over) return;
    busy = true;
    while (queue.length > 0 && !over) {
      const batch = queue[0];
      const answer = await post(batch);
      if (answer === 'later') {
        if (!troubled) notice([texts.notTaken]);
        troubled = true;
        retry.again(drain);
        break;
      }
      if (queue[0] === batch) queue.shift();
      batch.done(answer);
      if (troubled && answer.accepted) {
        troubled = false;
        retry.stop();
        notice([texts.takenAgain]);
      }
    }
    busy = false;
  }

  /**
   * Sends a batch.
   * @param {Batch} batch
   * @returns {Promise<Answer | 'later'>}
   */
  async function post(batch) {
    try {
      const apart = batch.receipt === null ? null : multipart(batch.statements, batch.receipt);
      let response = await ask('statements', apart ?? asRequest(batch.statements));
      // A store that takes no attachments gets the receipt as text inside the statement.
      if (batch.receipt && !isAccepted(response) && ![401, 403, ...PASSING].includes(response.status)) {
        batch.statements = inside(batch);
        batch.receipt = null;
        response = await ask('statements', asRequest(batch.statements));
      }
      if (PASSING.includes(response.status)) return 'later';
      return { accepted: isAccepted(response), status: response.status };
    } catch {
      return 'later';
    }
  }

  return {
    /**
     * Sends statements after those before; `receipt` is the attachment that one of them names. Resolves when the store has answered.
     * @param {Statement[]} statements
     * @param {string | null} receipt
     * @returns {Promise<Answer>}
     */
    send(statements, receipt = null) {
      return new Promise((done) => {
        queue.push({ statements, receipt, done });
        drain();
      });
    },
    waiting: () => queue.length > 0,
    /**
     * A document of state as text, `''` when there is none, null when it could not be read.
     * @param {string} path
     */
    async get(path) {
      try {
        const response = await ask(path);
        return response.ok ? await response.text() : response.status === 404 ? '' : null;
      } catch {
        return null;
      }
    },
    /**
     * Whether a statement is in the store; null when the store does not say.
     * @param {string} id
     */
    async has(id) {
      const text = await this.get(`statements?${new URLSearchParams({ statementId: id })}`);
      return text === null ? null : text.includes(id);
    },
    /**
     * Puts a document; the status, or 0 when the network failed. `last` is how many bytes a closing page may still send, if it closes.
     * @param {string} path
     * @param {string} text
     * @param {number | null} last
     */
    async put(path, text, last = null) {
      try {
        const response = await ask(path, { method: 'PUT', body: text, keepalive: last !== null && bytes(text) < last, headers: { 'Content-Type': 'application/json' } });
        return response.status;
      } catch {
        return 0;
      }
    },
    /**
     * The page is closing: everything that waits and these statements, in one request that outlives it; of two with one id the first.
     * Returns how many bytes that took. What is under way may arrive besides: by their ids a statement is stored once. A strict store may
     * refuse this request then, because a receipt that was an attachment stands inside its statement here; it has what counts already.
     * @param {Statement[]} statements
     */
    lastWords(statements) {
      over = true;
      retry.stop();
      const waits = queue.flatMap((batch) => batch.statements);
      const more = statements.filter(({ id }) => !waits.some((one) => one.id === id));
      const whole = [...queue.flatMap((batch) => (batch.receipt ? inside(batch) : batch.statements)), ...more];
      const slim = [...waits.map(({ attachments: _, ...rest }) => rest), ...more.map(withoutReceipt)];
      const all = bytes(JSON.stringify(whole)) < LAST_WORDS_BYTES ? whole : slim;
      for (const { done } of queue) done({ accepted: false, status: 0 });
      queue = [];
      const request = asRequest(all);
      ask('statements', { ...request, keepalive: true }).catch(() => {});
      return bytes(request.body);
    },
  };
}

const bytes = (/** @type {string} */ text) => new TextEncoder().encode(text).length;

/** 409: a statement of that id is there already, from a try whose answer was lost. */
const isAccepted = (/** @type {Response} */ response) => response.ok || response.status === 409;

const asRequest = (/** @type {Statement[]} */ statements) => ({ method: 'POST', body: JSON.stringify(statements), headers: { 'Content-Type': 'application/json' } });

/** The receipt in the result of its statement, in place of the attachment. */
const inside = (/** @type {Batch} */ { statements, receipt }) => statements.map((one) => (one.attachments ? withReceipt(one, receipt) : one));

/**
 * A statement with a receipt in its result.
 * @param {Statement} statement
 * @param {string | null} receipt
 */
export function withReceipt({ attachments: _, ...bare }, receipt) {
  const extensions = { ...bare.result?.extensions, [RECEIPT]: receipt };
  return { ...bare, result: { ...bare.result, extensions } };
}

/** @param {Statement} one */
function withoutReceipt(one) {
  if (!one.result?.extensions?.[RECEIPT]) return one;
  const { [RECEIPT]: _, ...extensions } = one.result.extensions;
  return { ...one, result: { ...one.result, extensions } };
}

/**
 * A request with an attachment (xAPI 1.0.3, part 3, 1.5.2; RFC 2046); null where no statement names one.
 * @param {Statement[]} statements
 * @param {string} receipt
 */
function multipart(statements, receipt) {
  const described = statements.find(({ attachments }) => attachments)?.attachments;
  if (!described) return null;
  const boundary = `downbeam-${statements[0].id}`;
  const part = (/** @type {string[]} */ head, /** @type {string} */ body) => `--${boundary}\r\n${head.join('\r\n')}\r\n\r\n${body}\r\n`;
  const [{ sha2, contentType }] = described;
  const body =
    part(['Content-Type: application/json'], JSON.stringify(statements)) +
    part([`Content-Type: ${contentType}`, 'Content-Transfer-Encoding: binary', `X-Experience-API-Hash: ${sha2}`], receipt) +
    `--${boundary}--\r\n`;
  return { method: 'POST', body, headers: { 'Content-Type': `multipart/mixed; boundary="${boundary}"` } };
}
