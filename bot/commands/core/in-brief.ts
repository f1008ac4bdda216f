/** A small question of what stands answered just above gets its own words alone, not the whole sheet and its picture again. */
import type { Reply } from '../../reply/reply.js';

/** What the sheet above tells already. */
const STANDS_ABOVE = /^(?:It is|Beside it|Shows|This evening|In the sky|Dark|Moon|Find it)$/u;
const OF_PLACE = /^Site:/u;

export const inBrief = ({ chart: _chart, ...answer }: Reply): Reply => ({
  ...answer,
  facts: answer.facts.filter(({ label }) => !STANDS_ABOVE.test(label)),
  notes: answer.notes.filter((note) => !OF_PLACE.test(note)),
});
