// An attempt in an address: `#attempt=` and its file, deflated (RFC 1951), in base64url. A fragment is never sent to a server.

const KEY = '#attempt=';
/** Longest attempt that is opened, bytes of its file. */
const MOST_BYTES = 2_000_000;

/**
 * @param {BlobPart} bytes
 * @param {CompressionStream | DecompressionStream} stream
 */
const through = (bytes, stream) => new Response(new Blob([bytes]).stream().pipeThrough(stream));

/**
 * The fragment that carries an attempt.
 * @param {object} attempt
 */
export async function attemptFragment(attempt) {
  const packed = await through(JSON.stringify(attempt), new CompressionStream('deflate-raw')).arrayBuffer();
  const text = Array.from(new Uint8Array(packed), (byte) => String.fromCharCode(byte)).join('');
  return KEY + btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/**
 * The attempt of a fragment, or null when there is none that can be read.
 * @param {string} fragment
 * @returns {Promise<unknown>}
 */
export async function attemptOf(fragment) {
  try {
    const text = atob(fragment.slice(KEY.length).replaceAll('-', '+').replaceAll('_', '/'));
    const { body } = through(Uint8Array.from(text, (sign) => sign.charCodeAt(0)), new DecompressionStream('deflate-raw'));
    if (!body) return null;
    const reader = body.getReader();
    const pieces = [];
    let size = 0;
    for (let next = await reader.read(); !next.done; next = await reader.read()) {
      size += next.value.length;
      if (size > MOST_BYTES) return null;
      pieces.push(next.value);
    }
    return JSON.parse(await new Blob(pieces).text());
  } catch {
    return null;
  }
}
