// The look, as style sheets that a strict content policy allows: fetched as text, adopted by every element's shadow root.

const FILES = ['../style/tokens.css', '../style/shared.css', './element.css'];

/** Why the look could not be had, or ''. */
export let styleProblem = '';

/** Shared by all elements. */
export const sheets = await Promise.all(FILES.map(sheet));

async function sheet(file) {
  const made = new CSSStyleSheet();
  try {
    const response = await fetch(new URL(file, import.meta.url));
    if (!response.ok) throw new Error(String(response.status));
    made.replaceSync(await response.text());
  } catch (error) {
    // Words, picture and controls are there without it.
    styleProblem = error.message;
  }
  return made;
}
