// The one place that picks the language of the teacher's and the author's page.
import { teach } from '../texts/en-teach.js';

export { teach };
