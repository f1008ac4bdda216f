/** A text as words: lower case, "won't" as "will not", with where each stands, and with the marks that end a clause. */
import { tableOf } from '../../ground/table-of.js';
import { rememberWords } from './remember.js';

export interface Token {
  readonly word: string;
  readonly start: number;
  readonly end: number;
  /** `word`; `pause`: a comma or colon; `stop`: the end of a sentence; `ask`: a question mark. */
  readonly kind: 'word' | 'pause' | 'stop' | 'ask';
}

/** Device files, addresses, versions and numbers stay whole; a hyphen or slash between words parts them. */
const ANY_SCRIPT =
  /\/dev\/[\w.*/-]+|\d{1,3}(?:\.\d{1,3}){3}|0x[0-9a-f]+|\p{L}[\p{L}\d_]*(?:\.[\p{Ll}\d_]+)+|\d+(?:[.,]\d+)?|[\p{L}\d_]+(?:['’][\p{L}]+)*|[,:()"“”]|[.!;…]+|\?+!*|\n+|\s[-–—]+\s|→|->/giu;

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

const lowerWordsOf = (raw: string): readonly string[] => {
  // Short forms have an apostrophe or end in t.
  if (!raw.endsWith('t') && !/['’]/u.test(raw)) return PHONE.get(raw)?.split(' ') ?? [raw];
  for (const [form, words] of SHORT_FORMS) if (form.test(raw)) return words;
  for (const [form, words] of ENDINGS) if (form.test(raw)) return [raw.replace(form, ''), ...words];
  if (/^(?:it|that|there|what|where|who|here|he|she|how)['’]s$/u.test(raw)) return [raw.slice(0, -2), 'is'];
  const plain = raw.replace(/['’]s$/u, '').replace(/['’]/gu, '');
  return (PHONE.get(plain) ?? plain).split(' ');
};

const wordsOf = rememberWords((raw) => lowerWordsOf(raw.toLowerCase()));

const kindOf = (raw: string): Token['kind'] => {
  const [first = ''] = raw;
  if (',:()"“”→-'.includes(first) || /^\s[-–—]/u.test(raw)) return 'pause';
  if (first === '?') return 'ask';
  return '.!;…\n'.includes(first) ? 'stop' : 'word';
};

export const MOST_TOKENS = 2500;

/** Accents stay where they are: the vocabulary is English, and a word with accents is none of it. */
export const tokensOf = (text: string): readonly Token[] => {
  const tokens: Token[] = [];
  const form = /[^\0-\x7f]/u.test(text) ? ANY_SCRIPT : ASCII_ALONE;
  form.lastIndex = 0;
  for (let match = form.exec(text); match !== null && tokens.length < MOST_TOKENS; match = form.exec(text)) {
    const [raw] = match;
    const start = match.index;
    const end = form.lastIndex;
    const kind = kindOf(raw);
    // A hyphen inside a word (go-to) parts it, as the pattern has done; underscores as well.
    if (kind !== 'word') tokens.push({ word: raw.trim(), kind, start, end });
    else for (const word of wordsOf(raw)) tokens.push({ word, kind, start, end });
  }
  return tokens;
};
