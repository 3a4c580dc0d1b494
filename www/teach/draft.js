// The work of the author's page, kept between visits where the browser lets it be.

const KEY = 'downbeam.author';

/** The text that was kept, or null. */
export function keptDraft() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** Keeps a text, or forgets it when it is null. Returns whether the browser let it. */
export function keepDraft(text) {
  try {
    if (text === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, text);
    return true;
  } catch {
    return false;
  }
}
