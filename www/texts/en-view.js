// The English sentences that the page and the course element share: the picture, the angles, the checks, loading.

export const plural = (n, one, many) => `${n} ${Math.abs(n) === 1 ? one : many}`;
export const short = (deg) => `${Math.abs(Math.round(deg * 10) / 10)}°`;
export const spoken = (deg) => plural(Math.abs(Math.round(deg * 10) / 10), 'degree', 'degrees');
export const isZero = (deg) => Math.abs(deg) < 0.05;

/** A patient's name as it is read. */
const patientName = (name) => name.replaceAll('-', ' ').replace(/^./, (c) => c.toUpperCase());

export const view = {
  caution:
    'Teaching model, not for clinical use: never plan or guide a procedure with it. Follow local policy, supervised training and licensed practice.',

  case: { patientName },

  /** What a rule (rules.js) allows. */
  allowed: (rule) =>
    rule.kind === 'number' ? `${rule.whole ? 'a whole number' : 'a number'} from ${rule.low} to ${rule.high}` : rule.values.join(', '),

  picture: {
    caption: (s) => `${s.level} ${s.side}, patient “${patientName(s.patient)}”. Receptor ${view.oblique.words(s.oblique)}, ${view.tilt.words(s.tilt)}.`,
    alternative: (s) => `X-ray view of the lumbar spine, head up. Receptor ${view.oblique.spoken(s.oblique)} and ${view.tilt.spoken(s.tilt)}.`,
    polarity: 'Bone dark',
    outlines: 'Outlines',
    labels: 'Names',
    keyPosterior: (s) => (s.level === 'S1' ? 'sacrum' : `${s.level} posterior elements`),
    keyBelow: (s, below) => `${below} superior articular process`,
    keyTarget: (s) => `${s.level} body`,
    dogHeading: (s) => `The dog of ${s.level}, part by part`,
    dogName: (d, s) => (d.level === s.level ? d.dog_name : `next dog’s ${d.dog_name}`),
    dogPart: (dog, part, level) => `${dog}: ${part} of ${level}`,
    part: (name) => name.replaceAll('_', ' '),
    end: { L: 'L', R: 'R', A: 'A', P: 'P', H: 'H' },
  },

  loading: {
    engine: 'Loading the engine',
    percent: (n) => `Loading the engine: ${n} %`,
    patient: (name) => `Shaping the patient “${patientName(name)}”`,
    failedHeading: 'The picture is not available',
    retry: 'Try again',
    status: (code) => `the server answered ${code}`,
    noServer: 'no answer from the server',
    noWasm: 'the file is not a WebAssembly module',
  },

  turn: {
    number: (name) => `${name}, degrees`,
    outOfRange: (name, low, high) => `${name} goes from ${low} to ${high} degrees here; the nearest allowed angle was taken.`,
    notNumber: (name) => `${name} needs a number of degrees; the last angle was kept.`,
  },
  oblique: {
    name: 'Oblique',
    hint: 'left +, right −',
    high: 'left',
    low: 'right',
    words: (deg) => (isZero(deg) ? 'straight above' : `${short(deg)} to the patient’s ${deg > 0 ? 'left' : 'right'}`),
    spoken: (deg) => (isZero(deg) ? 'straight above, 0 degrees' : `${spoken(deg)} to the patient’s ${deg > 0 ? 'left' : 'right'}`),
  },
  tilt: {
    name: 'Tilt',
    hint: 'cephalad +, caudad −',
    high: 'cephalad',
    low: 'caudad',
    words: (deg) => (isZero(deg) ? 'no tilt' : `${short(deg)} ${deg > 0 ? 'cephalad' : 'caudad'}`),
    spoken: (deg) => (isZero(deg) ? 'no tilt, 0 degrees' : `${spoken(deg)} ${deg > 0 ? 'cephalad' : 'caudad'}`),
  },

  checks: {
    views: { true_ap: 'True AP', oblique: 'Oblique', lateral: 'Lateral' },
    score: (score) => `${outOf100(score)} of 100`,
    scoreLabel: 'Score of this view',
    value: (c) => (c.value === null ? 'not defined here' : `${number(Math.abs(c.value), c.unit)}${unit(c.unit).split(' of ')[0]}`),
    tolerance: (c) => `full marks within ${number(c.tolerance.full, c.unit)}${unit(c.unit)}`,
    word: (score) => (score >= 1 ? 'full marks' : score >= 0.75 ? 'close' : score >= 0.35 ? 'part way' : score > 0 ? 'far off' : 'no marks yet'),
    best: 'Show the best view',
    back: 'Return to my view',
    notReached: 'This machine’s range stops short of the best view; this is as near as it goes.',
    said: (view, score, advice) => `${view}: ${outOf100(score)} of 100. ${advice}`,
    ask: 'Check my view',
    hidden: 'Set the view by eye first. Values and advice stay hidden until you ask.',
    notHere: 'This view is not scored at this level.',
  },
};

function outOf100(score) {
  // A score short of full marks must not read as 100.
  return score >= 1 ? 100 : Math.min(99, Math.round(score * 100));
}

function number(value, unit) {
  return value.toFixed(unit.startsWith('%') || Number.isInteger(value) ? 0 : 1);
}

function unit(name) {
  return name === 'degrees' ? '°' : ` ${name}`;
}
