/** Sentences about a tube that went elsewhere: what it was sent to, and where it landed, in one part or two ("0.4° east, 0.2° low"). */
import { problem } from '../../../ground/problem.js';
import { fittingChoices } from '../../../reply/reply.js';
import { commandLine } from '../question-parts.js';
import { says, type Asked, type Rule } from './asked.js';
import { numberOf } from './words.js';

const LANDED =
  /\b(?:landed|lands?|landing|ended up|ends up|end up|it went to|went to|hit|stopped (?:at|on)|is pointing at|was pointing at|points? at|pointed at|got|came out|finished)\b/u;
const SENT = /\b(?:sent|told|slew\w*|goto|go to|asked|went|landed|lands|aimed|pointed|astray)\b/u;

const AMOUNT =
  'half an? |quarter of an? |\\d+(?:\\.\\d+)? ?|\\.\\d+ ?|(?:an?|one|two|three|four|five|six|ten|fifteen|twenty|thirty) ';
const UNIT = "°|degrees?\\b|deg\\b|arc ?min(?:ute)?s?\\b|minutes? of arc\\b|['′]";
const WAY =
  'north-?east|north-?west|south-?east|south-?west|north|south|east|west|[nsew]|high(?:er)?|low(?:er)?|left|right|above|below|up|down';
const TOO = '(?: ?(?:too far|too|to the|off to the|off|out|due|further))*';
const OFFSET = new RegExp(`(?<![\\d.,])(${AMOUNT})(${UNIT})?${TOO} ?\\b(${WAY})\\b`, 'gu');
/** "west of capella by 0.4 deg". */
const BY = new RegExp(
  `\\b(${WAY})(?:wards?)?(?: of (?:(?:the|my|any|every|each) )?(?:it|centre|center|\\S+(?: \\d+)?))? by (?:about |around |some )?(${AMOUNT})(${UNIT})`,
  'gu',
);
/** "by 0.4 deg to the right". */
const BY_FIRST = new RegExp(
  `\\b(?:by|off|out)(?: by)? (?:about |around |some )?(${AMOUNT})(${UNIT})${TOO} ?\\b(${WAY})\\b`,
  'gu',
);

const degreesOf = (amount: string): number | null => {
  const words = amount.trim();
  if (/^half/u.test(words)) return 0.5;
  if (/^quarter/u.test(words)) return 0.25;
  if (/^an?$/u.test(words)) return 1;
  return numberOf(words) ?? (Number.isFinite(Number(words)) ? Number(words) : null);
};

interface Offset {
  readonly text: string;
  readonly isUnited: boolean;
  readonly isCompass: boolean;
}

const offsetOf = (amount: string, unit: string | undefined, way: string): Offset | null => {
  const size = degreesOf(amount);
  if (size === null) return null;
  const isMinutes = unit !== undefined && /['′]|arc/u.test(unit);
  return {
    text: `${String(size)} ${isMinutes ? 'arcmin' : 'degrees'} ${way}`,
    isUnited: unit !== undefined,
    isCompass: !/^(?:high|low|up|down|above|below)/u.test(way),
  };
};

/** A number without its unit is one of degrees where it has decimals, or stands beside one that has a unit. */
const isNumberOfDegrees = (amount: string): boolean => /\.\d/u.test(amount);

/** All parts of the miss, in the order they stand in. */
export const offsetsIn = (plain: string): readonly Offset[] => {
  const by = [...plain.matchAll(BY)].map(([, way = '', amount = '', unit]) => offsetOf(amount, unit, way));
  if (by.length > 0) return by.filter((offset) => offset !== null);
  const first = [...plain.matchAll(BY_FIRST)];
  const found = first.length > 0 ? first : [...plain.matchAll(OFFSET)];
  const isAnyUnited = found.some(([, , unit]) => unit !== undefined);
  return found
    .filter(([, amount = '', unit]) => unit !== undefined || isAnyUnited || isNumberOfDegrees(amount))
    .map(([, amount = '', unit, way = '']) => offsetOf(amount, unit, way))
    .filter((offset) => offset !== null);
};

/** Said of where the tube went, every time or this once. */
const ASTRAY =
  /\b(?:miss\w*|off|out|(?:everything|every (?:target|star|go ?to)) (?:is|lands?|comes? out|ends? up|shows? up|sits?)|every time|always|each time|again and again|cent(?:re|er)|stops?|puts?|consistently|too (?:high|low|far))\b/u;
const ASKS = /\b(?:what|what's|whats|which|how|when|is|are|show|find|remind|best|from)\b/u;

/** "capella 0.4 e, 0.2 low": nothing but a target and a miss; "vega 30 degrees high" is its height. */
const isTold = (asked: Asked, offsets: readonly Offset[]): boolean => {
  if (says(asked, SENT) || says(asked, LANDED) || says(asked, ASTRAY)) return true;
  return !says(asked, ASKS) && (offsets.length > 1 || offsets.every(({ isCompass }) => isCompass));
};

const MOST_PARTS = 2;

/** "15 degrees west", "0.4 degrees east, 0.2 degrees low", as `landed:` takes it; null where the words give none. */
const offsetWords = (asked: Asked): string | null => {
  const offsets = offsetsIn(asked.plain);
  return offsets.length === 0 || !isTold(asked, offsets)
    ? null
    : offsets
        .slice(0, MOST_PARTS)
        .map(({ text }) => text)
        .join(', ');
};

/** The one it was sent to, and the other: "on deneb instead of vega" names them the other way round. */
const sentAndLanded = ({ targets, plain }: Asked): readonly (string | undefined)[] => {
  const [first, second] = targets;
  const wanted = /\b(?:instead of|rather than|not on) (.+)$/u.exec(plain)?.[1];
  return second !== undefined && wanted?.startsWith(second) === true ? [second, first] : [first, second];
};

/** "landed on deneb", and not a word of where it was to go: the name is where it landed. */
const LANDED_ONLY = /^(?:it |the mount |the scope |tube )?(?:has )?(?:landed|ended up|stopped) (?:on|at|in|near)\b/u;

export const miss: Rule = (asked) => {
  const [target, star] = sentAndLanded(asked);
  if (target === undefined) return null;
  if (star === undefined && says(asked, LANDED_ONLY))
    return problem(
      'which-target',
      `It landed on ${target}; what was it sent to? Such as ${commandLine('astray', 'Vega', { landed: target })}`,
      fittingChoices([{ label: 'What to type into the controller', run: 'entries' }]),
    );
  const isSent = says(asked, SENT) && says(asked, LANDED);
  const landed = offsetWords(asked) ?? (isSent ? star : undefined);
  if (landed === undefined) return null;
  // The number of a miss is no hour.
  const { hour } = asked.when;
  const at =
    hour !== null && !/\bby (?:about |around |some )?\S+ ?(?:°|deg|arc|')/u.test(asked.plain) ? hour : undefined;
  const isMiss = asked.place !== null && /\d ?[ns]\b/iu.test(asked.place);
  return { line: commandLine('astray', target, { landed, at, site: isMiss ? undefined : (asked.place ?? undefined) }) };
};

const ALWAYS =
  /\b(?:everything|every (?:target|star|go ?to)|all (?:the )?(?:targets|stars|gotos)|always|every time|each time|again and again|consistently|the same)\b/u;

/** A miss of so much with nothing named that it was sent to: which way the misses go together the walk asks. */
export const missOfAny: Rule = (asked) => {
  const isOfStar = asked.targets.length === 0 && !says(asked, OF_THE_SKY);
  const isMiss = UNMEASURED.some((pattern) => says(asked, pattern)) || says(asked, ASTRAY);
  if (!isOfStar || !isMiss || offsetWords(asked) === null) return null;
  // "Always 15 degrees to the west": what is always so is the tube's, named or not.
  const isAlwaysSo =
    says(asked, ALWAYS) && !says(asked, /^(?:is|are|do|does|will|show|list|give|tell|what|whats|which|find)\b/u);
  if (!says(asked, OF_TUBE) && !isAlwaysSo) return null;
  return { line: commandLine('triage', asked.original.replace(/[:"]/gu, ' '), {}) };
};

const ALIGNED = /\balign\w*\b/u;
const MISSES =
  /\b(?:(?:way|miles|far|well|bit|all) (?:off|out)|off to the|miss(?:es|ed|ing)?|by miles|still (?:off|out|wrong)|(?:goto|everything|it) (?:is |s )?(?:off|out|wrong))\b/u;

/** An alignment after which nothing lands where it should, and no more said: by which star, how far and which way. */
export const alignmentMissed: Rule = (asked) =>
  says(asked, ALIGNED) && says(asked, MISSES) && !says(asked, /\bwhich stars?\b/u)
    ? problem(
        'which-target',
        'Which star was it sent to, how far off did it land, and which way? Such as: Capella landed 2 degrees left. Far off after an alignment is most often the clock, the place, or another star than the one named.',
        fittingChoices([
          { label: 'What to type into the controller', run: 'entries' },
          { label: 'Stars to align on', run: 'alignment' },
        ]),
      )
    : null;

/** How far off nobody said: where the target lies from the middle. */
const OFF_CENTRE =
  'short|past|beyond|left|right|above|below|under|beside|next to|wide of|one side|too (?:high|low|far)|high|low|outside|off|edge of|bottom of|top of|corner of';
const LANDS =
  'land(?:s|ed|ing)?|stop(?:s|ped|ping)?|put(?:s|ting)?|end(?:s|ed|ing)? up|point(?:s|ed|ing)?|aim(?:s|ed|ing)?|finish(?:es|ed|ing)?|goes|going|went|sends?|slews?|slewed|slewing|drops?|comes? (?:out|up)|is|sits';
const EVERY_TIME =
  'keeps?|always|never|every time|each time|again and again|consistently|constantly|whenever|every slew|each slew|every go ?to|each go ?to';
const MACHINE = 'scope|mount|go ?to|gotos|telescope|tube|dob|handset|controller|slews?';
const UNMEASURED: readonly RegExp[] = [
  /\b(?:everything|every (?:target|star|go ?to)|all (?:the )?(?:targets|stars|gotos))(?: \w+){0,4}? (?:is|are|lands?|comes? out|ends? up|shows? up|sits?)\b.*\b(?:off|out|left|right|east|west|north|south|high|low)\b/u,
  new RegExp(`\\bland(?:s|ed|ing)?\\b.*\\b(?:${OFF_CENTRE})\\b`, 'u'),
  new RegExp(`\\b(?:${EVERY_TIME})\\b.*\\b(?:${LANDS}|miss\\w*)\\b.*\\b(?:${OFF_CENTRE})\\b`, 'u'),
  new RegExp(`\\b(?:${LANDS}|miss\\w*)\\b.*\\b(?:${OFF_CENTRE})\\b.*\\b(?:${EVERY_TIME})\\b`, 'u'),
  new RegExp(`\\b(?:${MACHINE})\\b.*\\b(?:${LANDS})\\b.*\\b(?:${OFF_CENTRE})\\b`, 'u'),
  new RegExp(`\\b(?:${MACHINE})\\b.*\\bmiss(?:es|ed|ing)?\\b`, 'u'),
  new RegExp(
    `\\b(?:${EVERY_TIME})\\b.*\\b(?:bit|little|slightly|somewhat|just)? ?(?:off )?to the (?:left|right)\\b`,
    'u',
  ),
  /\b(?:never|not|isn'?t|isnt|wasn'?t|off) (?:quite |in the |in |at the |exactly )*(?:cent(?:re|red|er|ered)|middle)\b/u,
  /\b(?:everything|every (?:target|star|object)|all|targets?|objects?|stars?|gotos?)\b.*\b(?:too (?:high|low|far)|off to (?:the|one))\b/u,
  /\b(?:at|on|near|by) the edge of (?:the )?(?:field|view|eyepiece|frame)\b/u,
];
/** What misses, or what is missed. */
const OF_TUBE =
  /\b(?:scope|mount|go ?tos?|telescope|tube|dob|handset|controller|slew\w*|targets?|stars?|objects?|everything|it)\b/u;

/** Which way it is off, as `landed:` takes it. */
const SIDE = /\b(left|right|above|below|higher|lower|high|low|north|south|east|west)\b/u;
/** "in the east" is where the target stood. */
const wayIn = (plain: string): string | undefined => {
  const words = plain
    .replace(/\b(?:in|on) the (?:north|south|east|west)\w*/gu, ' ')
    .replace(/\btop of\b/gu, 'above')
    .replace(/\bbottom of\b/gu, 'below');
  return SIDE.exec(words)?.[1];
};

/** Other questions: of the sky, and of what is to come. */
const OF_THE_SKY =
  /^(?:which|when|where|how (?:high|low|bright)|what(?:'s| is)? (?:the |that )?(?:bright|star|planet)|is there|are there)\b|\b(?:tonight|tomorrow|horizon|above \d|below \d|under \d|remind\w*|flips?|drift\w*|axis|hours?|hrs?)\b/u;

/** "keeps landing left of capella": a miss without its amount, which is asked for; the steps to take meanwhile are told. */
export const missUnmeasured: Rule = (asked) => {
  if (!UNMEASURED.some((pattern) => says(asked, pattern)) || says(asked, OF_THE_SKY)) return null;
  const [target] = asked.targets;
  const isOfAll =
    target === undefined && says(asked, /\b(?:everything|every|all|targets?|objects?|stars?|it|gotos?)\b/u);
  if (target === undefined && !isOfAll) return null;
  const way = wayIn(asked.plain);
  const landed = `20 arcmin ${way ?? 'left'}`;
  const told = commandLine('astray', target ?? 'Capella', { landed });
  return problem(
    'which-target',
    `How far off${way === undefined ? ', and which way' : ''}, roughly? Such as ${told} (the Moon is 30 arcmin wide). Always off alike: centre a bright star and synchronise on it, then try another; if that misses too, tell me both.`,
    fittingChoices([
      { label: `About 20 arcmin ${way ?? 'left'}`, run: told },
      { label: 'What to type into the controller', run: 'entries' },
      { label: 'Stars to align on', run: 'alignment' },
    ]),
  );
};
