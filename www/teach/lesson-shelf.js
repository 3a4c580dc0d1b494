// The lessons that come with the project, and lesson files of one's own, as texts.

import { course, shipped } from '../lesson/desk.js';
import { teach } from '../words/teach.js';

const MOST_BYTES = 32 * 1024;

/**
 * Lessons in the order of the course, and a sentence for each that is not there.
 * @typedef {{ lessons: { id: string, text: string }[], problems: string[] }} Shelf
 */

/**
 * All lessons that come with the project.
 * @returns {Promise<Shelf>}
 */
export async function shippedLessons() {
  let ids;
  try {
    ids = await course();
  } catch {
    return { lessons: [], problems: [teach.shelf.noList] };
  }
  const tried = await Promise.all(ids.map((id) => shipped(id).then((text) => ({ id, text }), () => teach.shelf.missing(id))));
  return { lessons: tried.flatMap((one) => (typeof one === 'string' ? [] : [one])), problems: tried.flatMap((one) => (typeof one === 'string' ? [one] : [])) };
}

/**
 * The text of a lesson file. Throws an Error with a sentence that names the file.
 * @param {File} file
 */
export async function lessonText(file) {
  if (file.size > MOST_BYTES) throw new Error(teach.shelf.tooLarge(file.name));
  let bytes;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    throw new Error(teach.shelf.bad(file.name, teach.check.gone));
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Error(teach.shelf.notText(file.name));
  }
}
