/** Sentences that ask when the Sun is so far down ("below -18", "12 degrees under the horizon") or for a twilight by its name. */
import { tableOf } from '../../../ground/table-of.js';
import { nightAlone, nightLine, says, type Asked, type Rule } from './asked.js';

const UNDER =
  /\b(?:below|under|beneath|past|reach\w*|hits?|at|to|lower than|is|gets?|down|sun|drops?|falls?|sinks?)(?: to| below| under| past)? (?:-|−|minus |negative )(\d{1,2})(?! ?(?:am|pm|:))\b/u;
const SO_FAR_UNDER =
  /\b(\d{1,2}) ?(?:°|deg\w*|degrees?)? ?(?:below|under|beneath|down|lower than)\b|\b(?:below|under|beneath|lower than) (\d{1,2}) ?(?:°|deg\w*)?\b/u;
const BY_NAME = /\b(civil|nautical)(?:-| )?(?:twilight|dusk|dawn|dark\w*|night)\b/u;
const DEPTHS = tableOf({ civil: '6', nautical: '12' });
const MOST_DEG = 40;

/** Other questions in which the Sun is so far down. */
const OTHERS = /\b(?:remind\w*|warn|alert|ping|slew\w*|point\w*|safe\w*|how far|alarm|wake)\b/u;

const depthIn = (plain: string): string | null => {
  const found = UNDER.exec(plain) ?? SO_FAR_UNDER.exec(plain);
  const figure = found?.[1] ?? found?.[2];
  return figure === undefined || Number(figure) > MOST_DEG || Number(figure) < 1 ? null : String(Number(figure));
};

const isOfSun = ({ plain, targets }: Asked): boolean =>
  /\bsun\b/u.test(plain) && targets.every((name) => name === 'sun');

export const sunBelow: Rule = (asked) => {
  if (says(asked, OTHERS)) return null;
  const name = asked.targets.length === 0 ? BY_NAME.exec(asked.plain)?.[1] : undefined;
  const depth = isOfSun(asked) ? depthIn(asked.plain) : null;
  const below = depth ?? (name === undefined ? null : (DEPTHS.get(name) ?? null));
  return below === null
    ? null
    : nightLine('dark', '', { ...asked, when: nightAlone(asked.when), kit: null, sky: null }, { below });
};
