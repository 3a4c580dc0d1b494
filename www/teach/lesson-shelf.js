// The lessons that come with the project, and lesson files of one's own, as texts.

import { teach } from './texts.js';

const FOLDER = new URL('../lessons/', import.meta.url);
const MOST_BYTES = 32 * 1024;

/** All lessons that come with the project: `{ lessons: [{id, text}], problems: [sentence] }`, in the order of the course. */
export async function shippedLessons() {
  let ids;
  try {
    ids = JSON.parse(await fetched('index.json')).lessons;
  } catch {
    return { lessons: [], problems: [teach.shelf.noList] };
  }
  const tried = await Promise.all(ids.map(async (id) => {
    try {
      return { id, text: await fetched(`${id}.json`) };
    } catch {
      return { problem: teach.shelf.missing(id) };
    }
  }));
  return { lessons: tried.filter((t) => !t.problem), problems: tried.filter((t) => t.problem).map((t) => t.problem) };
}

async function fetched(name) {
  const response = await fetch(new URL(name, FOLDER));
  if (!response.ok) throw new Error(String(response.status));
  return response.text();
}

/** The text of a lesson file. Throws an Error with a sentence that names the file. */
export async function lessonText(file) {
  if (file.size > MOST_BYTES) throw new Error(teach.shelf.tooLarge(file.name));
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new Error(teach.shelf.notText(file.name));
  }
}
