/** Sentences about the Moon beside one target: when it comes by it, how they stand in a night. */
import { nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { spanIn } from './about-nights.js';

/** How two things are said to come together. */
const TOGETHER =
  /\b(?:conjunctions?|appulses?|meet(?:s|ing|ings|up)?|met|together|pair(?:s|ed|ing)?|pass(?:es|ing)?|visit(?:s|ing)?|approach\w*|kiss\w*|line ?up|hits?|cover(?:s|ing)?|occult\w*|near(?:by|est|er)?|close(?:st|r|ly)?|beside|besides|next to|alongside|by|cross(?:es)?)\b/u;
/** How they stand at an hour, and what is to be done with them, are other questions. */
const OTHERS =
  /\b(?:remind\w*|ping|wake|alert|slew\w*|go ?to|swing|point\w*|aim\w*|sun|landed|lands|missed|align\w*|filter|eclips\w*|spoil\w*|bother\w*|wash\w*|drown\w*|in the way|interfer\w*|ruin\w*|moons|higher|brighter|bigger|by (?:eye|day|now|then|\d)|close of|transits?|shadows?|full moon|new moon|moon ?light|io|europa|ganymede|callisto)\b/u;
const TO_COME = /\b(?:when|next|soon|date|which (?:night|day|evening|morning)|what (?:night|day|date)|again)\b/u;
const MONTHS =
  /\b(?:in|of|during|this|next) (?:january|february|march|april|may|june|july|august|september|october|november|december|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec)\b/u;

/** The target that stands with the Moon in the sentence, and no other. */
const besideMoon = ({ targets, plain }: Asked): string | null => {
  const [target, ...others] = targets.filter((name) => name !== 'moon' && name !== 'sun');
  return target === undefined || others.length > 0 || !/\bmoon\b/u.test(plain) ? null : target;
};

/** The night that is asked about; a month or a week is several. */
const timesOf = (asked: Asked): Readonly<Record<'on' | 'over', string | null>> => {
  const span = says(asked, MONTHS) || asked.when.night === null ? spanIn(asked) : null;
  if (span !== null && !says(asked, /\bweekends?\b/u)) return { on: null, over: span };
  return { on: nightAlone(asked.when).night, over: null };
};

export const moonMeets: Rule = (asked) => {
  const target = besideMoon(asked);
  if (target === null || !says(asked, TOGETHER) || says(asked, OTHERS)) return null;
  // How far apart they stand at an hour is measured.
  if (asked.when.hour !== null && !says(asked, TO_COME)) return null;
  const { on, over } = timesOf(asked);
  const read: Reading = nightLine(
    'ahead',
    'meetings',
    { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
    { about: `moon and ${target}`, on, over },
  );
  return read;
};
