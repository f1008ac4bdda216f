/**
 * Numbers count only beside what they belong to: `(Code 31)` is Device Manager's, `[Errno 13]` the C library's, `None, 5)` a
 * Windows error as Python prints it, `(10061)` Winsock's. A bare number says nothing.
 */
import type { Prepared, Span } from './compile-pattern.js';
import { wordsNeededBy } from './pattern-parts.js';
import { patternTree } from './pattern-tree.js';
import type { NumberKind } from '../schema.js';

export interface FoundNumber extends Span {
  readonly kind: NumberKind;
  readonly value: number;
}

/** Device Manager's word for "code" in the languages that translations.yaml has, and some more. */
const CODE = 'code|código|codigo|codice|kod|код|コード|代码|代碼|kód|koodi';
const FORMS: readonly (readonly [NumberKind | 'system', string])[] = [
  ['device', `[(（](?:${CODE})[: ]{0,2}(\\d{1,2})[)）]`],
  ['device', '(?:device|manager|status|adapter|driver|windows)\\b.{0,24}\\b(?:error )?code:? ?(\\d{1,2})\\b'],
  ['errno', '\\[errno (\\d{1,3})\\]'],
  ['errno', '\\berrno\\s?[=:(]?\\s?(\\d{1,3})\\b'],
  ['errno', "error: \\((\\d{1,3}), '"],
  ['system', '\\(os error (\\d{1,5})\\)'],
  ['windows', '\\[winerror (\\d{1,4})\\]'],
  ['windows', ', none, (\\d{1,4})\\)'],
  [
    'windows',
    '(?:getlasterror(?:\\(\\))?|last ?error|win32 ?error|system error|createfile.{0,60}error)(?: code)?\\s?[=:]?\\s?(\\d{1,4})\\b',
  ],
  ['windows', 'file failed \\(?\\w*error\\((\\d{1,4}),'],
  [
    'windows',
    "(?:readfile|writefile|createfile|clearcommerror|getoverlappedresult|setcommstate)[^()]{0,20}\\((\\d{1,4}), '",
  ],
  ['windows', "error: \\((\\d{1,4}), '\\w+', '"],
  ['windows', '(?:^|[^:\\w] ?)error (\\d{1,4}): [a-z]'],
  ['socket', '(?:winerror|errno|error|code|exception|socket|wsa\\w{0,20})\\b[ :=#(\\[]{0,3}(100\\d\\d|110\\d\\d)\\b'],
  ['socket', '\\((100\\d\\d|110\\d\\d)\\)'],
];
/** A row of the table that the collecting line prints: a serial port's or unknown device's name, its status, its code. */
const TABLE_HEAD = 'configmanagererrorcode';
const TABLE_ROW: readonly [NumberKind, string] = [
  'device',
  '(?:serial|uart|usb.{0,12}-ser|unknown (?:usb )?device|\\(com\\d{1,3}\\))[^\\d]{0,70} (?:error|unknown|degraded) (\\d{1,2})\\b',
];
/** Few ways to try each from any place (the tests count them), so the platform's own engine runs them. */
export const NUMBER_FORMS: readonly string[] = [...FORMS, TABLE_ROW].map(([, form]) => form);

interface Form {
  readonly kind: NumberKind | 'system';
  readonly form: RegExp;
  /** A text without any of these words, in lower case, holds no such number. */
  readonly needs: readonly string[];
}

const compile = ([kind, form]: (typeof FORMS)[number]): Form => ({
  kind,
  form: new RegExp(form, 'giu'),
  needs: wordsNeededBy(patternTree(form).options) ?? [],
});
const COMPILED_ROW = compile(TABLE_ROW);
const COMPILED = FORMS.map(compile);
export const NUMBER_NEEDS: readonly string[] = [TABLE_HEAD, ...COMPILED.flatMap(({ needs }) => needs)];
const MOST_NUMBERS = 60;
const ANY_DIGIT = /\d/u;
const WINDOWS_LIKE = /\bcom\d+\b|\\\\\.\\|windows|win32|\.dll\b/u;

export const findNumbers = ({ folded, lower, places }: Prepared): readonly FoundNumber[] => {
  if (!ANY_DIGIT.test(folded)) return [];
  const system: NumberKind = WINDOWS_LIKE.test(lower) ? 'windows' : 'errno';
  const found: FoundNumber[] = [];
  for (const { kind, form, needs } of places(TABLE_HEAD).length > 0 ? [...COMPILED, COMPILED_ROW] : COMPILED) {
    if (needs.length > 0 && !needs.some((need) => places(need).length > 0)) continue;
    for (const match of folded.matchAll(form)) {
      if (found.length >= MOST_NUMBERS) break;
      const value = Number(match[1]);
      found.push({
        kind: kind === 'system' ? system : kind,
        value,
        start: match.index,
        end: match.index + match[0].length,
      });
    }
  }
  return found;
};
