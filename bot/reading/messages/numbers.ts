/**
 * Numbers count only beside what they belong to: `(Code 31)` is Device Manager's, `[Errno 13]` the C library's, `None, 5)` a
 * Windows error as Python prints it, `(10061)` Winsock's. A bare number says nothing.
 */
import { stretchesAround, type Prepared, type Span } from './compile-pattern.js';
import { reachOf, wordsNeededBy } from './pattern-parts.js';
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
  ['device', '\\byellow (?:warning |exclamation )?(?:triangle|mark|bang|sign)\\b.{0,48}\\bcode:? ?(\\d{1,2})\\b'],
  ['device', '\\bproblem(?: code)?: ?(0x[0-9a-f]{1,2})\\b'],
  ['device', '\\bproblem code: ?(\\d{1,2})\\b'],
  ['errno', '\\[errno (\\d{1,3})\\]'],
  ['errno', '\\berrno\\s?[=:(]?\\s?(\\d{1,3})\\b'],
  ['errno', "error: \\((\\d{1,3}), '[^',]{1,60}'\\)"],
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
  [
    'windows',
    '(?:^|[^:\\w] ?)error (\\d{1,4}): (?:access is|the (?:system|device|file|handle|parameter|semaphore|request|requested|operation|port|i/o)|a (?:device|required)|insufficient)\\b',
  ],
  ['windows', '\\bcom\\d{1,3}.{0,40}: unknown error code (\\d{1,4})\\b'],
  ['windows', 'com port.{0,30}: unknown error code (\\d{1,4})\\b'],
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
  /** More characters than it can have. */
  readonly reach: number;
}

const compile = ([kind, form]: (typeof FORMS)[number]): Form => {
  const { options } = patternTree(form);
  return {
    kind,
    form: new RegExp(form, 'giu'),
    needs: wordsNeededBy(options) ?? [],
    reach: reachOf(options) + 1,
  };
};
const COMPILED_ROW = compile(TABLE_ROW);
const COMPILED = FORMS.map(compile);
export const NUMBER_NEEDS: readonly string[] = [TABLE_HEAD, ...COMPILED.flatMap(({ needs }) => needs)];
const MOST_NUMBERS = 60;
const ANY_DIGIT = /\d/u;
const WINDOWS_LIKE = /\bcom\d+\b|\\\\\.\\|windows|win32|\.dll\b/u;
/** What stands before "(os error 5)" where Windows words its own error, whatever else the text holds. */
const WORDED_BY_WINDOWS =
  /access is denied|the (?:system|device|parameter|semaphore|handle|i\/o|request)\b[^.:]{3,70}|a device (?:attached|which)[^.:]{3,60}/iu;
const WORDED_BEFORE = 100;
/** Codes that are no device's. */
const OTHER_CODE = /\b(?:exit(?:ed)?|return(?:ed|s)?|http|response|result|step|build)\b/iu;
/** A file that is no port, in the quotes after an error's number and words. */
const OTHER_FILE = /^[^'"‘“]{0,60}['"‘“](?!\/dev\/|com\d|\\\\[.?]\\)(?:[/~.]|[a-z]:\\|[\w-]+[./]\w)/iu;

/** Numbers that any file may give, as a port may: not there, not allowed. */
const OF_FILES: ReadonlySet<string> = new Set(['2', '5', '13', '32']);

const isOfAnother = (folded: string, kind: Form['kind'], number: string, { start, end }: Span): boolean =>
  kind === 'device'
    ? OTHER_CODE.test(folded.slice(start, end))
    : OF_FILES.has(number) && OTHER_FILE.test(folded.slice(end, end + 120));

const systemOf = (folded: string, lower: string, start: number): NumberKind => {
  if (WORDED_BY_WINDOWS.test(folded.slice(Math.max(0, start - WORDED_BEFORE), start))) return 'windows';
  return WINDOWS_LIKE.test(lower) ? 'windows' : 'errno';
};

/** Where a form stands in a text. */
const spansOf = (text: Prepared, { form, needs, reach }: Form): readonly (Span & { readonly number: string })[] => {
  const around = needs.length === 0 ? [{ start: 0, end: text.folded.length }] : stretchesAround(text, needs, reach);
  return around.flatMap(({ start: from, end: to }) =>
    Array.from(text.folded.slice(from, to).matchAll(form), ({ 0: whole, 1: number = '', index }) => ({
      start: from + index,
      end: from + index + whole.length,
      number,
    })),
  );
};

export const findNumbers = (text: Prepared): readonly FoundNumber[] => {
  const { folded, lower, places } = text;
  if (!ANY_DIGIT.test(folded)) return [];
  const found: FoundNumber[] = [];
  for (const one of places(TABLE_HEAD).length > 0 ? [...COMPILED, COMPILED_ROW] : COMPILED)
    for (const { start, end, number } of spansOf(text, one)) {
      if (found.length >= MOST_NUMBERS) break;
      const { kind } = one;
      if (isOfAnother(folded, kind, number, { start, end })) continue;
      found.push({
        kind: kind === 'system' ? systemOf(folded, lower, start) : kind,
        value: Number(number),
        start,
        end,
      });
    }
  return found;
};
