/** Questions of the last target cut short, or in a foreigner's English, as whole ones of "it": "how high then", "wat eyepiece", "will i see the rings". */
import { saidLoosely } from './said-loosely.js';

const AND = '(?:(?:and|so|ok|but|then|oh),? )*';
const form = (pattern: string): RegExp =>
  new RegExp(`^${AND}(?:${pattern})(?: (?:then|now|too|please|pls|for (?:it|that|this|them)))*$`, 'iu');

const WHEN = "(?:(?:at )?(?:when|what time)(?:'?s)?|the|its)";

export const WHEN_BEST = 'when is it best';

const SHORT: readonly (readonly [RegExp, string])[] = [
  [form("how(?:'?s)? (?:much )?(?:high|hi|hgh|low)(?: up)?(?: is (?:it|that))?"), 'how high is it'],
  [form('(?:at )?(?:when|what time|which hour)(?: is (?:it|that))?'), WHEN_BEST],
  [
    form(
      '(?:where|which (?:way|direction)|what direction|direction)(?: (?:do|should|must|shall) (?:i|we) (?:look|point|face|turn))?',
    ),
    'where is it',
  ],
  [
    form("(?:(?:when|what time)(?:'?s| is| does)? ?(?:it )?)?(?:at )?(?:its )?highest(?: point)?"),
    'when is it highest',
  ],
  [
    form(
      "(?:(?:when|what time|what)(?:'?s| is| does)? ?(?:it |the )?)?(?:at )?(?:its )?best(?: (?:time|hour|moment))?(?: for it| to (?:see|look at|view|observe) it)?",
    ),
    'when is it best',
  ],
  [
    form(
      `(?:${WHEN} )?(?:(?:does|will|is) (?:it |he |she )?|it )?(?:rise|rises|rising|come up|comes up)(?: ?times?)?(?: (?:at )?(?:when|what time))?`,
    ),
    'when does it rise',
  ],
  [
    form(
      `(?:${WHEN} )?(?:(?:does|will|is) (?:it |he |she )?|it )?(?:set|sets|setting|go down|goes down)(?: ?times?)?(?: (?:at )?(?:when|what time))?`,
    ),
    'when does it set',
  ],
  [form('(?:rise|rising|rises) (?:and|or|&) (?:set|sets|setting)(?: times?)?'), 'when does it rise'],
  [
    form(
      '(?:wh?at|which) (?:lens|lenses|eye ?pieces?|ep|power|magnification|mag)(?: (?:(?:sh?ou?l?d|shud|shld|shoud)|do|shall|can|must|to) ?(?:i|we)?)?(?: (?:use|take|need|put in|want|choose))?(?: (?:is )?best)?',
    ),
    'which eyepiece for it',
  ],
  [
    form('(?:wh?at|which|any|do i need an?) filters?(?: (?:should|do|shall|to) ?(?:i|we)?)?(?: (?:use|take|need))?'),
    'which filter for it',
  ],
  [
    form(
      "(?:will|can|could|would|do|shall) (?:i|we|you) (?:also |still )?(?:see|get|spot) (?:the |its |his |saturn's )?rings?|(?:are )?(?:the )?rings? (?:visible|seen)",
    ),
    'can i see its rings',
  ],
  [
    form(
      '(?:is|was|are) (?:it|they|that) (?:any good|worth (?:it|a look|looking(?: at)?|seeing|the effort)|(?:very |too )?(?:hard|easy|difficult)(?: to (?:see|find|spot))?)|worth (?:it|a look|looking at|seeing)|how (?:hard|easy|difficult)(?: is (?:it|that))?(?: to (?:see|find|spot))?',
    ),
    'can i see it',
  ],
  [
    form(
      '(?:has|is|did|had|was) (?:it|that|they)(?: (?:already|now|just))* (?:set|gone|down|gone down|gone already)(?: (?:already|yet|now|by now))*',
    ),
    'has it set',
  ],
  [
    form('(?:is it |am i |are we )?(?:too late|missed it|did (?:i|we) miss it|have (?:i|we) missed it)(?: for it)?'),
    'am i too late for it',
  ],
  [
    form(
      "how (?:far|distant)(?: (?:away|off|out))?(?: (?:is|are) (?:it|that|this|they|that one))?(?: (?:away|off|out|from (?:us|here|earth|the earth)|in light ?years))*|(?:its |what(?:'s| is|s)? (?:the |its )?)?distance(?: (?:to|of) it)?|how many light ?years?(?: (?:away|off))?(?: (?:is|are) (?:it|that|this|they))?(?: (?:away|off))?",
    ),
    'how far away is it',
  ],
  [
    form(
      "(?:how (?:far|wide|close)(?: apart)? (?:are|is) (?:they|it|the two|the stars|both)(?: apart)?|how far apart|(?:the |its |what(?:'s| is|s)? (?:the )?)?(?:gap|separation|distance)(?: between (?:them|the two|both|the stars))?)",
    ),
    'what is the separation of it',
  ],
  [form('(?:the )?(?:meridian )?flip(?: time)?|when(?: does it| will it)? flip'), 'when does it flip'],
  [
    form(
      "(?:the )?moon(?:'s)? (?:sep(?:aration)?|distance)(?: from it)?|how (?:far|close|near) is the moon(?: (?:from|to) it)?",
    ),
    'how far is it from the moon',
  ],
  [form('how (?:big|large|wide)|its size|size'), 'how big is it'],
  [form('how bright|(?:its )?(?:mag|magnitude|brightness)'), 'how bright is it'],
  [
    form('how (?:do|can|could|should|would|to)(?: (?:i|we|you))? (?:find|locate|get to|hop to)(?: (?:it|that|them))?'),
    'how do i find it',
  ],
];

/** "And the one more left of it", "whats the bright star under them": what stands on that side. */
const BESIDE =
  /^(?:(?:and|so|ok|but),? )*(?:(?:what(?:'?s| is| are|s)?|which(?: is)?) )?(?:that |the |a )?(?<which>(?:[\p{L}-]+ ){0,2}?)(?:one|stars?|planets?|things?|lights?|dots?)(?: that(?:'?s| is))? (?:more |just |further |directly |right )*(?:to the |on the |on its )?(?<side>left|right|under(?:neath)?|below|beneath|above|over|next to|beside|near|close to)(?: (?:hand )?side)?(?: (?:of|to))? ?(?:it|them|that|this one|that one)?$/iu;

export interface BesideIt {
  /** "the bright star left of it". */
  readonly words: string;
  /** As it was called: "bright ", "orangey ". */
  readonly which: string;
}

export const besideSaid = (said: string): BesideIt | null => {
  const { which = '', side } = BESIDE.exec(said)?.groups ?? {};
  if (side === undefined) return null;
  const of = /^(?:left|right)$/iu.test(side) ? `${side.toLowerCase()} of` : side.toLowerCase();
  return { words: `what is the ${which.replace(/\borangey?\b|\borangy\b/iu, 'orange')}star ${of} it`, which };
};

/** "How high at midnight", "where tomorrow": the hour or the night stands behind. */
const WITH_TIME =
  /^(?<head>.+?)(?<time> (?:at|around|about|by) (?:\d.*|half .+|quarter .+|midnight|noon|dawn|dusk|\p{L}+)| (?:on )?(?:tonight|tomorrow(?: \p{L}+)?|\p{L}{3,6}day(?: \p{L}+)?))$/iu;

/** "Now" is not the hour that was asked of before. */
const OF_NOW = /^(?:how high is it|where is it)$/u;

const shortOf = (said: string): string | null => {
  const short = SHORT.find(([pattern]) => pattern.test(said))?.[1] ?? null;
  return short !== null && OF_NOW.test(short) && /\bnow$/iu.test(said) ? `${short} now` : short;
};

/** Null: it is none of them. */
export const saidShort = (said: string): string | null => {
  const whole = shortOf(said) ?? saidLoosely(said) ?? besideSaid(said)?.words;
  if (whole !== undefined && whole !== null) return whole;
  const { head = '', time = '' } = WITH_TIME.exec(said)?.groups ?? {};
  const short = shortOf(head);
  return short === null ? null : `${short}${time}`;
};
