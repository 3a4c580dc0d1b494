// What the drawings of C-arm and patient say when they are linked with the picture. Sentences in texts/…/gantry.ftl.

import { pageSayer } from './language.js';
import { gantry as english } from '../pkg/texts/en/gantry.js';
import { view } from './view-page.js';

const say = pageSayer('gantry', english);

const capital = (text) => text.replace(/^./, (c) => c.toUpperCase());
/** A part of a bone as values. */
function of({ part, side, level }) {
  const name = view.picture.part(part);
  return { part: name, Part: capital(name), side: side || 'none', level };
}
const name = (label) => say('name', of(label));

export const gantryLink = say.tree({
  name,
  lit: (label) => say('lit', { name: name(label) }),
  notInPicture: (label) => say('notInPicture', { name: name(label) }),
  noOutlines: (label) => say('noOutlines', { name: name(label) }),
  litHere: (label) => say('litHere', of(label)),
  near_feet: (s) => say('near_feet', { level: s.level }),
  near_side: (s) => say('near_side', { level: s.level }),
  describeNear: (s) => say('describeNear', { level: s.level, from: s.from }),
  centralRay: (s) => say('centralRay', { oblique: view.oblique.spoken(s.oblique_deg), tilt: view.tilt.spoken(s.tilt_deg) }),
});
