// What is wrong with an element at present, one problem for each thing that it is about: shown, told, and gone once it is put right.

/**
 * What is wrong: what it is about, the attribute and its value where it is one, and a sentence.
 * @typedef {{ about: string, attribute: string | null, value: string | null, sentence: string }} Problem
 */

/**
 * Keeps them. `act`: `show(sentences)` for the notice, `tell(problem)` for the event.
 * @param {{ show: (sentences: string[]) => void, tell: (problem: Problem) => void }} act
 */
export function problemList(act) {
  /** @type {Map<string, Problem>} */
  const present = new Map();
  /** Why there is no engine stands on the film, not in the notice. */
  const show = () => act.show([...present].filter(([name]) => name !== 'engine' && name !== 'integrity').map(([, problem]) => problem.sentence));

  return {
    show,
    list: () => [...present.values()],
    /** @param {string} name */
    get: (name) => present.get(name),
    /**
     * Keeps one without a word.
     * @param {string} name
     * @param {Problem} problem
     */
    keep: (name, problem) => void present.set(name, problem),
    /**
     * Shows and tells one.
     * @param {string} name
     * @param {Problem} problem
     */
    add(name, problem) {
      present.set(name, problem);
      show();
      // Not at once: while the page is being read, its listeners may not stand yet.
      setTimeout(() => act.tell(problem));
    },
    /**
     * It is no more.
     * @param {string} name
     */
    solved(name) {
      if (present.delete(name)) show();
    },
  };
}
