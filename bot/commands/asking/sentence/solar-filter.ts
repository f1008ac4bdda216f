/** "Is a solar filter needed for Jupiter": not for what shines by night, though by day the way there leads past the Sun. */
import { commandLine } from '../question-parts.js';
import type { Known, Reading } from './asked.js';
import { hourOf } from './sun-hour.js';
import { partsOf } from './sun-parts.js';

const SOLAR_FILTER = /\b(?:solar|sun) ?filt\w*|\bfilt\w* for the sun\b/gu;
const ASKS_NEED =
  /\b(?:need(?:s|ed)?|necessary|require[sd]?|must|have to|has to|should|supposed to|use|want|without)\b/u;
/** These stand before the Sun itself, or are sought beside it. */
const OF_THE_SUN =
  /\b(?:sun(?:'?s)?|solar|sunspots?|transit\w*|near it|inferior|conjunction|partial|annular|totality|glasses)\b/u;
const ECLIPSE = /\becl?ips\w+/u;
const BY_DAY =
  /\b(?:day ?time|day ?light|by day|in the day|during the day|noon|mid ?day|morning|afternoon|sun ?set|sun ?rise)\b/u;

/** @returns null where the Sun itself may be meant, or nothing else is named */
export const solarFilterFor = (typed: string, known: Known): Reading | null => {
  const said = typed.toLowerCase();
  if (said.search(SOLAR_FILTER) < 0 || !ASKS_NEED.test(said)) return null;
  const rest = said
    .replace(SOLAR_FILTER, ' ')
    .replace(/\blunar\b/gu, 'moon')
    .replace(/\s+/gu, ' ')
    .trim();
  const isEclipse = ECLIPSE.test(rest);
  if (OF_THE_SUN.test(rest) || (isEclipse && !/\bmoon\b/u.test(rest))) return null;
  const parts = partsOf(rest.replace(/\b(?:filters?|telescopes?|scope|camera|eye ?pieces?)\b/gu, ' '), known);
  const [target, ...others] = parts.named;
  if (target === undefined || others.length > 0 || parts.isSunNamed) return null;
  const isByDay = BY_DAY.test(rest) || parts.day?.isSunUp('now') === true;
  if (isByDay && !isEclipse)
    return {
      line: commandLine('sun', target.text, { at: hourOf(rest, parts), site: parts.site ?? undefined }),
      note: 'A solar filter is for the Sun alone and shows nothing else; while the Sun is up it is what keeps you from harm should the tube stray.',
      usesAll: true,
    };
  return {
    line: `${commandLine('up', target.text, { site: parts.site ?? undefined })} first:filter`,
    note: 'A solar filter is for the Sun alone: it shows nothing else.',
    usesAll: true,
  };
};
