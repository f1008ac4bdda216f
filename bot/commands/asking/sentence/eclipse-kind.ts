/** A few words that say which kind of eclipse is meant, after one was told of: "the total one", "is there a solar one i can see". Pure. */

const LEAD =
  "(?:(?:and|so|ok|okay|but|no|sorry|just|only|what about|how about|what of|is there|are there|will there be|when(?:'s| is|s| are| will)?|whens|what(?:'s| is|s)?|wheres|show(?: me)?|give me|tell me|i want|i meant?|see|any|the|an?|next|other|another|be|or),? )*";
const OF = '(?:total|partial|annular|lunar|solar|ring(?: of fire)?|of the (?:sun|moon)|(?:the )?(?:sun|moon)(?:.s)?)';
const BEHIND =
  '(?: (?:ones?|eclipses?|i can see|we can see|i see|you can see|can i see|visible|seen|to see|here|from here|from my (?:site|place)|for me|in (?:the )?uk|coming|up|soon|instead|then|too|also|please|pls|next|at all|though|after(?: (?:that|it))?|that(?: is|.s)|is))*';
const KIND = new RegExp(`^${LEAD}(?<of>${OF}(?: ${OF})*)${BEHIND}$`, 'u');

export interface EclipseKind {
  /** As `about` takes it; null: of the one that was spoken of. */
  readonly about: 'Sun' | 'Moon' | null;
  /** As `total` and `shape` take it; null: of any. */
  readonly shape: Readonly<Record<string, string>> | null;
}

const plainly = (said: string): string =>
  said
    .toLowerCase()
    .replace(/[?!.,\s]+$/u, '')
    .replace(/\s+/gu, ' ')
    .trim();

const oneOf = (isOfSun: boolean): 'Sun' | 'Moon' => (isOfSun ? 'Sun' : 'Moon');

/** Null: it is not this, or says more. */
export const eclipseKindSaid = (said: string): EclipseKind | null => {
  const of = KIND.exec(plainly(said))?.groups?.['of'];
  if (of === undefined) return null;
  const isOfSun = /\b(?:sun|solar|annular|ring)/u.test(of);
  const isOfMoon = /\b(?:moon|lunar)/u.test(of);
  const shape = /total/u.test(of) ? { total: 'yes' } : null;
  const other = /annular|ring/u.test(of) ? 'annular' : /partial/u.exec(of)?.[0];
  return {
    about: isOfSun === isOfMoon ? null : oneOf(isOfSun),
    shape: shape ?? (other === undefined ? null : { shape: other }),
  };
};

/** "C2", "third contact": of the Sun's eclipse; the source of a pattern. */
export const CONTACT = 'c ?[1-4]|(?:first|second|third|fourth|last|1st|2nd|3rd|4th) contacts?|contact times?';
const CONTACTS = new RegExp(
  `^(?:(?:and|so|ok|but),? )*(?:(?:when|what time|at what time|what|how long|what about|how about)\\b.*\\b)?(?:${CONTACT}|contacts)\\b(?: (?:and|to|between|from|start|starts|begin|begins|end|ends|time|times|then|here|is|at|please|,|-|c ?[1-4]))*$`,
  'u',
);

/** "When is C2", "how long between C2 and C3": after an eclipse no number of a list. */
export const saysContacts = (said: string): boolean => CONTACTS.test(plainly(said));
