/** Sentences that tell how high trees or walls stand, and ask when a target is clear of them: "blocked till 30 deg, when does Jupiter clear it". */
import { nightLine, says, type Asked, type Rule } from './asked.js';

const OBSTACLE =
  /\b(?:trees?|woods?|forest|walls?|house|houses|hedges?|roofs?|rooftops?|fences?|hills?|ridges?|buildings?|block(?:s|ed|ing)?|flats|obstruct\w*|mountains?|chimneys?|garages?|sheds?|barns?|neighbou?r\w*|skyline|in the way|hid(?:es|den)?|(?:my|the) horizon (?:is|starts?|begins?)|horizon (?:blocked|up|at))\b/u;
const HEIGHT = /(?<![\d.:])(\d{1,2}) ?(?:°|º|deg(?:rees?)?\b)/u;
const ASKS =
  /\b(?:when|what time|how long|until|till|does|do|is|will|can|could)\b.*\b(?:clears?|over|above|comes?|appears?|see|seen|visible|behind|follow|track|gone|lose|lost|disappear\w*|out of|get|gets|reach\w*|up)\b|\b(?:clears?|over)\b.*\b(?:when|what time)\b/u;
/** Of a saved horizon, a miss or a reminder. */
const OTHERS = /\b(?:save|set my|remember|remind\w*|ping|wake|landed|lands|missed?|goto|slew\w*|off by|error|sun)\b/u;
const MOST_DEG = 80;

const blockedTo = (asked: Asked): number | null => {
  const deg = Number(HEIGHT.exec(asked.plain)?.[1] ?? 0);
  return says(asked, OBSTACLE) && deg >= 1 && deg <= MOST_DEG ? deg : null;
};

/** Between which hours it stands higher than what hides it. */
export const clearsObstacle: Rule = (asked) => {
  const [target, ...others] = asked.targets;
  if (target === undefined || others.length > 0 || says(asked, OTHERS) || !says(asked, ASKS)) return null;
  const deg = blockedTo(asked);
  if (deg === null) return null;
  const when = { ...asked.when, hour: asked.when.isUntil ? null : asked.when.hour };
  const read = nightLine('up', target, { ...asked, when }, { above: String(deg) });
  return {
    ...read,
    usesAll: true,
    note: `Took ${deg}° as high as what hides it, all the way round; site horizon keeps a whole profile.`,
  };
};
