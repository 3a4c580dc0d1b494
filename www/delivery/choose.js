// Which delivery applies: where a lesson's progress and result go. So far there is the page itself.

/** Resolves to the delivery: `{ name, lesson, learner, keepsProgress, opened(), resume(), keep(), finish(), leave() }`. */
export async function connect(act) {
  const { connect: local } = await import('./local.js');
  return local(act);
}
