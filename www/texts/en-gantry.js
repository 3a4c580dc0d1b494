// What the drawings of C-arm and patient say when they are linked with the picture.

import { view } from './en-view.js';

const partName = ({ part, side, level }) => `${side ? `${side} ` : ''}${view.picture.part(part)} of ${level}`;
const capital = (text) => text.replace(/^./, (c) => c.toUpperCase());

export const gantryLink = {
  show: 'What the drawings show',
  whole: 'C-arm',
  near: 'Bones',
  hint: 'Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt. Touch a bone’s line, here or in the picture, to light it in both.',
  hintTurn: 'Drag a drawing to turn the C-arm; keys: the sliders Oblique and Tilt.',
  find: 'Part to light',
  none: 'none',
  name: (label) => capital(partName(label)),
  lit: (label) => `${capital(partName(label))} is lit in the picture and in the drawings.`,
  notInPicture: (label) => `${capital(partName(label))} is lit in the drawings; no line of it is in the picture.`,
  noOutlines: (label) => `${capital(partName(label))} is lit in the drawings; switch the outlines on to see it in the picture.`,
  unlit: 'No part is lit.',
  ray: 'A line runs from the source through the target to the dot where it lands on the receptor.',
  needle: 'The needle is drawn as it lies.',
  near_feet: (s) => `Bones of ${s.level}, from the feet`,
  near_side: (s) => `Bones of ${s.level}, from the right`,
  describeNear: (s) => `Outlines of ${s.level} and its neighbours, ${s.from}, 13 cm across.`,
  fromFeet: 'seen from the feet, patient’s left on the left, back up',
  fromSide: 'seen from the patient’s right, head on the right, back up',
  centralRay: (s) => `The central ray comes from the source below; the receptor is ${view.oblique.spoken(s.oblique)} and ${view.tilt.spoken(s.tilt)}.`,
  noPicture: 'No ray is drawn: there is no picture from here yet.',
  litHere: (label) => `The ${partName(label)} is lit.`,
};
