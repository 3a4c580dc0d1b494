// Hands a file to whoever sits before the page.

/**
 * Saves an object as JSON.
 * @param {string} name
 * @param {unknown} content
 */
export function save(name, content) {
  saveText(name, `${JSON.stringify(content, null, 2)}\n`, 'application/json');
}

/**
 * Saves a text as it is.
 * @param {string} name
 * @param {string} text
 * @param {string} type a media type
 */
export function saveText(name, text, type) {
  saveBlob(name, new Blob([text], { type }));
}

/**
 * Saves what is already bytes.
 * @param {string} name
 * @param {Blob} blob
 */
export function saveBlob(name, blob) {
  const address = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken its own hold of the file by the next turn.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/**
 * Puts a text on the clipboard; resolves to whether it is there.
 * @param {string} text
 */
export async function copyText(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
