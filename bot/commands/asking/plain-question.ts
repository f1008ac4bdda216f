/** Finds the command that answers a question asked in plain words ("what's up tonight"), or says kindly why none does. */
import { resolveTarget, type Catalogue } from '../../catalogue/index.js';
import { cleanText } from '../../ground/fold-text.js';
import { problem } from '../../ground/problem.js';
import { mended } from './phone-words.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';

/** The line that answers, or the answer itself where there is no such command; null when the words are no question of ours. */
export type PlainReading = { readonly line: string } | { readonly outcome: Outcome } | null;

interface Known {
  readonly catalogue: Catalogue;
  readonly commands: readonly { readonly name: string }[];
}

/** Reads what a pattern found: its groups, what is known, and the words as they were typed. */
type Pattern = readonly [RegExp, (groups: readonly string[], known: Known, typed: string) => PlainReading];

const LONGEST_QUESTION = 300;

const line =
  (text: string) =>
  (groups: readonly string[]): PlainReading => ({
    line: text
      .replace(/\$(\d)/gu, (_, group: string) => groups[Number(group)] ?? '')
      .replace(/\s+/gu, ' ')
      .trim(),
  });

const refused = (
  message: string,
  ...next: readonly (readonly [label: string, run: string])[]
): (() => PlainReading) => {
  const choices = next.map(([label, run]) => ({ label, run }));
  return () => ({ outcome: problem('not-known-here', message, choices) });
};

const said = (title: string, summary: string): (() => PlainReading) => {
  const choices = [
    { label: "What's up tonight?", run: 'tonight' },
    { label: 'The mount does not connect', run: 'triage' },
    { label: 'Help', run: 'help' },
  ];
  return () => ({ outcome: reply({ title, summary, choices, pointsAt: NOWHERE }) });
};

const GREETING = 'Ask me what is up tonight, where a target stands, or tell me what your mount will not do.';
const SHOWERS =
  'perseids?|geminids?|leonids?|orionids?|quadrantids?|lyrids?|taurids?|ursids?|draconids?|eta aquarii?ds?|aquarii?ds?|meteors?|meteor showers?|shooting stars?';
const TARGET_TAIL = String.raw`((?: (?:now|tonight|tomorrow|this|on|at|from|in|saturday|sunday|monday|tuesday|wednesday|thursday|friday)\b.*)?)`;
const KINDS =
  'galaxies|planets|nebulae|nebulas|clusters|globulars|globular clusters|open clusters|doubles|double stars|planetaries|stars';

/** First match answers. What people of a club type, in the order in which the readings exclude each other. */
const PATTERNS: readonly Pattern[] = [
  [/^(?:hi|hello|hey|hiya|good (?:morning|afternoon|evening)|yo)(?: there| pierhand| all)?$/u, said('Hello', GREETING)],
  [
    /^(?:thanks|thank you|ta|cheers|thx|great|ok|okay|nice|perfect)(?: .{0,30})?$/u,
    said('You are welcome', 'Clear skies. Cap the tube before sunrise.'),
  ],
  [
    /^(?:bye|goodbye|good ?night|see you)(?: .{0,20})?$/u,
    said('Good night', 'Cap the tube and park the mount; clear skies.'),
  ],
  [/^\?+$|^(?:what can (?:you|i) (?:do|ask)|how does this work|commands?|options|menu)$/u, line('help')],
  [
    /\b(?:iss|space station|satellites?|starlink|tiangong|hubble)\b/u,
    refused(
      'I do not follow satellites: their orbits change by the day, so a good answer needs fresh elements that I do not have. A pass list made today by a space agency will be right; for the sky behind them, ask tonight.',
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:weather|clouds?|cloudy|forecast|rain(?:ing)?|will it (?:be )?clear|is it (?:going to be )?clear|seeing|transparency|dew)\b/u,
    refused(
      'I cannot see the weather: your national weather service can. What I know is when it is dark and what is up.',
      ['When is it dark?', 'dark'],
      ["What's up tonight?", 'tonight'],
    ),
  ],
  [
    /\b(?:aurora|northern lights|southern lights|zodiacal light|noctilucent)\b/u,
    refused(
      'I do not forecast that: it hangs on the Sun or the high air, and I see neither. I can say when it is dark.',
      ['When is it dark?', 'dark'],
    ),
  ],
  [
    /\b(?:not|won'?t|doesn'?t|does not|can'?t|cannot|isn'?t|no|lost|fail\w*|refus\w*)\b.*\b(?:connect\w*|com ?port|port|usb|driver|respond\w*|detect\w*|recogni\w*|see the mount|communicat\w*)\b|\b(?:com ?\d* ?port|usb|driver|serial|connection|connect)\b.*\b(?:not|missing|lost|fail\w*|problem|trouble|error|busy|denied)\b|\b(?:mount|controller)\b.*\b(?:dead|won'?t (?:move|slew|turn)|not moving|does not move|no power)\b/u,
    (_groups, _known, typed) => ({ line: `triage ${typed}` }),
  ],
  [
    /\b(?:wrong place|wrong spot|misses|missed|off by|points? (?:at|to|into) the ground|lands? (?:in|at|on)|landed|goto is off|goto (?:misses|wrong)|points? (?:the )?wrong|way off)\b/u,
    refused(
      'Tell me what it was sent to and where it landed, and I say which mistake explains it: astray Vega landed:"Deneb", or landed:"20 arcminutes west of it", or landed:"alt,az" in degrees.',
      ['What to type into the controller', 'entries'],
      ['It will not connect', 'triage'],
    ),
  ],
  [
    /\bsun'?s? (?:is )?(?:still )?up\b|\bwhile the sun\b|\b(?:in|by|during|at) (?:the )?(?:day ?time|day ?light|day)\b|\bbroad daylight\b/u,
    (_groups, known, typed) => byDay(typed, known),
  ],
  [
    /^(?:my site is|i(?:'?m| am) (?:in|at|near)|i (?:live|observe) (?:in|at|near|from)) (.+)$/u,
    line('site add name:"My site" position:"$1"'),
  ],
  [/\bhow (?:do|can) i (?:save|add|set)\b.*\b(?:site|garden|home|place|observatory)\b/u, line('help site')],
  [
    /^save (?:my )?(\p{L}[\p{L} ]{1,30}?) (?:at |as |in )?(-?\d+(?:\.\d+)?)[, ]+(-?\d+(?:\.\d+)?)$/u,
    line('site add name:"$1" position:$2,$3'),
  ],
  [
    /^(?:is it |would it be )?(?:safe|dangerous|ok) to (?:slew|point|go|look|move)(?: to| at)? (.+?)(?: now)?$/u,
    line('sun $1 at:now'),
  ],
  [
    /^(?:what|which) side of the (?:mount|pier)|meridian flip/u,
    refused(
      'For which target? It hangs on where it stands: meridian M 42 says on which side, when it flips and how long you can follow it.',
      ['For M 42', 'meridian M 42'],
    ),
  ],
  [
    /\b(?:what|which) stars?\b.*\balign|\bstars? (?:to|for) align|^align(?:ment)? stars?|^(?:two|three|2|3) star align/u,
    line('alignment'),
  ],
  [
    /\bpolar ?align|\bpolar (?:axis|scope)|\bpolaris\b.*\b(?:clock|reticle|scope)|\bwhere is (?:the )?(?:pole|north star|polaris)\b.*\bclock|north celestial pole|south celestial pole/u,
    line('pole'),
  ],
  [/\bsidereal\b|\blst\b/u, line('sidereal')],
  [
    /\bwhat (?:do|should|must) i (?:type|enter|put)\b|\bdaylight ?saving|\bdst\b|\btime ?zone\b|\b(?:set ?up|enter) (?:the )?(?:date|time|site)/u,
    line('entries'),
  ],
  [/\b(?:cancel|stop|delete|remove) (?:all )?(?:my |the )?reminders?|^(?:my )?reminders?$/u, line('remind list')],
  [/\bwhat do you (?:know|keep|store|have) (?:about|on|of) me|^my data$|\bgdpr\b|\bprivacy\b/u, line('mydata')],
  [/\b(?:delete|erase|remove|forget) (?:about )?(?:me|my data|everything)/u, line('forget')],
  [/^(?:where am i|my sites?|what is my site|saved sites?)$/u, line('site')],
  [/\b(?:jupiter'?s? moons|moons of jupiter|galilean(?: moons)?)\b(.*)/u, line('moons $1')],
  [
    /\b(lunar|solar)? ?(?:eclipse|eclipses)\b/u,
    ([, of]) => ({
      line: `ahead eclipses${of === undefined || of === '' ? '' : ` about:${of === 'solar' ? 'Sun' : 'Moon'}`}`,
    }),
  ],
  [
    /\b(mercury|venus|mars|jupiter|saturn|uranus|neptune)\b.*\b(?:opposition|elongation)\b|\b(?:opposition|elongation)s?\b.*\b(mercury|venus|mars|jupiter|saturn|uranus|neptune)\b/u,
    ([, before, after]) => ({ line: `ahead planets about:${before === undefined || before === '' ? after : before}` }),
  ],
  [/\b(?:oppositions?|elongations?)\b/u, line('ahead planets')],
  [/\b(?:conjunctions?|close meetings?)\b/u, line('ahead meetings')],
  [/\b(?:what'?s coming|what is coming|coming up|events?)\b/u, line('ahead')],
  [
    new RegExp(`\\b(${SHOWERS})\\b`, 'u'),
    ([, shower = '']) => ({
      line: `ahead showers${/meteor|shooting/u.test(shower) ? '' : ` about:"${shower.replace(/s$/u, '')}"`}`,
    }),
  ],
  [/\bmoonless\b|\bdark(?:est)? (?:weekend|saturday|friday|sunday)|\bno moon\b/u, line('ahead saturdays')],
  [
    /\b(?:new|full) moon\b|\b(?:first|last|third) quarter\b|\bmoon ?phase\b|\bphase of the moon\b|\bhow (?:full|bright|big) is the moon|^(?:the )?moon$/u,
    line('moon'),
  ],
  [/\bmoon ?(?:rise|set)s?\b/u, line('up Moon')],
  [
    /^(?:when|what time)\b.*\b(?:dark|darkness|astronomical (?:dark|twilight)|twilight|dusk|dawn)\b((?: (?:in|at|on) .*)?)/u,
    line('dark $1'),
  ],
  [
    /^(?:is it dark|how dark is it|sun ?set|sun ?rise|when (?:is|does|will) (?:the )?sun ?(?:set|rise)s?|when does the sun (?:set|rise))\b/u,
    line('dark'),
  ],
  [
    new RegExp(
      `^(?:what|which|any|show me|list)(?: are)?(?: the)?(?: best| good| bright)? ?(${KINDS})\\b.*?((?: tonight| tomorrow| on \\w+| this \\w+)?)$`,
      'u',
    ),
    line('tonight $1 $2'),
  ],
  [
    /^what(?:'?s| is| are)?(?: there)?(?: the)?(?: good| best| up| out| visible| worth| in the sky| targets?| things?| objects?| to (?:see|look at|observe)| can (?:i|we) (?:see|look at|observe)| should (?:i|we) (?:see|look at|observe))+(.*)$/u,
    line('tonight $1'),
  ],
  [
    /^(?:what (?:can|should|shall|could) (?:i|we) (?:see|look at|observe|image|photograph|point at)|suggest (?:something|a target|targets)|give me (?:something|a target|targets)|(?:any )?(?:ideas|suggestions|targets)|where to point|something to (?:see|look at))(.*)$/u,
    line('tonight $1'),
  ],
  [
    new RegExp(
      `^(?:is|are|will|can i see|can we see|could i see)(?: the)? (.+?)(?: be)?(?: up| visible| high| in the sky| observable| out)?${TARGET_TAIL}$`,
      'u',
    ),
    (groups, known) => ifTarget('up', groups, known),
  ],
  [
    new RegExp(
      `^when (?:is|does|will|can i see|to see|do i see)(?: the)? (.+?)(?: be)?(?: up| rise| set| visible| highest| transit| best| at its best| culminate)?${TARGET_TAIL}$`,
      'u',
    ),
    (groups, known) => ifTarget('up', groups, known),
  ],
  [
    new RegExp(
      `^(?:where(?:'s| is| are)|how high is|how high will|what altitude is|altitude of|find|locate|show me|point at|go ?to)(?: the)? (.+?)(?: be)?(?: right)?${TARGET_TAIL}$`,
      'u',
    ),
    (groups, known) => ifTarget('altitude', groups, known),
  ],
  [
    /^(?:comet|asteroid|minor planet) .+|^[cpdx]\/\s?\d.*|^\d+p\b.*/u,
    (_groups, _known, typed) => ({ line: `up ${typed}` }),
  ],
];

/** The first target that the words name; the Sun itself only when nothing else is. */
const targetIn = (text: string, { catalogue }: Known): string | null => {
  const words = text
    .toLowerCase()
    .replace(/[^\p{L}\p{N} ]/gu, ' ')
    .split(/\s+/u)
    .filter((word) => word.length > 1);
  for (let size = 3; size >= 1; size--) {
    for (let at = 0; at + size <= words.length; at++) {
      const name = words.slice(at, at + size).join(' ');
      if (/^(?:sun|suns|up|day|light|can|look|see|the|is|at|in|my)\b/u.test(name)) continue;
      const found = resolveTarget(catalogue, name);
      if (found.ok && found.note === undefined) return name;
    }
  }
  return null;
};

/** By day the Sun comes first, whatever was asked. */
const byDay = (typed: string, known: Known): PlainReading => {
  const target = targetIn(typed, known);
  return { line: target === null ? 'sun Sun at:now' : `sun ${target} at:now` };
};

/** The command about a target when the words name one. */
const ifTarget = (command: string, groups: readonly string[], { catalogue }: Known): PlainReading => {
  const [, target = '', rest = ''] = groups;
  const found = resolveTarget(catalogue, target);
  // A slip in the name alone: the command says which name was nearest.
  const isSlip =
    !found.ok && found.problem === 'unknown-target' && found.nearest.length > 0 && target.split(' ').length <= 3;
  if (!found.ok && found.problem !== 'ambiguous-target' && !isSlip) return null;
  return { line: `${command} ${target}${rest.replace(/ this evening$/u, ' tonight')}` };
};

/**
 * What to ask instead of words that are no command. A line that begins with a target ("double cluster", "saturn tonight") is about
 * whether it is up. Options written after the words (`site:…`) are kept.
 */
export const plainQuestion = (text: string, known: Known): PlainReading => {
  const clean = cleanText(text);
  if (clean === '' || clean.length > LONGEST_QUESTION) return null;
  const optionsFrom = /(?:^|\s)[a-z]{2,12}:\S/u.exec(clean)?.index ?? clean.length;
  const words = clean.slice(0, optionsFrom);
  const named = clean.slice(optionsFrom);
  const plain = mended(words)
    .toLowerCase()
    .replace(/[’‘]/gu, "'")
    .replace(/[?!.]+$/u, (end) => (/^\?+$/u.test(words) ? end : ''))
    .replace(/^(?:please|so|and|hey,?|pierhand,?|tell me|could you tell me|do you know)\s+/u, '')
    .trim();
  for (const [pattern, read] of PATTERNS) {
    const match = pattern.exec(plain);
    const reading =
      match === null
        ? null
        : read(
            [...match].map((group) => group ?? ''),
            known,
            words.trim(),
          );
    if (reading !== null) return 'line' in reading ? { line: `${reading.line}${named}` } : reading;
  }
  const target = longestTarget(plain, known);
  return target === null ? null : { line: `up ${target}${named}` };
};

/** The words, when they are a target with at most a night, an hour or a place after it. */
const longestTarget = (plain: string, { catalogue }: Known): string | null => {
  const words = plain.split(/\s+/u);
  const longestTail = Math.min(3, words.length - 1);
  for (let tail = 0; tail <= longestTail; tail++) {
    const found = resolveTarget(catalogue, words.slice(0, words.length - tail).join(' '));
    const moves = !found.ok && found.problem === 'unknown-target' && found.reason === 'moves-unlisted';
    if ((found.ok && found.note === undefined) || (!found.ok && found.problem === 'ambiguous-target') || moves)
      return words.join(' ');
  }
  return null;
};
