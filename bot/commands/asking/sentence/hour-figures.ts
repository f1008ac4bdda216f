/** Four figures for an hour by the 24-hour clock, as observers write them: "0900", "2315", "1900 local", "2200 hrs". */
import type { Run, Sentence } from './words.js';

const FIGURES = /^([01]\d|2[0-3])([0-5]\d)(?:h|hrs|hours)?$/u;
const WITH_WORD = /^((?:[01]\d|2[0-3])[0-5]\d) (?:h|hrs|hours|local|local time|lt)$/u;
/** Words beside which four figures are an hour, whatever they could be else. */
const OF_TIME =
  /^(?:tonight|tomorrow|today|morning|evening|night|(?:mon|tues|wednes|thurs|fri|satur|sun)days?|local|lt|utc?|hrs|hours|at|around|about|by|till|til|until|from|after|before|@|to)$/u;
/** … and those beside which they are none: a number of a list, a size, a price. */
const OF_OTHERS =
  /^(?:ngc|ic|m|c|hd|hr|hip|sao|ugc|pgc|eso|arp|abell|cr|mel|mrk|hcg|ldn|lbn|vdb|barnard|b|sh2|gaia|tyc|gc|asteroid|minor|number|no|nr|id|pin|port|code|iso|channel|room|focal|length|fl|f|mag|price|year|in|since|eclipses?|comets?)$/u;
const UNIT =
  /^(?:mm|m|cm|km|ft|feet|x|hz|px|ly|ms|secs?|seconds|minutes|mins?|days?|years?|stars|metres|meters|euros?|dollars|pounds|k)$/u;
/** A year of ours as it stands; "tonight 2030" is none. */
const YEAR = /^(?:19[5-9]\d|20[0-5]\d)$/u;

const inClock = (figures: string): string => `${figures.slice(0, 2)}:${figures.slice(2)}`;

/** What may follow an hour that stands by itself. */
const GOES_ON =
  /^(?:|alt|az|altitude|azimuth|height|high|where|how|not|and|or|from|in|with|for|please|pls|safe|ok|now|go|goto|slew|point|here|today|visible)$/u;

/** By itself at the end, on a quarter, and no year. */
const standsAlone = (four: string, next: string, words: Sentence['words']): boolean =>
  GOES_ON.test(next) && Number(four.slice(2)) % 15 === 0 && !(YEAR.test(four) && mayBeYear(words));

/** "SMC 2045" is of no year. */
const mayBeYear = (words: Sentence['words']): boolean =>
  words.length > FEW_WORDS || words.some(({ plain }) => OF_YEARS.test(plain));
const FEW_WORDS = 3;
/** What is asked of a year. */
const OF_YEARS =
  /^(?:eclipses?|opposition\w*|conj\w*|elongation\w*|transits?|showers?|meteors?|perihelion|equinox\w*|solstice\w*|full|new|moons?|year|in|of|for|meetings?|\w+ids|planets?|calendar|dates?|jan\w*|feb\w*|mar|march|apr\w*|may|jun\w*|jul\w*|aug\w*|sep\w*|oct\w*|nov\w*|dec\w*)$/u;

/** As the time rooms read it, "09:00"; null where the figures may be another thing. */
export const hourInFigures = ({ words, taken }: Sentence, { plain, at, count }: Run, before: string): string | null => {
  const said = WITH_WORD.exec(plain)?.[1];
  if (said !== undefined) return inClock(said);
  const [, hours = '', minutes = ''] = FIGURES.exec(plain) ?? [];
  const next = words[at + count]?.plain ?? '';
  if (hours === '' || OF_OTHERS.test(before) || UNIT.test(next)) return null;
  const four = `${hours}${minutes}`;
  // "1900 10 dec": the night that follows is taken by now.
  const then = taken[at + count] === true ? '' : next;
  const isBesideTime = [before, next].some((word) => OF_TIME.test(word));
  return isBesideTime || four.startsWith('0') || standsAlone(four, then, words) ? inClock(four) : null;
};
