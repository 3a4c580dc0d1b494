// What a course page can do with the element's events and methods.

const exercise = document.getElementById('exercise');
const result = document.getElementById('result');
let turned = 0;

exercise.addEventListener('downbeam-ready', () => (result.textContent = 'Ready. Turn the C-arm with the sliders, or drag the picture.'));

exercise.addEventListener('downbeam-change', ({ detail }) => {
  if (!detail.settled) return;
  turned += 1;
  const percent = detail.score >= 1 ? 100 : Math.min(99, Math.round(100 * detail.score));
  result.textContent = `Oblique ${detail.oblique}°, tilt ${detail.tilt}°: ${percent} of 100 after ${turned} ${turned === 1 ? 'move' : 'moves'}.`;
});

exercise.addEventListener('downbeam-reached', ({ detail }) => {
  result.textContent = `Found after ${turned} ${turned === 1 ? 'move' : 'moves'}: oblique ${detail.oblique}°, tilt ${detail.tilt}°.`;
});

// Events bubble, so one listener hears every element of the page.
document.addEventListener('downbeam-error', ({ detail }) => console.warn(detail.sentence));

document.getElementById('again').addEventListener('click', () => {
  turned = 0;
  exercise.restart();
});

document.getElementById('save').addEventListener('click', async () => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(await exercise.png());
  link.download = 'view.png';
  link.click();
  URL.revokeObjectURL(link.href);
});
