/** Whether a line that is only like a cure has no word of one: it tells of a part that was looked at, or of the trouble itself. */
import { wordKindsOf } from './word-kinds.js';

/** It runs, it is over, they are glad, it is so now. */
const OF_CURE: ReadonlySet<string> = new Set(['does', 'cured', 'joy', 'now']);
/** "No more resets" is one too. */
const OVER =
  /\b(?:no|not|never|without|gone|anymore|longer|stays?|stayed|moved|woke|came|finish\w*)\b|n['\u2019]?t\b/iu;
/** How a tube or a star goes astray. */
const ASTRAY =
  /\b(?:backwards?|opposite|fl(?:y|ies|ying)|shoots?|rac(?:es?|ing)|wander\w*|runs? (?:off|away)|silly|crazy|daft|weird|strange|funny|random|(?:misses|off|out) by|lags?|stuck|leaves?|leaving|drifts?|out of view|miles (?:off|away|out)|wrong (?:place|way|spot|star|part|side)s?)\b/iu;

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .split(/[^\p{L}\d]+/u);

export const hasWordOfCure = (text: string): boolean =>
  OVER.test(text) || wordsOf(text).some((word) => wordKindsOf(word).some((kind) => OF_CURE.has(kind)));

export const tellsAstray = (text: string): boolean => ASTRAY.test(text) && !OVER.test(text);
