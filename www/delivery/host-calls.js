// Calls of a SCORM host's object, none of which may be trusted: methods throw, are missing, answer booleans for texts, or "false".

/**
 * `names` are the methods' names in this version; `lasting` the codes of errors that will not go away by trying again; `unset` the code
 * of a value that was never set.
 */
export function hostCalls(api, { names, lasting, unset }) {
  const call = (name, ...args) => {
    try {
      return { value: api[names[name]](...args) };
    } catch {
      // What the host's own script broke on says nothing to a learner.
      return { thrown: true };
    }
  };
  const isTrue = ({ value }) => String(value) === 'true';
  const code = () => String(call('error').value ?? '').trim();

  /** Why the last call failed: `{ code, why, lasting }`. */
  const failure = ({ thrown }) => {
    if (thrown) return { code: '', why: '', lasting: false };
    const found = code();
    const said = String(call('errorText', found).value ?? '').trim();
    return { code: found, why: [found, said].filter((part) => part && part !== '0').join(': '), lasting: lasting.includes(found) };
  };
  const act = (...args) => {
    const answer = call(...args);
    return isTrue(answer) ? null : failure(answer);
  };
  return {
    /** null when it worked, else why not. The same for `set`, `commit` and `end`. */
    start: () => act('start', ''),
    set: (key, value) => act('set', key, String(value)),
    commit: () => act('commit', ''),
    end: () => act('end', ''),
    /** A value as text; '' when it is not set or not known to the host, null when it could not be read. */
    get(key) {
      const answer = call('get', key);
      if (answer.thrown) return null;
      if (answer.value !== '' && answer.value !== null && answer.value !== undefined) return String(answer.value);
      const found = code();
      return found === '0' || found === '' || found === unset || lasting.includes(found) ? '' : null;
    },
  };
}

/** The host's object of that name: up the chain of parents, then the same from the window that opened this one (SCORM RTE 3.3.6). */
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
