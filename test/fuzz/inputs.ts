/** What members might paste, by ill luck or ill will: pieces of real questions joined with what breaks parsers. */
import fc from 'fast-check';

/** `npm run test:fuzz` sets it: as many runs as make a million inputs in all; without it a hundredth of them. */
export const isFull = process.env['FUZZ'] === 'full';

/** Counts inputs over all properties of this run; the test files print it. */
export const counted = (name: string, runs: number): { readonly numRuns: number; readonly verbose: false; readonly endOnFailure: true; readonly seed?: number } => {
  const numRuns = isFull ? runs : process.env['FUZZ_SHARE'] !== undefined ? Math.round(runs * Number(process.env['FUZZ_SHARE'])) : Math.max(40, Math.round(runs / 100));
  console.log(`${String(numRuns).padStart(8)} inputs: ${name}`);
  const seed = process.env['FUZZ_SEED'];
  return { numRuns, verbose: false, endOnFailure: true, ...(seed === undefined ? {} : { seed: Number(seed) }) };
};

const HARMFUL = [
  '@everyone', '@here', '<@123456789012345678>', '<@&123456789012345678>', '[a](https://example.org)', '`', '```', '**', '||', '~~', '> ', '# ', '<b>', '&lt;', '\u202e', '\u2066', '\u200b', '\u200d',
  '\u0000', '\u001b[31m', '\u0007', '\u0085', '\r\n', '\n', '\t', '\ufeff', '\ud800', '\udfff', '😀', '👩‍🚀', '\u0301\u0301\u0301', 'İ', 'ß', 'ﬃ', '𝐍𝐆𝐂', '\u00a0', '﷽', '…', '\\', '"', '“', '”', '\'', ':', '::', '://', '.', ',', ';', '-', '−', '+', '/', '//', '%', '%00', '${x}', '{{x}}',
  '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'null', 'undefined', 'NaN', 'Infinity', '1e309', '-0', '0x10', '9'.repeat(30), '٣', '½', '²',
];
const WORDS = [
  'up', 'altitude', 'tonight', 'dark', 'site:', 'at:', 'on:', 'target:', 'kind:', 'galaxy', 'brighter:', 'above:', 'NGC', 'M', 'IC', 'C', 'HIP', '7331', '31', '0', 'alpha', 'α', 'Lyr', 'Lyrae', 'Andromeda', 'galaxy', 'nebula', 'the', 'Saturn', 'Moon', 'Sun', 'Polaris',
  '18h36m56.3s', '+38°47′01″', '05:34:32', '-22', '51.05,-114.07', '52.71', '0.12', 'N', 'S', 'E', 'W', '°', '′', '″', 'd', 'h', 'm', 's', 'deg', 'geo:', '+51-114/', 'Calgary', 'Springfield', 'Ely', 'England', 'US', 'Saint', 'York',
  'now', 'tonight', 'tomorrow', 'friday', 'next', 'last', 'in', 'hours', '2', 'ago', '22:30', '25:00', '10pm', '13pm', '4am', 'o\'clock', 'noon', 'midnight', 'night', 'utc', 'gmt', 'MST', 'T', 'Z', '+07:00', '2026-12-01', '2026-02-30', '1 Dec', '29 feb', '01/02/2026', '0000', '9999-12-31', 'half an hour', 'days',
];

export const harmful = fc.constantFrom(...HARMFUL);
const piece = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...WORDS) }, { weight: 3, arbitrary: harmful },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 6 }) }, { weight: 2, arbitrary: fc.integer({ min: -400, max: 3000 }).map(String) }, { weight: 1, arbitrary: fc.double({ noNaN: true }).map(String) },
);

/** Up to some 60 characters, now and then thousands. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  { weight: 12, arbitrary: fc.array(fc.tuple(piece, fc.constantFrom(' ', ' ', ' ', '', '', '  ', ':', ',')), { maxLength: 9 }).map((parts) => parts.map(([text, after]) => text + after).join('')) },
  { weight: 3, arbitrary: fc.string({ unit: 'binary', maxLength: 60 }) },
  { weight: 2, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
  { weight: 1, arbitrary: fc.tuple(piece, fc.integer({ min: 20, max: 900 })).map(([text, times]) => text.repeat(Math.min(times, Math.ceil(5000 / Math.max(1, text.length))))) },
);

/** Pieces of one kind of value, so that what is nearly right comes often. */
export const fragments = (words: readonly string[], most = 6): fc.Arbitrary<string> =>
  fc.array(fc.tuple(fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...words) }, { weight: 1, arbitrary: piece }), fc.constantFrom(' ', '', ',', ':')), { minLength: 1, maxLength: most }).map((parts) => parts.map(([text, after]) => text + after).join(''));
