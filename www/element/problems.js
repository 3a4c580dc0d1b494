// What is wrong with an element at present, one problem for each thing that it is about: shown, told, and gone once it is put right.

/** Keeps them. `act`: `show(sentences)` for the notice, `tell(problem)` for the event. */
export function problemList(act) {
  const present = new Map();
  /** Why there is no engine stands on the film, not in the notice. */
  const show = () => act.show([...present].filter(([name]) => name !== 'engine' && name !== 'integrity').map(([, problem]) => problem.sentence));

  return {
    show,
    list: () => [...present.values()],
    get: (name) => present.get(name),
    /** Keeps one without a word. */
    keep: (name, problem) => present.set(name, problem),
    /** Shows and tells one. */
    add(name, problem) {
      present.set(name, problem);
      show();
      // Not at once: while the page is being read, its listeners may not stand yet.
      setTimeout(() => act.tell(problem));
    },
    /** It is no more. */
    solved(name) {
      if (present.delete(name)) show();
    },
  };
}
