/** The part of the sky that a sentence names. */
import { sameSiteName } from '../resolve-site.js';
import { tableOf } from '../../../ground/table-of.js';
import { takeFirst, type Sentence } from './words.js';

const OVERHEAD =
  /\b(?:overhead|(?:at|near|in) (?:the|my) zenith|zenith (?:stars?|constellations?)|(?:nearest|closest)(?: to)? (?:the |my )?zenith|straight up|(?:directly|right|straight) above|above (?:me|us|(?:my|our|the) (?:house|head|heads|home|garden|roof))|over (?:my|our|the) heads?)\b/u;
/** "in the north west", "low southeast", "facing south", "to the east", "the western sky". */
const DIRECTION =
  /\b(?:in|to|towards?|facing|faces|looking|looks|low|high|my|the|due) (?:the )?(north|south)?[ -]?(east|west)?(?:ern|erly)?(?: sky| side| horizon| half)?(?= |[,.;?!]|$)/gu;
/** "an east-facing balcony". */
const FACING = /\b(north|south)?[ -]?(east|west)?[ -]facing\b/u;

const joined = (first: string | undefined, second: string | undefined): string | null =>
  first === undefined && second === undefined ? null : [first, second].filter(Boolean).join('-');

/** "In the se", "towards NW"; between two of the eight, the one that names a quarter. */
const SHORT =
  /\b((?:in|to|towards?|facing|looking|low|due) (?:the )?)(ne|nw|se|sw|nne|ene|ese|sse|ssw|wsw|wnw|nnw)\b/gu;
const SIDES = tableOf({
  ne: 'north-east',
  nw: 'north-west',
  se: 'south-east',
  sw: 'south-west',
  nne: 'north',
  ene: 'east',
  ese: 'east',
  sse: 'south',
  ssw: 'south',
  wsw: 'west',
  wnw: 'west',
  nnw: 'north',
});
/** Single letters of the compass, where something leads to them: "in the e", "due s". */
const LETTER =
  /\b((?:in|to|towards?|facing|due) (?:the )?|low (?:down )?(?:in (?:the )?)?)([nesw])\b(?=[\s,.;?!]|$)/giu;
const LETTERS = tableOf({ n: 'north', e: 'east', s: 'south', w: 'west' });
/** "Bright star, ne", "whats that low down nne tonight": with nothing that leads to it. In other languages some are words, so that what is seen has to be named. */
const ALONE =
  /[\s,]+(?:(?:in|to|towards?|facing|looking|low|due)(?: the)? )?(ne|nw|se|sw|nne|ene|ese|sse|ssw|wsw|wnw|nnw)(?= *(?:$|[,.;?!]| (?:tonight|now|at|just|right|from|what|which|is)\b))/giu;
const SEEN_WORDS =
  /\b(?:bright\w*|stars?|planet|light|one|thing|dot|what|whats|anything|see|shin\w*|twinkl\w*|good|up|low|high)\b/iu;

/** "In the ne", "in the e", "bright star, se" with the part of the sky in full. */
export const withSidesInFull = (typed: string): string => {
  const lettered = typed.replace(LETTER, (_, lead: string, side: string) => {
    const full = LETTERS.get(side.toLowerCase()) ?? side;
    return /(?:in|to|towards?|facing) (?:the )?$/iu.test(lead)
      ? `${lead}${full}`
      : `${lead.replace(/^due /iu, '')}in the ${full}`;
  });
  return SEEN_WORDS.test(lettered)
    ? lettered.replace(ALONE, (_, side: string) => ` in the ${SIDES.get(side.toLowerCase()) ?? side}`)
    : lettered;
};

/** "East of me", "just south of the house". */
const SIDE_OF =
  /\b(north|south)?[ -]?(east|west)? of (?:me|us|here|(?:my|our|the) (?:house|home|garden|place|tent|roof))\b/u;

/** As `towards:` takes it; null: none is named. */
export const towardsIn = (typed: string): string | null => {
  const plain = typed.replace(SHORT, (_, lead: string, side: string) => `${lead}${SIDES.get(side) ?? side}`);
  if (OVERHEAD.test(plain)) return 'overhead';
  for (const [, first, second] of plain.matchAll(DIRECTION)) {
    const found = joined(first, second);
    if (found !== null) return found;
  }
  for (const pattern of [FACING, SIDE_OF]) {
    const [, first, second] = pattern.exec(plain) ?? [];
    const found = joined(first, second);
    if (found !== null) return found;
  }
  return null;
};

const DIR = '(?:(?:north|south)?[ -]?(?:east|west)|north|south)';
const FACED = `(?:that |which |it )?(?:faces|facing|looks|looking)(?: to| towards?| out to)?(?: the)? ${DIR}`;
/** "my balcony facing east", "an east-facing window", "my garden looks south": where someone stands, told by what it faces. */
const STANDPOINT = new RegExp(
  `^(?:(?:my|our|the|a|an) (?:\\w+ )?(\\w+) ${FACED}|(?:my|our|the|a|an) (?:\\w+ )?${DIR}[ -]facing (\\w+)|${FACED}|${DIR}[ -]facing|(?:in|to|towards?|into) (?:the|my|our) (?:(?:north|south)[ -](?:east|west)(?:ern|erly)?(?: sky)?|(?:north|south|east|west)ern sky))$`,
  'u',
);
const LONGEST = 9;

/** Its words are taken, so that a balcony is no site to look up; a saved site of that name stays one. */
export const takeStandpoint = (sentence: Sentence, siteNames: readonly string[]): void => {
  takeFirst(
    sentence,
    LONGEST,
    ({ plain }) => {
      const found = STANDPOINT.exec(plain);
      const name = found?.[1] ?? found?.[2];
      const isSaved = name !== undefined && siteNames.some((site) => sameSiteName(site, name));
      return found === null || isSaved ? null : plain;
    },
    /^(?:from|on|off|at|in|out|through)$/u,
  );
};
