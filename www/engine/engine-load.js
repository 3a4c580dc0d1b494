// Brings the engine in: glue, wasm with progress, and one clear sentence when any of it fails. `words` is the `loading` table of
// the texts. The wasm is two files: the first is enough for a picture, the rest is added to it.

/**
 * What is said of loading: the `loading` table of the texts.
 * @typedef {{ failedStart: (why: string) => string, failedFetch: (why: string) => string, failedIntegrity?: (file: string) => string, noWasm: string, noServer: string,
 *   status: (code: number) => string }} LoadingWords
 *
 * @typedef {(percent: number | null) => void} OnProgress
 */

const GLUE = '../pkg/downbeam.js';
const ENGINE = new URL('../pkg/downbeam_bg.wasm', import.meta.url);
const REST = new URL('../pkg/downbeam_rest.wasm', import.meta.url);
// As a preload without `crossorigin` asks: the only kind that WebKit, too, hands to a fetch, where others are fetched twice. Only from
// the page's own place, since elsewhere, and in a frame without an origin, such an answer could not be read.
/** @type {RequestInit} */
const AS_PRELOADED = ENGINE.origin === globalThis.origin ? { mode: 'no-cors', credentials: 'include' } : {};

/**
 * Loads the whole engine. `onProgress` gets percent, or null while the size is unknown. With an `integrity` (as in HTML's attribute of
 * that name) wasm is run only if its digest is among those given. Throws an Error with a sentence.
 * @param {OnProgress} onProgress
 * @param {LoadingWords} words
 */
export async function loadEngine(onProgress, words, integrity = '') {
  // Both files are on their way at once.
  const rest = compile(REST, () => {}, words, integrity);
  rest.catch(() => {});
  const { glue } = await loadFirstPart(onProgress, words, integrity);
  await add(glue, rest, words);
  return glue;
}

/**
 * Loads what a first picture needs of the engine. `addRest()` brings what is left: once, and again for the next who asks if it did not
 * come. Until then nothing else may be called (`LATER` in the host tool's `build`). Throws as `loadEngine` does.
 * @param {OnProgress} onProgress
 * @param {LoadingWords} words
 */
export async function loadFirstPart(onProgress, words, integrity = '') {
  const [glue, compiled] = await Promise.all([loadGlue(words), compile(ENGINE, onProgress, words, integrity)]);
  await started(() => glue.initFirst({ module_or_path: compiled }), words);
  /** @type {Promise<void> | null} */
  let adding = null;
  return {
    glue,
    addRest() {
      adding ??= add(glue, compile(REST, () => {}, words, integrity), words).catch((error) => {
        adding = null;
        throw error;
      });
      return adding;
    },
  };
}

/**
 * Adds the second file, once it is compiled, to the first, which has started.
 * @param {typeof import('../pkg/downbeam.js')} glue
 * @param {Promise<WebAssembly.Module>} coming
 * @param {LoadingWords} words
 */
async function add(glue, coming, words) {
  const rest = await coming;
  await started(() => glue.addRest(rest), words);
}

/**
 * @param {() => Promise<unknown>} start
 * @param {LoadingWords} words
 */
async function started(start, words) {
  try {
    await start();
  } catch (error) {
    throw new Error(words.failedStart(reason(error)), { cause: error });
  }
}

let tries = 0;

/**
 * @param {LoadingWords} words
 * @returns {Promise<typeof import('../pkg/downbeam.js')>}
 */
async function loadGlue(words) {
  try {
    // The path itself, since bundlers find a module by this very form.
    if (tries++ === 0) return await import('../pkg/downbeam.js');
    // A failed import is remembered by the browser under its address, so a retry needs another one.
    return await import(/* @vite-ignore */ `${GLUE}?retry=${tries}`);
  } catch (error) {
    throw new Error(words.failedFetch(reason(error)), { cause: error });
  }
}

/**
 * @param {URL} file
 * @param {OnProgress} onProgress
 * @param {LoadingWords} words
 * @param {string} integrity
 */
async function compile(file, onProgress, words, integrity) {
  if (typeof WebAssembly === 'undefined') throw new Error(words.failedStart(words.noWasm));
  const streamed = await fetchEngine(file, words, integrity);
  try {
    return await WebAssembly.compileStreaming(withProgress(streamed, onProgress));
  } catch {
    // No streaming in this browser, or an odd proxy: take the whole file, then compile.
  }
  const whole = await fetchEngine(file, words, integrity);
  try {
    return await WebAssembly.compile(await whole.arrayBuffer());
  } catch (error) {
    throw new Error(words.failedStart(words.noWasm), { cause: error });
  }
}

/**
 * @param {URL} file
 * @param {LoadingWords} words
 * @param {string} integrity
 */
async function fetchEngine(file, words, integrity) {
  let response;
  try {
    response = await fetch(file, integrity ? { integrity } : AS_PRELOADED);
  } catch (error) {
    if (integrity && (await answers(file))) {
      throw new IntegrityError(words.failedIntegrity?.(file.pathname.split('/').pop() ?? ''), { cause: error });
    }
    throw new Error(words.failedFetch(words.noServer), { cause: error });
  }
  if (!response.ok) throw new Error(words.failedFetch(words.status(response.status)));
  return response;
}

/** The file is there, but its digest is not the one that was asked for. */
export class IntegrityError extends Error {}

/**
 * Whether a file of the engine can be had at all: a browser says of a wrong digest only that the request failed.
 * @param {URL} file
 */
async function answers(file) {
  try {
    const response = await fetch(file);
    await response.body?.cancel();
    return response.ok;
  } catch {
    return false;
  }
}

/**
 * The same body, counted on its way; the type is set here since some course hosts send wasm as octet-stream.
 * @param {Response} response
 * @param {OnProgress} onProgress
 */
function withProgress(response, onProgress) {
  // A compressed body is counted after unpacking, its length before: then only "loading" can be said.
  const total = response.headers.get('Content-Encoding') ? 0 : Number(response.headers.get('Content-Length'));
  let seen = 0;
  const counted = response.body?.pipeThrough(
    new TransformStream({
      transform(chunk, controller) {
        seen += chunk.byteLength;
        onProgress(total ? Math.min(100, Math.round((100 * seen) / total)) : null);
        controller.enqueue(chunk);
      },
    }),
  );
  return new Response(counted, { headers: { 'Content-Type': 'application/wasm' } });
}

/**
 * The short reason in an error, without the stack and without addresses, which say nothing to a reader.
 * @param {unknown} error
 */
export function reason(error) {
  return String(Object(error).message ?? error).split('\n')[0].replace(/(:| fetching) ['"]?https?:\/\/\S+/, '').replace(/\.$/, '').slice(0, 160);
}
