/** "I've got no joystick", "never had one", at a remedy: what it is for is not there at all. */

const LONGEST = 100;

const LEAD = '(?:(?:but|and|so|no|well|sorry|hm+|there|ok|okay|as i said|i said|i told you|already said),? +)*';
const WE = "(?:(?:i|we|you|he|she|they|it|this|there|my \\w+)(?:['’]?ve)? +)?";
const HAVE_NOT =
  "(?:(?:(?:have|has|had) +)?(?:do(?: not|n['’]?t)|did(?: not|n['’]?t)|dont|didnt|never|not) +(?:even +)?(?:have|had|has|own|owned|got|use|used|run|installed?)|(?:have|has|had)(?: not|n['’]?t)(?: got)?|havent(?: got)?|hasnt(?: got)?|(?:have|['’]ve|ve|has|got|have got|['’]ve got|ve got|own|use|is|are|was|there['’]?s|there is|there are) +(?:got +)?(?:no|none|not any)|(?:is|are|was)(?: not|n['’]?t) +(?:any|one)|isnt any|isnt one|without|no)";
const BEHIND =
  '(?: +(?:here|at all|anywhere|on (?:it|this|that|the) ?\\w*|in (?:it|this|the house) ?\\w*|installed|connected|plugged in|running|switched on|so|either|now|anyway|sorry|near(?:by)?|of (?:that|those|them)|like that|thing|things|around|and never had|ever|myself))*[ .!?]*$';

/** "Never had one", "there is none", "no such thing here", "nothing like that is installed". */
const NONE_AT_ALL: readonly RegExp[] = [
  new RegExp(
    `^${LEAD}${WE}${HAVE_NOT} *(?:one|any|either|such(?: an?)?(?: thing)?|it|that|this|those|them)${BEHIND}`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}${WE}(?:have |['’]?ve |has )?(?:got |is |are |own )?(?:none|no such(?: thing)?|not one|nothing (?:like|of) (?:that|it|this|the (?:kind|sort))|nothing of the (?:kind|sort)|not any|neither)(?: is| are)?${BEHIND}`,
    'iu',
  ),
];

/** Of a title these name no thing of the member's that may be missing. */
const NO_THING = new Set(
  'the and for with from into another other one too its moves move takes take away stops stop holds hold keeps keep program port mount computer driver time place date position target data supply system power signal light lead cable connection reply answer network wrong right set chosen used near'.split(
    ' ',
  ),
);
const LEAST_LETTERS = 3;
/** A cause that something is missing is borne out by "there is none". */
const IS_OF_LACK = /\b(?:no|not|without|missing|nothing|lost|only|gives none|off)\b/iu;
/** Named otherwise than in its title. */
const ALIKE: ReadonlyMap<string, string> = new Map([
  ['joystick', 'gamepad|game ?pad|game controller|stick|joypad|controller for games'],
  ['suite', 'antivirus|anti-virus|virus scanner|defender'],
  ['proxy', 'proxies'],
  ['hub', 'hubs|splitter'],
]);

const thingsIn = (title: string): readonly string[] =>
  title
    .toLowerCase()
    .split(/[^a-z]+/u)
    .filter((word) => word.length >= LEAST_LETTERS && !NO_THING.has(word))
    .flatMap((word) => [word, ...(ALIKE.get(word)?.split('|') ?? [])]);

/** @param title of the fault that the remedy in hand is for */
export const hasNone = (text: string, title: string): boolean => {
  const said = text.trim();
  if (said.length > LONGEST || IS_OF_LACK.test(title)) return false;
  if (NONE_AT_ALL.some((form) => form.test(said))) return true;
  const things = thingsIn(title);
  return (
    things.length > 0 &&
    new RegExp(
      `^${LEAD}${WE}${HAVE_NOT} +(?:(?:a|an|any|the|other|such) +)*(?:${things.join('|')})s?${BEHIND}`,
      'iu',
    ).test(said)
  );
};

const SET =
  '(?:off|on|disabled|enabled|set|so|like that|that way|done|closed|out|full|tight|fixed|chosen|right|correct)';
const SET_ALREADY: readonly RegExp[] = [
  new RegExp(
    `\\b(?:is|are|was|were|['’]s|its|thats|been) +(?:all +)?(?:switched +|turned +|set +)?${SET}\\b.{0,12}\\b(?:from the (?:start|beginning|outset)|all along|all the time|always|ever since|since (?:long|ever|always)|by default|anyway|long (?:ago|since)|already)\\b`,
    'iu',
  ),
  new RegExp(`\\b(?:as|like) (?:i|we) (?:have |already )*(?:told|said|wrote|mentioned)\\b.{0,30}\\b${SET}\\b`, 'iu'),
];
/** Done now, or told with what came of it. */
const OTHERWISE = /\b(?:now|works?|working|connects?|not|n['’]t|but|again|then)\b|\?/iu;

/** "That was off from the start", "as I told, it is disabled": what the remedy would set is set. */
export const isSetAlready = (text: string): boolean =>
  text.length <= LONGEST && !OTHERWISE.test(text) && SET_ALREADY.some((form) => form.test(text));

/** "I only run one program", at a remedy for another one. */
export const hasOnlyOne = (text: string, title: string): boolean => {
  const thing = /\banother (\w+)/iu.exec(title)?.[1]?.toLowerCase();
  if (thing === undefined || text.length > LONGEST) return false;
  return new RegExp(
    `\\b(?:only|just) (?:\\w+ ){0,3}(?:one|a single|this|that) ${thing}\\b|\\bno other ${thing}s?\\b|\\bnothing else (?:is )?(?:open|runs?|running|started)\\b`,
    'iu',
  ).test(text);
};
