// Calls of a SCORM host's object, none of which may be trusted: methods throw, are missing, answer booleans for texts, or "false".

/**
 * The object that a SCORM host gives: methods by name, whatever they are.
 * @typedef {Record<string, (...args: string[]) => unknown>} HostObject
 *
 * What is done with it.
 * @typedef {'start' | 'set' | 'get' | 'commit' | 'end' | 'error' | 'errorText'} HostCall
 *
 * Why a call failed.
 * @typedef {{ code: string, why: string, lasting: boolean }} Failure
 */

/**
 * Calls of it. `names` are the methods' names in this version; `lasting` the codes of errors that will not go away by trying again; `unset` the code
 * of a value that was never set.
 * @param {HostObject} api
 * @param {{ names: Record<HostCall, string>, lasting: string[], unset: string }} version
 */
export function hostCalls(api, { names, lasting, unset }) {
  /** @type {(name: HostCall, ...args: string[]) => { value?: unknown, thrown?: boolean }} */
  const call = (name, ...args) => {
    try {
      return { value: api[names[name]](...args) };
    } catch {
      // What the host's own script broke on says nothing to a learner.
      return { thrown: true };
    }
  };
  /** @param {{ value?: unknown }} answer */
  const isTrue = ({ value }) => String(value) === 'true';
  const code = () => String(call('error').value ?? '').trim();

  /**
   * Why the last call failed.
   * @param {{ thrown?: boolean }} answer
   * @returns {Failure}
   */
  const failure = ({ thrown }) => {
    if (thrown) return { code: '', why: '', lasting: false };
    const found = code();
    const said = String(call('errorText', found).value ?? '').trim();
    return { code: found, why: [found, said].filter((part) => part && part !== '0').join(': '), lasting: lasting.includes(found) };
  };
  /** @param {Parameters<typeof call>} args */
  const act = (...args) => {
    const answer = call(...args);
    return isTrue(answer) ? null : failure(answer);
  };
  return {
    /** null when it worked, else why not. The same for `set`, `commit` and `end`. */
    start: () => act('start', ''),
    /** @type {(key: string, value: string | number | boolean) => Failure | null} */
    set: (key, value) => act('set', key, String(value)),
    commit: () => act('commit', ''),
    end: () => act('end', ''),
    /**
     * A value as text; '' when it is not set or not known to the host, null when it could not be read.
     * @param {string} key
     */
    get(key) {
      const answer = call('get', key);
      if (answer.thrown) return null;
      if (answer.value !== '' && answer.value !== null && answer.value !== undefined) return String(answer.value);
      const found = code();
      return found === '0' || found === '' || found === unset || lasting.includes(found) ? '' : null;
    },
  };
}

/**
 * The host's object of that name: up the chain of parents, then the same from the window that opened this one (SCORM RTE 3.3.6).
 * @param {string} name
 * @param {any} from a window, of which nothing is known
 * @returns {HostObject | null}
 */
export function findHost(name, from = globalThis) {
  for (const start of [() => from, () => from.top?.opener, () => from.opener]) {
    try {
      let place = start();
      for (let height = 0; place && height < 500; height += 1) {
        if (place[name]) return place[name];
        if (place.parent === place) break;
        place = place.parent;
      }
    } catch {
      // A window of another origin: nothing behind it can be read.
    }
  }
  return null;
}
