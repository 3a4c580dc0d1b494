// The smallest SCORM 1.2 platform that a lesson can be tried in: one learner, one lesson, values kept in this browser.
// It is no test of a platform; it shows what a package says, and that it comes back where it was.

const KEY = 'example.scorm12';
const asked = new URLSearchParams(location.search);
const frame = document.getElementById('lesson');
const START = { 'cmi.core.student_id': 'example-learner', 'cmi.core.student_name': 'Learner, Example', 'cmi.core.lesson_status': 'not attempted', 'cmi.core.lesson_mode': 'normal', 'cmi.core.credit': 'credit' };

let values = { ...START, ...JSON.parse(localStorage.getItem(KEY)) };
let open = false;
let error = '0';

const done = (works, code = '0') => {
  error = works ? '0' : code;
  return String(works);
};

globalThis.API = {
  LMSInitialize: () => done(!open && (open = true), '101'),
  LMSGetValue(key) {
    if (!done(open, '301')) return '';
    // The count of a list: one more than its highest number.
    if (key.endsWith('._count')) {
      const list = key.replace('_count', '');
      return String(1 + Math.max(-1, ...Object.keys(values).filter((k) => k.startsWith(list)).map((k) => Number(k.slice(list.length).split('.')[0]))));
    }
    return values[key] ?? '';
  },
  LMSSetValue(key, value) {
    if (!open) return done(false, '301');
    if (key === 'cmi.suspend_data' && value.length > 4096) return done(false, '405');
    values[key] = value;
    return done(true);
  },
  LMSCommit() {
    if (open) localStorage.setItem(KEY, JSON.stringify(values));
    show();
    return done(open, '301');
  },
  LMSFinish() {
    const was = open;
    if (was) API.LMSCommit();
    open = false;
    return done(was, '301');
  },
  LMSGetLastError: () => error,
  LMSGetErrorString: (code) => (code === '0' ? 'No error' : `Error ${code}`),
  LMSGetDiagnostic: () => '',
};

function show() {
  const row = ([key, value]) => {
    const line = document.createElement('tr');
    for (const text of [key, value]) line.append(Object.assign(document.createElement('td'), { textContent: text }));
    return line;
  };
  document.getElementById('values').replaceChildren(...Object.entries(values).map(row));
}

document.getElementById('leave').addEventListener('click', () => (frame.src = 'about:blank'));
document.getElementById('forget').addEventListener('click', () => {
  localStorage.removeItem(KEY);
  values = { ...START };
  show();
});
show();
frame.src = new URL(`${asked.get('package') ?? 'package'}/player.html`, location.href).href;
