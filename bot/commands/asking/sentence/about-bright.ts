/** Sentences about one that was seen, or what stands overhead: which star or planet, which constellation. */
import { instantLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { towardsIn } from './directions.js';

const COLOUR = 'yellow\\w*|golden|orange\\w*|red(?:dish)?|white|blu(?:e|ish)';
const ONE = 'stars?|lights?|things?|objects?|dots?|planets?|one|points?';

/** "bright star in the east at 8": one that was seen, and no list of targets. */
const BRIGHT_ONE = new RegExp(
  `\\b(?:bright(?:est)?|shiny|shining|brilliant|luminous)\\b(?: \\w+){0,2}? (?:${ONE}|twinkl\\w+)\\b|\\b(?:${ONE}) (?:is |so |very |really |too |that is |that's )*(?:bright|shiny|shining|brilliant|luminous)\\b`,
  'u',
);

/** "What's that yellowish steady star": called by its colour, or by how it shines. */
const THAT_ONE = new RegExp(
  `^(?:what|what's|whats|which|there|there's|i see|i can see|saw|a|the|very|really|that)?\\b.*\\b(?:steady|twinkling|flickering|shining|${COLOUR}) (?:\\w+ )?(?:${ONE})\\b`,
  'u',
);

/** A star low down flashes in all colours, which newcomers take for an aircraft. */
const FLASHES =
  /\b(?:something|star|light|thing|object|dot)\b.*\b(?:flash\w*|twinkl\w*|flicker\w*|sparkl\w*|chang\w+ colou?rs?|red and (?:blue|green))\b/u;

/** "What's that low down", "what's shining", "what is the light": where it stands is all that is said of it. */
const THAT_THERE =
  /^(?:(?:so|and|hey|hi),? )*(?:what|what's|whats|wat|wats)(?: is| are)? (?:(?:that|this)\b|the (?:light|dot|thing)\b|(?:shining|twinkling|sparkling|blinking|glowing|flashing)\b)/u;

const isOneSeen = (asked: Asked): boolean =>
  says(asked, BRIGHT_ONE) || says(asked, THAT_ONE) || says(asked, FLASHES) || says(asked, THAT_THERE);

/** "Not blinking" is no planetary nebula; "not the Moon" says what it is not. */
const isNamed = ({ targets }: Asked): boolean => targets.some((name) => name !== 'blinking' && name !== 'moon');

/** One that was seen somewhere: what else is said of it ("no Moon") tells how it was seen. */
export const isOfBrightOne = (asked: Asked): boolean =>
  towardsIn(asked.plain) !== null && !isNamed(asked) && isOneSeen(asked);

/** "What is overhead", "the constellation over my head": of this moment, and no list. */
const OVERHEAD =
  /^(?:the |my )?zenith (?:stars?|constellations?)\b|\bstars?\b.*\bzenith\b|^(?:so )?(?:what|what's|whats|which|the)?(?: is| are| star is| stars are)?\b.*\b(?:overhead|above|zenith|straight up|head)\b/u;
const CONSTELLATION = /\bconstellations?\b/u;
/** A list of what to look at is asked for. */
const TO_LOOK_AT =
  /\b(?:good|best|worth\w*|interesting|nice|great|see|seen|look|looking|observe\w*|image\w*|photograph\w*|targets?|objects?|galax\w+|nebula\w*|clusters?|doubles?|anything|something|everything|list|tonight|evening|later)\b/u;

const isOfOverhead = (asked: Asked): boolean =>
  towardsIn(asked.plain) === 'overhead' &&
  asked.kind === null &&
  !isNamed(asked) &&
  (says(asked, CONSTELLATION) || (says(asked, OVERHEAD) && !says(asked, TO_LOOK_AT) && asked.when.night === null));

/** Of the colours that stars are called by, three can be told apart. */
const COLOURS: readonly (readonly [RegExp, string])[] = [
  [/\borange\w*|\bred(?:dish)?\b/u, 'orange'],
  [/\byellow\w*|\bgolden\b/u, 'yellow'],
  [/\bwhite\b|\bblu(?:e|ish)\b/u, 'white'],
];

export const colourSaid = (asked: Asked): string | undefined => COLOURS.find(([pattern]) => says(asked, pattern))?.[1];

/** "before dawn", "after sunset": the coming one, as `bright` reads it. */
const twilightIn = (plain: string): string | null => {
  if (
    /\b(?:dawn|sun ?rise|sun-?up|first light|day ?break|sun (?:rises|comes up|is up)|morning|get(?:s|ting)? light)\b/u.test(
      plain,
    )
  )
    return 'dawn';
  return /\b(?:dusk|sun ?set|sundown|sun (?:sets|goes down|has set)|gets? dark)\b/u.test(plain) ? 'dusk' : null;
};

/** "What's the brightest thing in the sky right now": wherever it stands. */
const BRIGHTEST =
  /^(?:the )?brightest (?:star|thing|object|planet|light|dot)\b|^(?:what|what's|whats|which|wat)\b.*\b(?:brightest|really bright|very bright|so bright)\b.*\b(?:star|thing|object|planet|light|one|dot)\b|^(?:what|what's|whats|which|wat)\b.*\b(?:star|thing|object|planet|light|one|dot)\b.*\b(?:is|that's|thats) (?:the brightest|so bright|really bright|very bright)\b/u;
const OF_OTHERS =
  /\b(?:in (?!the (?:sky|night|evening|morning)\b)|of (?!the (?:sky|night|evening|lot)\b)|galax\w*|nebul\w*|cluster\w*|comet\w*|double\w*|near|next to|close to|remind\w*|align\w*)/u;

/** "What's that shining thing in the sky": one that was seen, and no side named. */
const THAT_IN_SKY =
  /^(?:what|what's|whats|which|wat|wats)\b(?: is)? (?:that|the|this) (?:(?:really|very|super|so|big|huge) )*(?:bright|shining|shiny|brilliant|glowing|orange\w*|red(?:dish)?|yellow\w*|white|blu(?:e|ish)) (?:star|thing|object|planet|light|one|dot|spot)\b/u;

const isOfWholeSky = (asked: Asked): boolean =>
  (says(asked, BRIGHTEST) || says(asked, THAT_IN_SKY)) &&
  !says(asked, OF_OTHERS) &&
  !isNamed(asked) &&
  asked.constellation === null &&
  (asked.when.night === null || /^(?:tonight|this evening)$/u.test(asked.when.night));

export const brightOne: Rule = (asked) => {
  const towards = towardsIn(asked.plain);
  if (towards === null && isOneSeen(asked) && !isNamed(asked) && says(asked, AT_HORIZON))
    return brightTowards(asked, says(asked, SETTING) ? 'west' : 'east', 'low');
  if (towards !== null) return isOfBrightOne(asked) || isOfOverhead(asked) ? brightTowards(asked, towards) : null;
  if (!isOfWholeSky(asked)) return null;
  // Of tonight it is asked by day as well.
  const isOfEvening = asked.when.night !== null && asked.when.hour === null;
  const when = { ...asked.when, night: null };
  const colour = colourSaid(asked);
  return instantLine(
    'bright',
    '',
    { ...asked, when: isOfEvening ? { ...when, hour: 'tonight' } : when },
    { ...(colour === undefined ? {} : { colour }), ...ofThing(asked) },
  );
};

/** "What bright thing is rising": low in the east, or setting, in the west. */
const AT_HORIZON = /\b(?:rising|coming up|just (?:rose|risen|came up)|come up|setting|going down)\b/u;
const SETTING = /\b(?:setting|going down)\b/u;

const brightTowards = (asked: Asked, towards: string, side?: string): Reading => {
  const height = side ?? /\b(low|high)\b/u.exec(asked.plain)?.[1];
  const colour = colourSaid(asked);
  // "this evening" begins when it is asked.
  const isNow = asked.when.hour === null && /^(?:tonight|this evening)$/u.test(asked.when.night ?? '');
  const twilight = asked.when.hour === null ? twilightIn(asked.plain) : null;
  const when = isNow || twilight !== null ? { ...asked.when, night: null, hour: twilight } : asked.when;
  const read = instantLine(
    'bright',
    '',
    { ...asked, when },
    {
      towards,
      ...(height === undefined ? {} : { height }),
      ...(colour === undefined ? {} : { colour }),
      ...(says(asked, STEADY) ? { steady: 'yes' } : {}),
      ...ofThing(asked),
    },
  );
  return says(asked, FLASHES) ? { ...read, note: ALL_COLOURS, usesAll: true } : read;
};
/** Called by no name: it may be the Moon. */
const A_THING = /\b(?:things?|lights?|objects?|glow\w*|one)\b/u;
const NO_THING =
  /\b(?:stars?|planets?|dots?|points?|twinkl\w*|flash\w*|flicker\w*|not (?:the )?moon|no moon|besides? the moon|except)\b/u;
const ofThing = (asked: Asked): { readonly thing?: string } =>
  says(asked, A_THING) && !says(asked, NO_THING) ? { thing: 'yes' } : {};
const ALL_COLOURS =
  'A star low down twinkles in all colours, red, blue and green: the air does it. An aircraft moves on within a minute.';

/** Planets do not twinkle; an aircraft's blinking is denied as well. */
const STEADY =
  /\b(?:steady|steadily|constant|unblinking)\b|\b(?:not|\w+n'?t|without|never|no)(?: \w+)? (?:twinkl\w*|flicker\w*|blink\w*|flash\w*|scintillat\w*)/u;
