// Single keys for the needle. They can be switched off, and are silent where text is typed or a list has the focus.

const TABLE = {
  f: (act, shift) => act.push(shift ? 5 : 1),
  g: (act) => act.push(0.5),
  b: (act, shift) => act.push(shift ? -5 : -1),
  v: (act) => act.push(-0.5),
  q: (act, shift) => act.roll(shift ? -1 : -15),
  e: (act, shift) => act.roll(shift ? 1 : 15),
  t: (act) => act.roll(180),
  p: (act) => act.view('true_ap'),
  l: (act) => act.view('lateral'),
  o: (act) => act.view('oblique'),
  m: (act) => act.mark(),
  h: (act) => act.hint(),
};

/** Listens on the whole page. `on()` says whether there is an injection, `single()` whether single keys are wanted. */
export function needleKeys(on, single, act) {
  document.addEventListener('keydown', (event) => {
    if (!on() || event.altKey || event.defaultPrevented) return;
    const typing = event.target.closest?.('select, textarea, input:not([type=radio], [type=checkbox], [type=range])');
    if (typing) return;
    const key = event.key.toLowerCase();
    if (event.ctrlKey || event.metaKey) {
      if (key !== 'z' && key !== 'y') return;
      event.preventDefault();
      if (key === 'y' || event.shiftKey) act.redo();
      else act.undo();
      return;
    }
    const does = single() && TABLE[key];
    if (!does) return;
    event.preventDefault();
    does(act, event.shiftKey);
  });
}
