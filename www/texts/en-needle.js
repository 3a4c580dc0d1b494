// The English sentences of the whole injection. Cautions, hints, signs and reasons come from the engine.

const one = (x) => (Math.round(Math.abs(x) * 10) / 10).toFixed(1);
const whole = (n, name, names) => `${n} ${n === 1 ? name : names}`;
const upper = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const VIEW = { true_ap: 'true AP', oblique: 'oblique', lateral: 'lateral' };

/** An hour of the clock in words, to the half hour. */
function hour(h) {
  const halves = Math.round(h * 2) % 24;
  const full = Math.floor(halves / 2) || 12;
  return halves % 2 ? `half past ${full}` : `${full} o’clock`;
}

/** A way on the screen: `2.1 mm right, 0.3 mm up`. */
function offset([right, up]) {
  const parts = [];
  if (Math.abs(right) >= 0.05) parts.push(`${one(right)} mm ${right > 0 ? 'right' : 'left'}`);
  if (Math.abs(up) >= 0.05) parts.push(`${one(up)} mm ${up > 0 ? 'up' : 'down'}`);
  return parts.join(', ');
}

export const needle = {
  activity: { name: 'Activity', views: 'Views', injection: 'Injection', lessons: 'Lessons' },
  heading: 'Needle',
  wait: 'The steps of the injection come with the picture: views to keep, a target to mark, a needle to place and steer, contrast.',
  steps: 'Step by step',
  progress: (done, all) => `${done} of ${all}`,
  offset,
  hour,

  help: {
    name: 'Help while you work',
    guided: 'Guided',
    asked: 'On request',
    test: 'Self-test',
    note: {
      guided: 'The next thing to do is always shown.',
      asked: 'A hint is shown when you ask for it.',
      test: 'No hints, no readings, no marks on the picture until you finish.',
    },
    ask: 'Hint',
    heading: 'Hint',
  },
  more: 'Help, keys and file',
  undo: 'Undo',
  redo: 'Redo',
  again: 'Again',
  againLong: 'Begin this injection again',
  caution: 'Caution',

  stage: {
    later: 'to come',
    current: 'now',
    done: 'done',
    now: (score) => `Now ${needle.stage.marks(score)}.`,
    marks: (score) => `${score >= 1 ? 100 : Math.min(99, Math.round(score * 100))} of 100`,
    list: {
      true_ap: {
        title: 'True AP',
        act: (s) => `Turn until the ${s.level === 'S1' ? 'sacral crest' : 'spinous process'} stands midway between the pedicles of ${s.level}, square the upper end plate with tilt, and keep the view.`,
        kept: 'kept',
      },
      oblique: {
        title: 'Oblique, squared',
        act: (s) =>
          s.level === 'S1'
            ? `Turn to the ${s.side} and tilt until the two openings of the first sacral foramen lie over each other, and keep the view.`
            : `Turn to the ${s.side} until the articular process of the level below stands under the pedicle, square again, and keep the view.`,
        kept: 'kept',
      },
      parts: { title: 'Name the parts', act: 'Find on the picture what is asked for.' },
      lateral: { title: 'Lateral', act: (s) => `Turn to the ${s.side} by about 90 degrees until left and right pedicles lie over each other and the end plates are single lines, and keep the view.`, kept: 'kept' },
      mark: {
        title: 'Mark the target',
        act: 'Press the button, then press the place on the oblique picture. By keyboard: arrow keys move the cross 1 mm (with Shift 0.2 mm), Enter marks, Escape leaves.',
        done: 'marked',
      },
      place: { title: 'Place a needle', act: 'It is set upright on the skin over the mark.' },
      align: {
        title: 'Hub over tip',
        act: 'On the oblique picture, move the hub until the needle is a dot: drag the ring in the picture, use the four buttons, or the arrow keys on the picture. It turns about the skin, so do it while the needle is shallow. Then advance about 10 mm.',
        done: (deg) => `${one(deg)}° off the beam`,
      },
      steer: {
        title: 'Advance and steer',
        act: 'Short advances. The tip drifts away from the notch: turn the notch to the side that the tip has strayed to. Half a turn bends the other way; spinning goes straight.',
        done: (mm) => `${mm.toFixed(0)} mm deep`,
      },
      depth: {
        title: 'Prove the depth',
        act: 'Turn to the lateral before it is deep, keep that view too, and go back and forth with the AP and oblique as often as needed and no more.',
        done: 'proven',
      },
      contrast: {
        title: 'Contrast',
        act: 'Aspirate, then inject a little under live imaging. Watch where it runs, and name it.',
        exposures: 'Live means that fluoroscopy is on while it goes in: set “Fluoroscopy stays on” under Exposure, switch it on, then inject.',
        cautions: 'Non-particulate steroid first; stop on paraesthesia or blood. Local policy rules.',
        wrong: 'Wrong place for an injection: draw back, reposition, and prove it again.',
        right: 'This is the spread that is wanted.',
      },
      finish: { title: 'Finish and score', act: 'Nothing more can be done after it, but undo takes it back.' },
    },
    keep: (view) => `Keep this ${VIEW[view]}`,
    keepAgain: (view) => `Keep this ${VIEW[view]} instead`,
    mark: 'Mark on the picture',
    marking: 'Marking: press the place',
    showArea: 'Show the area',
    place: 'Place the needle',
    placeAgain: 'Take another needle',
    remove: 'Take the needle out',
    gauge: 'Gauge',
    length: 'Length',
    approach: 'Way in',
    gaugeName: (g) => `${g} G`,
    lengthName: (mm) => `${mm} mm`,
    approachName: { subpedicular: 'Under the pedicle', infraneural: 'Under the root' },
    hubColour: (g) => ({ 22: 'Black hub.', 25: 'Orange hub. No published bend of a 25 G needle was found: it is taken to bend a quarter more.' })[g],
    placed: (n) => `${n.device.gauge} G, ${n.device.length_mm} mm, ${n.hub_colour} hub`,
    finish: 'Finish',
    none: 'No needle yet.',
  },

  hand: {
    heading: 'Needle in hand',
    hub: 'Hub from above',
    hubKeys: 'Arrow keys turn it 15 degrees, with Shift 1 degree.',
    notch: (h) => `Notch at ${hour(h)}`,
    notchFine: (h) => `notch at ${hour(h)}, tip drifts towards ${hour(h + 6)}`,
    drift: (h) => `Drifts to ${hour(h + 6)}`,
    half: 'Turn 180°',
    depth: (n) => `${one(n.depth_mm)} mm deep`,
    left: (n) => `${one(n.outside_mm)} mm left`,
    advance: 'Advance, mm',
    withdraw: 'Withdraw, mm',
    advanceBy: (mm) => `Advance ${mm} mm`,
    withdrawBy: (mm) => `Withdraw ${mm} mm`,
    spin: 'Spin while advancing',
    percent: (n) => (n === 0 ? 'none' : `${n} %`),
    pad: 'Move the hub',
    fine: '0.1° steps',
    way: { left: 'left', up: 'up', down: 'down', right: 'right' },
    hubBy: (way) => `Hub ${way}`,
    views: 'Turn the C-arm to',
    view: { true_ap: 'AP', lateral: 'Lateral', oblique: 'Oblique' },
    beam: (c) => `${one(c.angle_deg)}° off the beam`,
    hubOff: (c) => (offset(c.hub_offset_mm) ? `hub ${offset(c.hub_offset_mm)} of the tip` : 'hub over the tip'),
    offMark: (mm) => (offset(mm) ? `tip ${offset(mm)} of the mark` : 'tip on the mark'),
    ap: (c) => `AP: tip at ${hour(c.hour)} of the pedicle, ${one(c.medial_mm)} mm ${c.medial_mm > 0 ? 'medial' : 'lateral'} of 6 o’clock`,
    lateral: (l) => `Lateral: ${one(l.behind_wall_mm)} mm ${l.behind_wall_mm > 0 ? 'behind' : 'in front of'} the posterior body line, ${height(l.height)}`,
    asOf: 'As of the last picture',
    met: 'Met on the way',
    nothingMet: 'Nothing yet.',
  },

  met: (m) => `${upper(m.kind)}${m.level ? ` of ${m.level}` : ''} at ${m.depth_mm.toFixed(0)} mm: ${m.sign}.`,

  contrast: {
    aspirate: 'Aspirate',
    answer: { nothing: 'Nothing comes back.', blood: 'Blood comes back: the tip lies in a vessel. Do not inject; reposition.', clear_fluid: 'Clear fluid comes back: the tip lies in the sac. Do not inject; reposition.' },
    inject: (ml) => `Inject ${ml} ml`,
    hold: 'Hold',
    holdMore: ' to inject',
    holdHint: 'About 0.4 ml a second while it is held, also with Space.',
    in: (ml) => `${(Math.round(ml * 100) / 100).toFixed(1)} ml in.`,
    notAspirated: 'It went in without aspirating first.',
    notLive: 'It went in without live imaging: a vessel would not have been seen.',
    name: 'What did the contrast show?',
    pattern: {
      perineural: 'Along the root and into the epidural space',
      intravascular: 'In a vessel',
      intrathecal: 'In the sac',
      intraneural: 'In the root itself',
      intradiscal: 'In the disc',
      peritoneal: 'In front of the column, past the back',
      muscular: 'In muscle',
    },
    naming: 'Name it so',
    right: (name, sign) => `Named rightly: ${name}. It ${/^a |^thin /.test(sign) ? `shows as ${sign}` : sign}.`,
    wrong: (name, truth, sign) => `Not ${name}. It was ${truth}: it ${/^a |^thin |^feathery /.test(sign) ? `shows as ${sign}` : sign}.`,
    pick: 'Choose a pattern first.',
  },

  score: {
    heading: 'Marks by step',
    columns: ['Step', 'Weight', 'Marks'],
    total: 'Whole',
    none: 'none yet',
    notCounted: 'not counted',
    said: (total) => `Finished: ${needle.stage.marks(total)} for the whole injection.`,
    table: 'Marks by step, with reasons',
  },

  file: {
    save: 'Save attempt.json',
    open: 'Open an attempt',
    opened: 'The attempt is open as it was left.',
    notResumed: (why) => `The attempt that was kept could not be taken up (${why}); the lesson begins anew.`,
    bad: (why) => `That file could not be opened: ${why}. The attempt on the page is kept.`,
    notJson: 'it is not JSON',
    tooLarge: 'it is larger than 2 MB',
    noAttempt: 'it holds no attempt with patient, case and log',
    strange: (key) => `it has an unknown entry “${key}”; allowed are patient, seed, changed, case and log`,
    noPatient: (name) => `there is no patient “${name}” here`,
    back: 'Bring back the last attempt',
  },

  picture: {
    label: 'Picture. Arrow keys move the hub, or the cross while marking.',
    key: { mark: 'mark', area: 'area to aim at', hub: 'hub', tip: 'tip' },
    cross: (mm) => `Cross ${offset(mm) || 'in the middle'}${offset(mm) ? ' of the middle' : ''}.`,
    words: (n, open) => `Needle ${n.device.gauge} G, ${n.depth_mm.toFixed(0)} mm deep${open ? `, ${needle.hand.hubOff(n.coaxial)}` : ''}.`,
    markWords: 'A mark is set.',
  },

  did: {
    keep: (view) => `${upper(VIEW[view])} kept.`,
    recall: (view) => `C-arm at the kept ${VIEW[view]}.`,
    orient: (view) => `C-arm at a plain ${VIEW[view]}: set it up and keep it.`,
    mark: 'Target marked.',
    choose: (name) => `Way in: ${name.toLowerCase()}.`,
    place: (n) => `Needle on the skin: ${needle.stage.placed(n)}.`,
    remove: 'Needle out.',
    undo: 'Taken back.',
    redo: 'Done again.',
    no_undo: 'There is nothing to take back.',
    no_redo: 'There is nothing to do again.',
    again: 'A new attempt at the same injection.',
    named: 'Pattern named.',
  },
  refuse: {
    bestView: 'This is the page’s best view, not yours: return to your view, set it up, and keep that.',
    noPicture: 'There is no picture of this position: make an exposure first, then mark on it.',
    noOblique: 'No oblique view has been kept yet: set it up and keep it first.',
  },
};

function height(share) {
  if (share < 0) return 'above the foramen';
  if (share > 1) return 'below the foramen';
  return share < 1 / 3 ? 'in the upper third of the foramen' : share < 2 / 3 ? 'in the middle third of the foramen' : 'in the lower third of the foramen';
}
