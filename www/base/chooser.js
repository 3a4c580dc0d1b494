// Choosing files: a button that opens the browser's own chooser.

/**
 * Lets a button open the file chooser of an input; `take(files)` gets the choice as an array.
 * @param {HTMLElement} button
 * @param {HTMLInputElement} input
 * @param {(files: File[]) => void} take
 */
export function chooser(button, input, take) {
  button.addEventListener('click', () => input.click());
  input.addEventListener('change', () => {
    const files = [...(input.files ?? [])];
    // So that the same file can be chosen again.
    input.value = '';
    if (files.length > 0) take(files);
  });
}
