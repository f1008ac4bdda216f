/** A text as words: lower case, "won't" as "will not", with where each stands, and with the marks that end a clause. */
import { tableOf } from '../../ground/table-of.js';
import type { Known } from './known.js';

export interface Token {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  /** `word`; `pause`: a comma or colon; `stop`: the end of a sentence; `ask`: a question mark. */
  readonly kind: 'word' | 'pause' | 'stop' | 'ask';
  /** What the word is; null: a mark. */
  readonly known: Known | null;
}

/** What a word that stands in a text is, short forms as the words they stand for. */
type KnowAt = (text: string, start: number, end: number) => readonly Known[];

/** Device files, addresses, versions and numbers stay whole; a hyphen or slash between words parts them. */
const ANY_SCRIPT =
  /\/dev\/[\w.*/-]+|\d{1,3}(?:\.\d{1,3}){2}\.(?:\d{1,3}|x\b)|0x[0-9a-f]+|\p{L}[\p{L}\d_]*(?:(?:\.[\p{Ll}\d_]+)+|(?:['’][\p{L}]+)*)|(?<![:\d])\d{1,2}:\d{2}(?!:?\d)|\d+(?:[.,]\d+)?|[\p{L}\d_]+(?:['’][\p{L}]+)*|[,:()"“”]|[.!;…]+|\?+!*|\n+|\s(?:[-–—]+|\/)\s|→|->/giu;

/** The same for texts of ASCII alone, several times as fast. */
const ASCII_ALONE = new RegExp(
  ANY_SCRIPT.source.replaceAll('[\\p{L}', '[a-z').replaceAll('[\\p{Ll}', '[a-z').replaceAll('\\p{L}', '[a-z]'),
  'gi',
);

const SHORT_FORMS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/^(?:can['’]?t|cannot|cant|cann?t)$/u, ['can', 'not']],
  [/^won['’]?t$/u, ['will', 'not']],
  [/^(?:dont|don['’]t|dosnt|doesent|doesnt|doesn['’]t|dosent|dosen['’]t|didnt|didn['’]t|didint)$/u, ['do', 'not']],
  [/^(?:isnt|isn['’]t|arent|aren['’]t|wasnt|wasn['’]t|ain['’]?t|werent|weren['’]t)$/u, ['is', 'not']],
  [/^(?:hasnt|hasn['’]t|havent|haven['’]t|hadnt|hadn['’]t)$/u, ['has', 'not']],
  [/^(?:couldnt|couldn['’]t|wouldnt|wouldn['’]t|shouldnt|shouldn['’]t)$/u, ['could', 'not']],
];
const ENDINGS: readonly (readonly [RegExp, readonly string[]])[] = [
  [/['’]m$/u, ['am']],
  [/['’]re$/u, ['are']],
  [/['’]ve$/u, ['have']],
  [/['’]ll$/u, ['will']],
  [/['’]d$/u, ['would']],
];
const PHONE = tableOf({
  u: 'you',
  ur: 'your',
  r: 'are',
  c: 'see',
  im: 'i',
  ive: 'i',
  thx: 'thanks',
  pls: 'please',
  plz: 'please',
  w: 'with',
  wo: 'without',
  b4: 'before',
  nothin: 'nothing',
  nuthin: 'nothing',
  nope: 'no',
  nah: 'no',
  cos: 'because',
  cuz: 'because',
  bc: 'because',
  tho: 'though',
  ppl: 'people',
  wud: 'would',
  cud: 'could',
  shud: 'should',
  evry: 'every',
  evrything: 'everything',
  anywere: 'anywhere',
  everytime: 'every time',
});

/** @param raw in lower case */
export const lowerWordsOf = (raw: string): readonly string[] => {
  // Short forms have an apostrophe or end in t.
  if (!raw.endsWith('t') && !/['’]/u.test(raw)) return PHONE.get(raw)?.split(' ') ?? [raw];
  for (const [form, words] of SHORT_FORMS) if (form.test(raw)) return words;
  for (const [form, words] of ENDINGS) if (form.test(raw)) return [raw.replace(form, ''), ...words];
  if (/^(?:it|that|there|what|where|who|here|he|she|how)['’]s$/u.test(raw)) return [raw.slice(0, -2), 'is'];
  const plain = raw.replace(/['’]s$/u, '').replace(/['’]/gu, '');
  return (PHONE.get(plain) ?? plain).split(' ');
};

const DOTTED = /^(?:e\.g|i\.e)$/iu;
const PAUSES = ',:()"“”→-';
const STOPS = '.!;…\n';

const kindOf = (raw: string): Token['kind'] => {
  const first = raw.charAt(0);
  if ((first >= 'a' && first <= 'z') || (first >= 'A' && first <= 'Z')) return 'word';
  if (PAUSES.includes(first) || /^\s[-–—/]/u.test(raw)) return 'pause';
  if (first === '?') return 'ask';
  return STOPS.includes(first) ? 'stop' : 'word';
};

export const MOST_TOKENS = 2500;

/** What follows a "no" that is a sentence of its own. */
const SAYS_NO =
  /^ (?:the|my|our|his|her|its?|it['’]s|that|thats|that['’]s|i|i['’]?m|we|this|he|she|they|they['’]re) /iu;
const LONGEST_AFTER_NO = 9;

const isLetter = (code: number): boolean => (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
const isWordCode = (code: number): boolean => isLetter(code) || (code >= 48 && code <= 57) || code === 95;
const [SPACE, DASH, SLASH, DOT, APOSTROPHE, BEYOND_ASCII] = [32, 45, 47, 46, 39, 128];

/** The end of a plain word of ASCII letters that begins here; -1 where the whole form is needed to tell. */
const plainWordEnd = (text: string, start: number): number => {
  if (!isLetter(text.charCodeAt(start))) return -1;
  let end = start + 1;
  while (isWordCode(text.charCodeAt(end))) end++;
  const after = text.charCodeAt(end);
  if (after === APOSTROPHE || after >= BEYOND_ASCII) return -1;
  if (after !== DOT) return end;
  const beyond = text.charCodeAt(end + 1);
  return isWordCode(beyond) || beyond >= BEYOND_ASCII ? -1 : end;
};

const ALONE: ReadonlySet<string> = new Set([',', ':', '(', ')', '"']);
const ENDS: ReadonlySet<string> = new Set(['.', '!', ';']);

/** A mark that is one letter long whatever follows; null: there is none here, or the whole form is needed to tell. */
const plainMark = (text: string, at: number): Token | null => {
  const word = text.charAt(at);
  if (ALONE.has(word)) return { word, kind: 'pause', start: at, end: at + 1, known: null };
  const goesOn = STOPS.includes(text.charAt(at + 1)) && at + 1 < text.length;
  return ENDS.has(word) && !goesOn ? { word, kind: 'stop', start: at, end: at + 1, known: null } : null;
};

/** Accents stay where they are: the vocabulary is English, and a word with accents is none of it. */
export const tokensOf = (text: string, knowAt: KnowAt): readonly Token[] => {
  const tokens: Token[] = [];
  const take = (start: number, end: number): number => {
    for (const known of knowAt(text, start, end)) tokens.push({ word: known.word, kind: 'word', start, end, known });
    // "No the lead is fine": said to what came before, and no denial of the lead.
    if (tokens.at(-1)?.word === 'no' && SAYS_NO.test(text.slice(end, end + LONGEST_AFTER_NO)))
      tokens.push({ word: ',', kind: 'pause', start: end, end, known: null });
    return end;
  };
  const form = /[^\0-\x7f]/u.test(text) ? ANY_SCRIPT : ASCII_ALONE;
  for (let at = 0; at < text.length && tokens.length < MOST_TOKENS;) {
    if (text.charCodeAt(at) === SPACE) {
      const next = text.charCodeAt(at + 1);
      if (next !== DASH && next !== SLASH && !(next >= BEYOND_ASCII)) {
        at += 1;
        continue;
      }
    }
    const plainEnd = plainWordEnd(text, at);
    if (plainEnd >= 0) {
      at = take(at, plainEnd);
      continue;
    }
    const mark = plainMark(text, at);
    if (mark !== null) {
      tokens.push(mark);
      at = mark.end;
      continue;
    }
    form.lastIndex = at;
    const match = form.exec(text);
    if (match === null) break;
    const [raw] = match;
    const start = match.index;
    at = form.lastIndex;
    const kind = kindOf(raw);
    // A hyphen inside a word (go-to) parts it, as the pattern has done; underscores as well.
    if (kind === 'word') take(start, at);
    else tokens.push({ word: raw.trim(), kind, start, end: at, known: null });
    // "E.g." ends no sentence.
    if (DOTTED.test(raw) && text.charAt(at) === '.') at += 1;
  }
  return tokens;
};
