// Every English sentence of the page. The sentences of the checks come from the engine with its report.

import { delivery } from './en-delivery.js';
import { needle } from './en-needle.js';
import { isZero, plural, short, spoken, view } from './en-view.js';

export const texts = {
  language: 'en',
  title: 'Downbeam: C-arm views of the lumbar spine',
  subtitle: 'C-arm views of the lumbar spine',
  skip: 'Skip to the picture',
  caution: view.caution,
  allowed: view.allowed,
  noscript: 'This page computes X-ray views in your browser and needs JavaScript and WebAssembly.',

  case: {
    ...view.case,
    heading: 'Case',
    level: 'Level',
    side: 'Side',
    left: 'Left',
    right: 'Right',
    patient: 'Patient',
    theme: 'Theme',
    dark: 'Dark room',
    light: 'Light',
    device: 'As the device',
  },

  menu: {
    name: 'Menu',
    check: 'Teachers: check receipts',
    author: 'Teachers: set a lesson',
    model: 'About the model',
    tour: 'Tour of the page',
    keys: 'Keys',
    read: 'Read the picture',
  },

  welcome: {
    what: 'A C-arm over a lumbar spine.',
    first: 'Make a true AP: turn and tilt as “How close” advises.',
    tour: 'Tour',
    dismiss: 'Close this hint',
  },

  picture: {
    ...view.picture,
    heading: 'Picture',
    keys: 'Picture. Arrow keys turn the C-arm.',
    description: 'Description',
    label: (s) => `Fluoroscopic view, ${s.level} ${s.side}`,
    hint: 'Drag the picture to turn: the receptor goes the way you drag. The sliders do the same.',
  },

  loading: {
    ...view.loading,
    failedFetch: (why) => `The engine did not load (${why}). Check the connection and try again; the steps and the C-arm drawing still work.`,
    failedStart: (why) => `The engine could not be started (${why}). This needs a browser with WebAssembly; the steps and the C-arm drawing still work.`,
    failedRun: (why) => `The engine stopped (${why}). Load it again to go on; your position is kept.`,
  },

  turn: {
    ...view.turn,
    heading: 'Turn the C-arm',
    more: 'Table and image',
    reset: 'Centre the table',
    straighten: 'Centre and straighten',
  },
  oblique: view.oblique,
  tilt: view.tilt,
  rotation: {
    name: 'Image rotation',
    hint: 'clockwise +',
    high: 'clockwise',
    low: 'counter',
    words: (deg) => (isZero(deg) ? 'upright' : `${short(deg)} ${deg > 0 ? 'clockwise' : 'counter-clockwise'}`),
    spoken: (deg) => (isZero(deg) ? 'upright, 0 degrees' : `${spoken(deg)} ${deg > 0 ? 'clockwise' : 'counter-clockwise'}`),
  },
  window: {
    contrast: 'Contrast',
    brightness: 'Brightness',
    percent: (n) => `${n < 0 ? '−' : ''}${Math.abs(n)} %`,
  },
  table: {
    name: 'Move the table',
    left: 'Left',
    right: 'Right',
    head: 'To the head',
    feet: 'To the feet',
    by: 'Move the table 5 mm:',
    words: (x, z) =>
      x === 0 && z === 0
        ? 'target at the isocentre'
        : [x && `${Math.abs(x)} mm ${x > 0 ? 'left' : 'right'}`, z && `${Math.abs(z)} mm ${z > 0 ? 'to the head' : 'to the feet'}`].filter(Boolean).join(', '),
  },

  exposure: {
    heading: 'Exposure',
    source: 'Where the picture comes from',
    live: 'Free live picture',
    exposures: 'Picture only by exposure',
    liveNote: 'For practice: the picture follows the C-arm and costs nothing.',
    exposuresNote: 'Turning the C-arm shows nothing new. The last picture stays until the next exposure, and each exposure costs dose. A new patient or start begins a new record.',
    beam: 'Beam',
    spot: 'Spot',
    fluoroscopy: 'Fluoroscopy',
    hold: 'Hold the button, or hold Space while it has the focus. Escape stops the beam. Under Exposure it can be set to stay on.',
    latch: 'Fluoroscopy stays on until pressed again',
    settings: 'Beam settings',
    pulseRate: 'Pulses of fluoroscopy',
    rate: (n) => `${n} a second`,
    magnification: 'Magnification',
    magnified: (m) => (m === 1 ? 'whole field' : `${m} times`),
    lowDose: 'Low dose',
    width: 'Field width',
    height: 'Field height',
    open: (percent) => `${percent} %`,
    none: 'No picture yet. Press Spot, or hold Fluoroscopy.',
    noPicture: 'No picture yet.',
    kind: { spot: 'spot', fluoroscopy: 'fluoroscopy' },
    last: (p, { on, moved, otherLevel }) =>
      `${on ? 'Beam on' : `Last picture (${texts.exposure.kind[p.kind]})`}: ${otherLevel ? `${p.level}, ` : ''}${texts.oblique.words(p.oblique)}, ${texts.tilt.words(p.tilt)}.${moved ? ' C-arm moved since.' : ''}`,
    alternative: (p, moved) =>
      `Last X-ray picture, ${texts.exposure.kind[p.kind]}, of ${p.level}, taken with the receptor ${texts.oblique.spoken(p.oblique)} and ${texts.tilt.spoken(p.tilt)}.${moved ? ' The C-arm has moved since.' : ''}`,
    said: (p, dose) =>
      `${p.kind === 'spot' ? 'Spot picture taken' : 'Beam off, last picture held'}: receptor ${texts.oblique.spoken(p.oblique)} and ${texts.tilt.spoken(p.tilt)}. So far ${plural(dose.exposures, 'exposure', 'exposures')}, kerma–area product ${amount(dose.kap_mgy_cm2)} mGy·cm².`,
    spent: 'Dose so far',
    figureName: { exposures: 'Exposures', beam: 'Beam time', kerma: 'Reference air kerma', product: 'Kerma–area product', technique: 'Last exposure' },
    figure: {
      exposures: (d) => String(d.exposures),
      beam: (d) => `${d.beam_s.toFixed(1)} s`,
      kerma: (d) => `${amount(d.kerma_mgy)} mGy`,
      product: (d) => `${amount(d.kap_mgy_cm2)} mGy·cm²`,
      technique: (d) => `${Math.round(d.last.kvp)} kVp, ${amount(d.last.mas)} mAs`,
    },
    nothing: { exposures: '0', beam: '0 s', kerma: '0 mGy', product: '0 mGy·cm²', technique: 'none' },
    reset: 'Reset',
    resetLong: 'Reset the dose',
    save: 'Save dose.json',
    saveLong: 'Save dose.json, the dose in DICOM terms and units',
    wasReset: 'The dose record begins again at nothing.',
  },

  checks: {
    ...view.checks,
    heading: 'How close',
    view: 'View to check',
    selfTest: 'Self-test',
    selfTestHint: 'Hides values and advice until you ask.',
    count: (n) => (n === 0 ? 'No checks used yet' : plural(n, 'check used', 'checks used')),
    none: 'The checks come with the picture.',
    bestLocked: 'The best view can be shown after a check.',
    standsAtBest: (view) => `The C-arm stands at the best ${view} view this machine can reach here; an exposure shows it. It does not count for the steps.`,
    showingBest: (view) => `This is the best ${view} view this machine can reach here. It does not count for the steps.`,
    allGood: 'Nothing left to correct.',
  },

  steps: {
    heading: 'Steps',
    progress: (done, all) => `${done} of ${all}`,
    done: 'done',
    current: 'now',
    later: 'to come',
    doIt: 'Do',
    lookFor: 'Look for',
    ticked: (title) => `Step done: ${title}.`,
    allDone: 'All four steps done. Take another start, side or level, and try again in self-test.',
    testHint: 'In self-test a step is ticked when you check your view.',
    start: 'New start',
    startLong: 'New start at a random position',
    again: 'Same start',
    againLong: 'Same start position once more',
    list: {
      true_ap: {
        title: () => 'True AP',
        act: (s) => `Turn oblique, left or right, until the beam passes straight through ${s.level} from back to front.`,
        look: (s) =>
          s.level === 'S1'
            ? 'The crest in the midline of the sacrum stands midway between the two S1 pedicles, and both sides look alike.'
            : `The spinous process of ${s.level} stands midway between its two pedicles. Both pedicles look alike and sit equally far from the edge of the body.`,
      },
      square: {
        title: () => 'Square the end plate',
        act: () => 'Leave oblique alone. Tilt cephalad or caudad.',
        look: (s) => `The front and the back rim of the ${s.level} upper end plate come together: the flat ellipse closes to one crisp line and the disc space opens.`,
      },
      oblique: {
        title: (s) => `Oblique to the ${s.side}`,
        act: (s) => `Keep the tilt. Turn the receptor to the patient’s ${s.side}.`,
        look: (s, below) =>
          s.level === 'S1'
            ? 'The back and the front opening of the first sacral foramen slide over each other until they show as one bright gap below the S1 pedicle.'
            : `The dog appears, with the ${s.level} pedicle for its eye. Go on until the ear of the next dog down, the superior articular process of ${below}, points up at the middle of that eye from below.`,
      },
      square_again: {
        title: () => 'Square again',
        act: () => 'Going oblique has tipped the plate a little. Tilt until it closes again, and put oblique right if that moved things.',
        look: (s, below) =>
          s.level === 'S1'
            ? 'Both at once: the S1 end plate is one line, and the foramen openings still lie over each other.'
            : `Both at once: the ${s.level} upper end plate is one line, and the ${below} process still stands under the pedicle.`,
      },
    },
  },

  gantry: {
    heading: 'C-arm and patient',
    feet: (s) => `From the feet: ${texts.oblique.words(s.oblique)}`,
    side: (s) => `From the patient’s right: ${texts.tilt.words(s.tilt)}`,
    describeFeet: (s) =>
      `C-arm seen from the feet, patient prone, patient’s left on the left. The receptor above is ${texts.oblique.spoken(s.oblique)}; the source is opposite, under the table.`,
    describeSide: (s) =>
      `C-arm seen from the patient’s right, head on the right. The receptor above is tilted: ${texts.tilt.spoken(s.tilt)}; the source is opposite, under the table.`,
    receptor: 'receptor',
    source: 'source',
    left: 'left',
    right: 'right',
    head: 'head',
    feetEnd: 'feet',
  },

  delivery,
  needle,

  notice: {
    dismiss: 'Close this message',
    badFragment: (key, value, allowed) => `The address asks for ${key} “${value}”; allowed is ${allowed}. The default was used instead.`,
    unknownFragment: (key) => `The address has an unknown entry “${key}”; it was ignored.`,
    noPart: (name, why) => `“${name}” could not be loaded (${why}). Everything else goes on working; try again.`,
    offlineKept: 'No network. Everything here goes on working: the page is kept on this device.',
    offline: 'No network. What is open goes on working; what has not been opened yet needs the network.',
    online: 'The network is back.',
    noStorage: 'This browser does not keep settings for this page; they last until you close it.',
  },

  bench: {
    title: 'Downbeam: how long a frame takes',
    done: (n) => `${n} frames over an orbit, canvas 512 and 1024 pixels`,
    running: (n) => `Measuring ${n} frames over an orbit`,
    columns: ['', 'median, ms', '95th percentile, ms'],
    rows: { radiograph: 'radiograph', outlines: 'outlines, drawn', report: 'report', frame: 'whole frame', patient: 'new patient' },
    failed: (why) => `The engine did not load: ${why}`,
  },
};

/** Three figures or so of a dose. */
function amount(value) {
  return value.toFixed(value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3);
}
