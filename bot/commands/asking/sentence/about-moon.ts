/** Sentences about the Moon beside one target, and about its face: craters, the terminator, the earthshine. */
import { moonFeatureIn } from '../../../catalogue/index.js';
import { instantLine, nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { periodSaid } from './period-said.js';

/** How two things are said to come together. */
const TOGETHER =
  /\b(?:conjunctions?|appulses?|meet(?:s|ing|ings|up)?|met|together|pair(?:s|ed|ing)?|pass(?:es|ing)?|visit(?:s|ing)?|approach\w*|kiss\w*|line ?up|hits?|cover(?:s|ing)?|occult\w*|near(?:by|est|er)?|close(?:st|r|ly)?|beside|besides|next to|alongside|by|cross(?:es)?)\b/u;
/** How they stand at an hour, and what is to be done with them, are other questions. */
const OTHERS =
  /\b(?:remind\w*|ping|wake|alert|slew\w*|go ?to|swing|point\w*|aim\w*|sun|landed|lands|missed|align\w*|filter|eclips\w*|spoil\w*|bother\w*|wash\w*|drown\w*|in the way|interfer\w*|ruin\w*|moons|higher|brighter|bigger|by (?:eye|day|now|then|\d)|close of|transits?|shadows?|full moon|new moon|moon ?light|io|europa|ganymede|callisto)\b/u;
const TO_COME = /\b(?:when|next|soon|date|which (?:night|day|evening|morning)|what (?:night|day|date)|again)\b/u;

/** The target that stands with the Moon in the sentence, and no other. */
const besideMoon = ({ targets, plain }: Asked): string | null => {
  const [target, ...others] = targets.filter((name) => name !== 'moon' && name !== 'sun');
  return target === undefined || others.length > 0 || !/\bmoon\b/u.test(plain) ? null : target;
};

/** "Is that Venus next to the Moon": whether it may be, now. */
const IS_THAT = /^(?:so |and |hi |hey )*is (?:that|this|it) (?:bright )?(?:star |planet |thing |light |one )?/u;
const isThat = (asked: Asked, target: string | null): Reading | null =>
  target === null || !says(asked, TOGETHER) || says(asked, OTHERS)
    ? null
    : instantLine('compare', target, asked, { other: 'moon', first: 'apart' });

export const moonMeets: Rule = (asked) => {
  const target = besideMoon(asked);
  if (IS_THAT.test(asked.plain)) return isThat(asked, target);
  if (target === null || !says(asked, TOGETHER) || says(asked, OTHERS)) return null;
  // How far apart they stand at an hour is measured.
  if (asked.when.hour !== null && !says(asked, TO_COME)) return null;
  const period = periodSaid(asked.plain);
  const on = period === null ? nightAlone(asked.when).night : null;
  const read: Reading = nightLine(
    'ahead',
    'meetings',
    { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
    { about: `moon and ${target}`, on, in: period },
  );
  return read;
};

const TERMINATOR =
  /\bterminator\b|\b(?:which|what|wat|any|good|best|see|seen|look at|list)\b.*\bcraters?\b|\bcraters?\b.*\b(?:moon|tonight|see|visible|look)\b|\bmoon\b.*\bwhat (?:to|should|can|could|shall|do|is there to|is worth)(?: (?:i|we))? ?(?:look\w*|see|seeing|observe|try)\b|\bwhat (?:to|should|can|could|shall|is worth)(?: (?:i|we))? ?(?:look\w* (?:at|for)|see|seeing|observe|try) on (?:the |a )?(?:\w+ ){0,3}moon\b|\b(?:lunar|moon) features?\b|\bfeatures? (?:of|on) the moon\b/u;
const EARTHSHINE = /\bearth ?shine\b|\bearth ?light\b|\bashen (?:light|glow) (?:of|on) the moon\b|\bold moon in\b/u;
/** Names that are of something else as well, unless the Moon is spoken of. */
const SHARED = /\b(?:hercules|atlas|messier|kepler|cassini|endymion|proclus|hyginus|janssen|herodotus|apennines)\b/u;
const OF_MOON = /\b(?:moon|lunar|craters?|terminator)\b/u;
/** A star or nebula of the name is meant, or what the mount does. */
const NOT_MOON = /\b(?:star|stars|supernova|remnant|cluster|constellation|slew\w*|go ?to|landed|align\w*|remind\w*)\b/u;
/** The one with the brightest rays, in the south; common practice, no source. */
const RAYS = /\bcraters?\b.*\brays?\b|\brays?\b.*\bcraters?\b/u;
const MONTH_ALONE =
  /\b(?:in|during) (january|february|march|april|may|june|july|august|september|october|november|december)\b/u;

/** From the first of a month that is named; this hour's, where "now" is said; a night is none's hour. */
const faceLine = (asked: Asked, more: Readonly<Record<string, string>>): Reading => {
  const month = MONTH_ALONE.exec(asked.plain)?.[1];
  const { night } = asked.when;
  const isTonight = /^(?:tonight|this evening)$/u.test(night ?? '');
  const when =
    month === undefined
      ? { ...asked.when, night: isTonight && asked.when.hour === null ? null : night }
      : { ...nightAlone(asked.when), night: `1 ${month}` };
  return instantLine('moon', '', { ...asked, when }, more);
};

/** A crater or the like that is named, what stands on the terminator, when the earthshine shows. */
export const moonFace: Rule = (asked) => {
  if (says(asked, NOT_MOON)) return null;
  if (says(asked, EARTHSHINE)) return faceLine(asked, { first: 'earthshine' });
  const isOfMoon = says(asked, OF_MOON);
  const feature = moonFeatureIn(says(asked, RAYS) ? 'tycho' : asked.plain);
  if (feature !== null && (isOfMoon || !says(asked, SHARED))) return faceLine(asked, { feature: feature.name });
  return says(asked, TERMINATOR) && !says(asked, /\b(?:mars|mercury|martian|venus)\b/u)
    ? faceLine(asked, { first: 'terminator' })
    : null;
};

const NEAREST =
  /\b(?:perigees?|apogees?|perigaum|apogaum|perig(?:eo|ee)|apog(?:eo|ee))\b|\bmoon\b(?! (?:to|near|and) ).*\b(?:closest|nearest|farthest|furthest|far(?:ther)?)(?: away| off)?(?: (?:to|from) (?:us|earth|the earth|here))?(?: (?:next|this (?:month|year)|in \p{L}+))?(?: when)?\W*$|\b(?:closest|nearest|farthest|furthest)(?: full| new)? moon\b/u;
const SUPERMOON = /\bsuper ?moons?\b/u;

/** When it is nearest or farthest, and which full Moon is called a supermoon. */
export const moonNearest: Rule = (asked) => {
  const isOfOthers = asked.targets.some((name) => name !== 'moon');
  if (isOfOthers || says(asked, /\b(?:remind\w*|eclips\w*|sun|planets?|stars?)\b/u)) return null;
  const isSuper = says(asked, SUPERMOON);
  if (!isSuper && !says(asked, NEAREST)) return null;
  const first = isSuper ? 'size' : 'distance';
  return { ...nightLine('up', 'moon', { ...asked, when: nightAlone(asked.when) }, { first }), usesAll: true };
};
