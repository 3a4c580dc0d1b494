// The look, as style sheets that a strict content policy allows: fetched as text, adopted by every element's shadow root.

// Whole at each place, since bundlers find a file by this very form.
const FILES = [new URL('../style/tokens.css', import.meta.url), new URL('../style/shared.css', import.meta.url), new URL('./element.css', import.meta.url)];

/** Why the look could not be had, or ''. */
export let styleProblem = '';

/** Shared by all elements. */
export const sheets = await Promise.all(FILES.map(sheet));

/** @param {URL} file */
async function sheet(file) {
  const made = new CSSStyleSheet();
  try {
    const response = await fetch(file);
    if (!response.ok) throw new Error(String(response.status));
    made.replaceSync(await response.text());
  } catch (error) {
    // Words, picture and controls are there without it.
    styleProblem = String(Object(error).message);
  }
  return made;
}
