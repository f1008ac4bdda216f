/** What is short for a word only beside certain others: "2 c" is "to see", "how hi" is "how high", "4 the kids" is "for the kids". */

type Rule = readonly [word: string, means: string, before: RegExp | null, after: RegExp | null];

const SEEN = '(?:i|u|you|we|they|2|to|can|cn|could|cud|ill|should|shud|me|kids)';
const VERBS =
  'see|c|look|luk|view|find|spot|spoil|ruin|be|b|get|git|do|go|watch|observe|point|image|photograph|start|begin|try|show|set|rise|come|use|bring|take|check|charge|catch|avoid|split|cover|pack|swap|turn|put|call|feed|make';
/** After these a number is a time, a name or an amount. */
const COUNTS =
  /^(?:at|by|til|till|until|after|before|b4|around|about|past|from|between|m|messier|ngc|ic|caldwell|c|for|in|of|top|and|or|than|under|over|above|below|mag|magnitude|bortle)$/u;
const NO_COUNT =
  /^(?!(?:at|by|til|till|until|after|before|b4|around|about|past|between|m|messier|ngc|ic|caldwell|c)$)\p{L}/u;

/** The first that fits. */
const RULES: readonly Rule[] = [
  ['c', 'see', new RegExp(`^${SEEN}$`, 'u'), /^(?!\d)/u],
  ['cn', 'can', null, /^(?:i|u|you|we|they|the|my|see|c|be|it)$/u],
  ['2', 'to', NO_COUNT, new RegExp(`^(?:${VERBS})$`, 'u')],
  [
    '4',
    'for',
    NO_COUNT,
    /^(?:the|te|teh|a|an|my|our|me|us|kids|galaxies|nebulae|nebulas|clusters|doubles|planets|beginners|binoculars|bins|imaging|alignment|tonight|tonite|2nite)$/u,
  ],
  [
    'b',
    'be',
    /^(?:will|wil|it|to|2|can|cn|could|would|wud|should|shud|moon|there|gonna|ill|must|not|might|may)$/u,
    null,
  ],
  ['hi', 'high', /^(?:how|hw|hows|very|too|so|is|still|stil|quite|pretty)$/u, null],
  ['n', 'and', /^\p{L}{2,}/u, /^\p{L}/u],
  [
    'hw',
    'how',
    null,
    /^(?:hi|high|hihg|long|lng|far|fr|bright|brite|brght|do|does|duz|can|much|many|low|lw|big|close|is|iz|are|should|often|about|well|soon|late|early|faint|dark)$/u,
  ],
  ['nw', 'now', /^(?!(?:the|in|to|towards?|facing|looking|due|low|high|north|from|at|toward)$)\p{L}/u, /^$/u],
  ['wy', 'way', /^(?:which|wich|what|wot|the|this|that|right|wrong)$/u, null],
  [
    'bst',
    'best',
    /^(?!\d)/u,
    /^(?:double|doubles|thing|things|time|target|targets|object|objects|galaxy|galaxies|planet|planets|star|stars|nebula|nebulae|cluster|clusters|place|to|for|seen)$/u,
  ],
  ['were', 'where', /^$/u, /^(?:is|iz|do|does|duz|can|should|r)$/u],
  ['se', 'see', new RegExp(`^${SEEN}$`, 'u'), null],
  ['com', 'come', null, /^(?:up|out|over|down|back)$/u],
  ['ds', 'does', null, /^(?:the|it|a|\p{L}{4,})$/u],
  ['gv', 'give', null, /^(?:me|us)$/u],
  ['yu', 'you', null, null],
  ['ne', 'any', /^$|^(?:is|are|ther|there|see|got|have|u|you)$/u, /^(?!of\b)\p{L}/u],
  ['upp', 'up', null, null],
  ['lw', 'low', /^(?:how|hw|too|very|so|is)$/u, null],
  ['te', 'the', null, /^\p{L}/u],
  ['th', 'the', /^\p{L}/u, /^\p{L}/u],
  ['da', 'the', /^\p{L}/u, /^\p{L}/u],
  ['iz', 'is', null, null],
  ['ar', 'are', /^\p{L}/u, /^(?:the|there|any|up|jupiter|saturn|mars|in|at|we|they|u|you|galaxies|planets)$/u],
  ['gt', 'get', null, /^(?:dark|up|it|the|to|me|properly|proper)$/u],
  ['ova', 'over', null, null],
  ['mon', 'moon', /^(?:the|te|teh|full|new|is|and|or|no|half|when)$/u, null],
  ['mono', 'moon', /^(?:the|te|teh|full|new|no)$/u, null],
];

/** The word that a form stands for between these two; null where it stands for itself. */
export const inContext = (plain: string, before: string, after: string): string | null => {
  const rule = RULES.find(
    ([word, , isBefore, isAfter]) =>
      word === plain && (isBefore === null || isBefore.test(before)) && (isAfter === null || isAfter.test(after)),
  );
  return rule === undefined || (plain === '2' && COUNTS.test(before)) ? null : rule[1];
};
