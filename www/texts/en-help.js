// The English sentences of tour, list of keys and description: loaded with them.

import { plural } from './en-view.js';

const mm = (n) => `${Math.abs(n)} mm`;
const degrees = (n) => plural(n, 'degree', 'degrees');
/** `[right, up]` in mm, as a place off another. */
const off = ([right, up]) => [right !== 0 && `${mm(right)} ${right > 0 ? 'right' : 'left'}`, up !== 0 && `${mm(up)} ${up > 0 ? 'up' : 'down'}`].filter(Boolean).join(' and ');
const KEY = { ' ': 'Space', arrowleft: '←', arrowright: '→', arrowup: '↑', arrowdown: '↓', pageup: 'Page up', pagedown: 'Page down', home: 'Home', end: 'End', enter: 'Enter', escape: 'Escape' };

export const help = {
  close: 'Close',

  tour: {
    name: 'Tour',
    count: (n, all) => `${n} of ${all}`,
    back: 'Back',
    next: 'Next',
    done: 'Done',
    noticed: { turned: 'You have turned it.', full: 'Full marks: a true AP.' },
    stops: {
      picture: ['The picture', 'A patient who lies prone, as the C-arm sees it; amber is the level you work at. Drag it, or use its arrow keys: the C-arm turns.'],
      oblique: ['Oblique', 'Turns the receptor to the patient’s left or right. Turn until the spinous process stands midway between the two round pedicles.'],
      tilt: ['Tilt', 'Leans it towards the head or the feet. Tilt until the upper end plate, a flat ellipse, closes to one line.'],
      checks: ['What it is worth', 'The marks of this view. Under them each measure says how far off it is, what full marks need, and which way to move.'],
      gantry: ['The C-arm', 'The same turn from outside: watch the receptor when you move a slider. The beam runs from the source below up to it.'],
      activities: ['And then', 'Injection: a needle from the skin to the contrast. Lessons: a course with marks and a receipt to hand in. This tour stays in the menu.'],
    },
  },

  keys: {
    heading: 'Keys',
    use: 'Use single keys',
    useHint: 'Off, only what has the focus answers to keys.',
    of: (key) => KEY[key.toLowerCase()] ?? (key.length === 1 ? key.toUpperCase() : key),
    command: (key) => `Ctrl ${key.toUpperCase()}`,
    or: ' or ',
    places: {
      page: 'Anywhere',
      sliders: 'On a slider',
      picture: 'On the picture',
      views: 'Views',
      needle: 'Injection: needle and C-arm',
      hub: 'On the hub',
      mark: 'On the picture, while marking',
      naming: 'On the picture, naming parts',
      beam: 'On Fluoroscopy',
      menus: 'Menus and dialogs',
    },
    page: { keys: 'this list of keys', read: 'the picture is read out' },
    sliders: { step: (deg) => `${degrees(deg)}, the thumb goes the way of the arrow`, page: (deg) => degrees(deg), ends: 'to the end of the range' },
    picture: { turn: (step, coarse) => `turn the C-arm ${degrees(step)}, with Shift ${degrees(coarse)}`, hub: (step, fine) => `with a needle: move the hub ${step}°, with Shift ${fine}°` },
    views: { pick: 'check true AP, oblique, lateral', check: 'check my view (self-test)' },
    needle: {
      advance: 'advance 1 mm, with Shift 5 mm',
      advanceHalf: 'advance 0.5 mm',
      withdraw: 'withdraw 1 mm, with Shift 5 mm',
      withdrawHalf: 'withdraw 0.5 mm',
      roll: 'turn the hub 15° counter-clockwise, clockwise; with Shift 1°',
      half: 'turn the hub 180°',
      arm: 'C-arm to AP, lateral, oblique as kept',
      mark: 'mark on the picture',
      hint: 'hint',
      undo: 'undo; with Shift redo',
      redo: 'redo',
    },
    hub: { turn: (step, fine) => `turn it ${step}°, with Shift ${fine}°`, wheel: 'The wheel over the hub turns it 5° a notch; with Shift it advances and withdraws 0.5 mm.' },
    mark: { cross: (step, fine) => `move the cross ${step} mm, with Shift ${fine} mm`, set: 'mark there', leave: 'leave' },
    naming: { step: 'from outline to outline', answer: 'answer with the outline that is lit' },
    beam: { hold: 'beam on while it is held', stop: 'beam off, from anywhere' },
    menus: { escape: 'close what is open' },
  },

  describe: {
    heading: 'Description',
    screen: 'On the screen',
    picture: 'In the picture',
    needle: 'Needle',
    says: 'Say what changes',
    saysHint: 'Through a screen reader, when the picture stands still.',
    activity: {
      views: 'Views: the picture, under it the sliders Oblique and Tilt, then steps, checks and a drawing of the C-arm.',
      injection: 'Injection: the picture, under it the sliders Oblique and Tilt, then the stages, and the needle in hand once there is one.',
      lessons: 'Lessons: the list of the course. The picture and the sliders Oblique and Tilt are there too.',
    },
    step: (title) => `Now: ${title}.`,
    keys: 'Question mark lists the keys.',
    none: 'There is no picture yet.',
    nonePart: 'What stands in the picture is told as soon as there is one.',
    judged: 'Told as the eye sees it, in whole millimetres and twentieths: what the view is worth is for you to judge here.',
    naming: 'Where the parts stand is not told here: finding them is what the lesson asks.',

    spinous: (f) => (f.midway ? `${crest(f)} stands midway between the pedicles.` : `${crest(f)} stands ${f.percent} percent of the pedicles’ spacing to the patient’s ${f.way} of midway between them.`),
    plate: (which, f) => {
      const open = f.lines === 1 ? 'is a single line' : 'opens as two lines';
      const apart = [f.deg !== null && degrees(f.deg), f.gap_mm !== null && mm(f.gap_mm)].filter(Boolean).join(', ');
      return `The ${f.level} ${which} end plate ${open}${f.lines === 1 || apart === '' ? '' : `, ${apart} apart`}.`;
    },
    upper: 'upper',
    lower: 'lower',
    process: (f) => {
      const where = f.third ? `under the ${f.third} third of the ${f.level} pedicle` : `${f.widths} pedicle widths ${f.way} of the middle of the ${f.level} pedicle`;
      const height = f.below_mm === null ? '' : f.below_mm < 0 ? `, its tip over the pedicle by ${mm(f.below_mm)}` : `, its tip ${mm(f.below_mm)} below it`;
      return `The superior articular process of ${f.below} stands ${where}${height}.`;
    },
    joint: (f) => `The ${f.level}–${f.below} facet joint lies ${off(f.at_mm) || '0 mm'} from the pedicle’s centre.`,
    pedicle: (f) => `The ${f.side} ${f.level} pedicle lies ${off(f.at_mm) || '0 mm'} from the picture’s middle.`,
    foramen: (f) => (f.apart_mm === 0 ? 'The two openings of the first sacral foramen lie over each other.' : `The two openings of the first sacral foramen lie ${mm(f.apart_mm)} apart.`),
    lateral: (f) => (f.apart_mm === 0 ? `Left and right ${f.level} pedicles lie over each other.` : `Left and right ${f.level} pedicles lie ${mm(f.apart_mm)} apart, the edges of the posterior wall ${mm(f.wall_mm)}.`),
    crest: (f) => `The ${f.side} iliac crest ${f.at.length === 0 ? 'lies outside of the picture' : `reaches the height of ${f.at.length === 1 ? `the ${f.at[0]} body` : `the disc between ${f.at.join(' and ')}`}`}.`,
    hub: (f) => (off(f) === '' ? 'The hub stands over the tip.' : `The hub stands ${off(f)} from the tip.`),
    tip: (f) => `The tip stands ${off(f) || '0 mm'} from the pedicle’s centre.`,
    mark: (f) => `The mark stands ${off(f) || '0 mm'} from the pedicle’s centre.`,
    placed: (n) => `Needle ${n.gauge} G, ${n.depth_mm} mm deep.`,
    bone: 'The tip is on bone.',
    last: (met) => `Met last: ${met}`,
  },
};

const crest = (f) => (f.level === 'S1' ? 'The sacral crest' : `The spinous process of ${f.level}`);
