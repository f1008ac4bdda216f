/** Sentences that want a yes or a no of one target: is it up, can it be seen, is it gone by ten, is it too late for it, is it bright. */
import { nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { towardsIn } from './directions.js';

/** Begins with a verb, or has one after what leads to it: "if I go out at eight will the Moon be there". */
const ASKS =
  /(?:^|[.,;!?:] |\b(?:and|but|so|then|hi|hello|hey|please|ok|know|whether|if|wonder\w*|guys|folks|night|tonight|tomorrow|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|midnight|o'clock|pm|am|\d) )(?:is|are|was|will|would|does|do|did|can|could|has|have|am|should|might|may|isn't|won't|can't|doesn't)\b/u;
/** Leads that ask without a verb: "any chance of seeing Saturn", "ok to …". */
const ASKS_ELSE = /\bany (?:chance|hope|good|use|point)\b|\bpossible to\b|\b(?:worth|worthwhile)\b/u;
/** "jupiter up yet", "saturn still visible". */
const FRAGMENT =
  /^(?:the )?\S+(?: \S+)? (?:(?:still|already|now) )?(?:up|visible|risen|gone|set)(?: (?:yet|now|still|already))?$|\b(?:yet|still up|still visible)$/u;
const ASKS_OTHERWISE =
  /^(?:(?:hi|hello|hey|so|and|but|ok|please|sorry)[, ]+)*(?:what|what's|whats|when|when's|whens|where|where's|wheres|which|how|how's|who|why|remind|show me|tell me (?!if|whether)|list|give)\b|\bhow (?:long|far|many|much|big|bright|high|low)\b|\bwhat (?:time|way)\b|\b(?:which|what|where|when) (?:is|are|should|would|will|does|do|can)\b/u;
/** Other questions of one target in which the same words stand. */
const OTHERS =
  /\b(?:flips?|meridian|pier|align\w*|drift\w*|goto|slew\w*|point\w* (?:at|to)|track\w*|sun\w*|daylight|day ?time|by day|noon|sunglasses|constellation|eclips\w*|occult\w*|conjunction|opposition|elongation|rings in|split|resolve|resolved|separat\w*|near(?:est)?|close to|next to|beside|same field|field of view|brighter|fainter|bigger|than|or|planet or|a (?:star|planet|galaxy|double|nebula)|double star|the same|filter|eyepiece\w*|magnification|barlow|camera|landed|remind\w*|block\w*|hidden by|phase|full|new moon|waxing|waning|minim\w*|dips?|dipping|variable)\b/u;

/** What `up` can be asked to answer with yes or no. */
type Whether =
  | 'seen'
  | 'up'
  | 'down'
  | 'late'
  | 'early'
  | 'reaches'
  | 'high'
  | 'low'
  | 'bright'
  | 'circumpolar'
  | 'sets-here'
  | 'moonlight'
  | 'ever';

const SETS_HERE =
  /\bever (?:sets?|rises?|goes? down|go below|dips? below)\b|\b(?:does|do|will|can)\b.*\b(?:sets?|rises?|go down)\b.* (?:from|at) (?:here|this latitude|my latitude|our latitude)\b/u;

/** What is asked of it; the first that fits. */
const CLAIMS: readonly (readonly [RegExp, Whether])[] = [
  [/\bever\b(?!.*\b(?:sets?|down|below|again)\b)/u, 'ever'],
  [/\bcircumpolar\b|\bnever (?:sets?|rises?|goes? down|dips? below)\b/u, 'circumpolar'],
  [SETS_HERE, 'sets-here'],
  [/\btoo late\b|\bhave (?:i|we) missed\b|\b(?:i|we) missed\b/u, 'late'],
  [
    /\btoo (?:early|soon)\b|\b(?:need|have|got) to (?:wait|stay up|sit up|get up)\b|\bstay(?:ing)? up (?:late|for)\b/u,
    'early',
  ],
  [
    /\b(?:gone|sets?|setting|go(?:es)? down|went down|disappear\w*|vanish\w*|below the horizon|out of (?:sight|the way)|down)\b(?! (?:low|to)\b)/u,
    'down',
  ],
  [
    /\bmoon(?:light)?\b.*\b(?:spoil\w*|ruin\w*|wash\w*|drown\w*|interfer\w*|hide|hides|bother\w*|hurt|affect\w*|in the way|get in|kill|kills|too bright)\b|\b(?:washed out|drowned|spoiled|spoilt|ruined|hidden) by (?:the )?moon(?:light)?\b/u,
    'moonlight',
  ],
  [
    /\b(?:see\w*|seen|visible|visibility|spot\w*|catch\w*|view\w*|shows?|find|finding|observ\w*|get|grab|bag|imag\w*|photograph\w*|worth\w*|time for|time to|possible|chance|manage|make out|pick (?:it )?out|pick up|look\w*|watch\w*|reachable|doable|within reach|any good|good|placed|well-placed|enjoy)\b/u,
    'seen',
  ],
  [/\blow\b/u, 'low'],
  [/\bhigh\b(?! enough)/u, 'high'],
  [/\bbright(?: enough| tonight| now)?\b(?! (?:one|star|thing|light|object|dot))/u, 'bright'],
  [
    /\b(?:up|risen|rises?|rise|out|there|around|about|in the sky|above the horizon|over the horizon|clears?|cleared|clear of|high enough|over the (?:trees|roof|roofs|house|houses|hedge))\b/u,
    'up',
  ],
];

/** Asked of a whole night, not of this minute. */
const OF_NIGHT = /\b(?:tonight|this evening|later|will|would|going to|gonna|tomorrow|any ?time|at all)\b/u;

const claimOf = (asked: Asked): Whether | null => {
  if (asked.above !== null) return 'reaches';
  const claim =
    CLAIMS.find(([pattern]) => says(asked, pattern))?.[1] ?? (towardsIn(asked.plain) === null ? null : 'up');
  const hasHour = asked.when.hour !== null;
  // "is it up tonight": some time in it.
  if (claim === 'up' && !hasHour && (asked.when.night !== null || says(asked, OF_NIGHT)))
    return /\b(?:up|risen) (?:yet|now)\b/u.test(asked.plain) ? 'up' : 'seen';
  return claim;
};

const isAsked = (asked: Asked): boolean =>
  !says(asked, ASKS_OTHERWISE) && (says(asked, ASKS) || says(asked, ASKS_ELSE) || says(asked, FRAGMENT));

/** "facing east", "in the west": the part of the sky that is asked about; not a wall's. */
const facingOf = (asked: Asked): string | null =>
  says(asked, /\bblock\w*\b|\bbehind\b|\bhid(?:es?|den|ing)\b/u) ? null : towardsIn(asked.plain);

/** The one target that is asked about, and whether the Moon stands beside it in the sentence. */
const oneTarget = (asked: Asked): { readonly target: string; readonly isBesideMoon: boolean } | null => {
  const isMoonSaid = says(asked, /\bmoon(?:light)?\b/u);
  const others = asked.targets.filter((name) => name !== 'moon');
  const [target = isMoonSaid ? 'moon' : undefined] = others;
  if (target === undefined || target === 'sun' || others.length > 1 || asked.kind !== null) return null;
  return { target, isBesideMoon: isMoonSaid && target !== 'moon' };
};

const lineOf = (asked: Asked, target: string, first: Whether): Reading => {
  // "does it set tonight": the hour says it.
  if (first === 'down' && asked.when.hour === null && !says(asked, GONE))
    return nightLine('up', target, asked, { first: 'set' });
  const isReach = first === 'reaches';
  const when = isReach && asked.when.isUntil ? { ...asked.when, hour: null, isOneInstant: false } : asked.when;
  const kit = target === 'moon' ? { kit: null, sky: null } : {};
  const facing = facingOf(asked);
  return nightLine('up', target, { ...asked, ...kit, when }, { first, above: isReach ? asked.above : null, facing });
};

const GONE = /\b(?:gone|has|have|is|yet|already|down)\b/u;

/** "Is Jupiter rising before midnight": whether it is up by then. */
const RISES_BEFORE = /\b(?:ris(?:e|es|ing)|risen) (?:before|by|already before)\b/u;

export const whether: Rule = (asked) => {
  const [named, ...others] = asked.targets;
  const isOfRising = asked.when.hour !== null && isAsked(asked) && says(asked, RISES_BEFORE);
  if (isOfRising && named !== undefined && named !== 'sun' && others.length === 0)
    return nightLine('up', named, asked, { first: 'up' });
  const one = isAsked(asked) && !says(asked, OTHERS) ? oneTarget(asked) : null;
  const first = one === null ? null : claimOf(asked);
  if (one === null || first === null || (first === 'moonlight') !== one.isBesideMoon) return null;
  return lineOf(asked, one.target, first);
};
