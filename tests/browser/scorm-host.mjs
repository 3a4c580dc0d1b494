// A SCORM host: scorm-again (npm, MIT) as the object, with the limits of the standards held in front of it, since it lets 64,000 characters
// through where SCORM 1.2 has 4,096, and with the ways in which hosts misbehave.

import { html } from './hosts.mjs';

const VERSIONS = {
  scorm12: { script: '/scorm-again/scorm12.js', made: 'new Scorm12API({ autocommit: false, logLevel: 5 })', name: 'API', set: 'LMSSetValue', get: 'LMSGetValue', commit: 'LMSCommit', error: 'LMSGetLastError', end: 'LMSFinish', learner: 'made.cmi.core.student_id' },
  scorm2004: { script: '/scorm-again/scorm2004.js', made: 'new Scorm2004API({ autocommit: false, logLevel: 5 })', name: 'API_1484_11', set: 'SetValue', get: 'GetValue', commit: 'Commit', error: 'GetLastError', end: 'Terminate', learner: 'made.cmi.learner_id' },
};

/**
 * The host's page with the lesson in a frame. In it: `calls` (every call as text), `refused` (values over a limit), `misbehave` (name of a
 * method → 'false' or 'throw'), `attempts` (which one this is), and `model()`, what the host kept when it last committed.
 */
export function scormHost(form, lesson) {
  const v = VERSIONS[form];
  return html(`
    <script src="${v.script}"></script>
    <script>
      globalThis.calls = [];
      globalThis.refused = [];
      globalThis.misbehave = {};
      const made = ${v.made};
      ${v.learner} = 'jdoe@example.org';
      // As the standards say: a session that does not end in "suspend" ends the attempt, and the next one begins a new one, empty.
      const last = JSON.parse(localStorage.getItem('kept'));
      const resumed = (last?.cmi.core ?? last?.cmi)?.exit === 'suspend';
      globalThis.attempts = Number(localStorage.getItem('attempts') ?? 0) + (resumed ? 0 : 1);
      localStorage.setItem('attempts', attempts);
      if (resumed) {
        // What a session ended with is not set in the next one (RTE 4.2.8).
        delete (last.cmi.core ?? last.cmi).exit;
        made.loadFromJSON(last.cmi, 'cmi');
      } else {
        localStorage.removeItem('kept');
      }
      const most = { 'cmi.suspend_data': ${form === 'scorm12' ? 4096 : 64000}, 'cmi.core.lesson_location': 255, 'cmi.location': 1000 };
      const over = (key, value) => value.length > (most[key] ?? (/student_response$/.test(key) ? 255 : 4000));
      let own = '';
      globalThis.${v.name} = new Proxy(made, {
        get(target, name) {
          const method = target[name];
          if (typeof method !== 'function') return method;
          return (...args) => {
            calls.push([name, ...args].join(' '));
            const bad = misbehave[name];
            if (bad === 'throw') throw new Error('the host is gone');
            if (bad === 'false') { own = '391'; return 'false'; }
            if (name === '${v.error}' && own) { const said = own; own = ''; return said; }
            if (name === '${v.set}' && over(args[0], args[1])) { refused.push(args[0]); own = '405'; return 'false'; }
            const answer = method.apply(target, args);
            if ((name === '${v.commit}' || name === '${v.end}') && String(answer) === 'true') localStorage.setItem('kept', JSON.stringify(made.renderCommitCMI(true)));
            return answer;
          };
        },
      });
      globalThis.model = () => JSON.parse(localStorage.getItem('kept'))?.cmi ?? null;
    </script>
    <iframe id="lesson" src="${lesson}" width="1000" height="700"></iframe>`);
}
