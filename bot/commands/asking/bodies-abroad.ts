/**
 * The Sun, the Moon and the planets by their names in other languages, put into English before a line is read: "can i look at the Sonne" is
 * to be warned of as "… at the Sun" is. Words that are English as well count only where they can be the body.
 */
import { tableOf } from '../../ground/table-of.js';
import { optionsFrom } from './options-from.js';

const SUN =
  'sonne sonnen soleil soleils sole sol solen zon slonce slonca sloncu sloncem sloneczko slunce slunci aurinko aurinkoa aurinkoon gunes gunese gunesi солнце солнца солнцу солнцем солнышко сонце ηλιος ηλιο';
const MOON =
  'mond mondes luna lune lua maan manen maanen ksiezyc ksiezyca ksiezycu ksiezycem mesic kuu kuuta луна луну луны луне луной місяць σεληνη';

/** As they are compared: lower case, without accents. */
const NAMES = {
  sun: SUN,
  moon: MOON,
  mercury: 'merkur mercurio mercure mercurius merkurius merkury меркурий',
  venus: 'venere wenus венера венеру',
  mars: 'marte марс',
  jupiter: 'giove jowisz jowisza юпитер',
  saturn: 'saturno saturne saturnus saturna сатурн',
  uranus: 'urano uran уран',
  neptune: 'neptun neptuno neptunus nettuno netuno нептун',
  'full moon': 'vollmond fullmane',
  'new moon': 'neumond nymane',
};

const ENGLISH = new Map(
  Object.entries(NAMES).flatMap(([english, words]) => words.split(' ').map((word) => [word, english] as const)),
);

/** Written without blanks between words; what one looks with and does beside the Sun goes along. */
const UNPARTED_WORDS = {
  太陽: 'the sun',
  太阳: 'the sun',
  月亮: 'the moon',
  お月様: 'the moon',
  水星: 'mercury',
  金星: 'venus',
  火星: 'mars',
  木星: 'jupiter',
  土星: 'saturn',
  望遠鏡: 'telescope',
  望远镜: 'telescope',
  双眼鏡: 'binoculars',
  見: 'look at',
  看: 'look at',
  覗: 'look at',
  観察: 'look at',
  观察: 'look at',
  撮影: 'photo',
  拍: 'photo',
};
const OF_UNPARTED = tableOf(UNPARTED_WORDS);
const UNPARTED = new RegExp(Object.keys(UNPARTED_WORDS).join('|'), 'gu');

/** A letter, and the marks on it. */
const WORD = /[\p{L}\p{M}]+/gu;

const folded = (word: string): string =>
  word.toLowerCase().normalize('NFD').replace(/\p{M}/gu, '').replace(/ł/gu, 'l').replace(/ß/gu, 'ss');

interface Around {
  /** The word before, folded; '' where a mark stands between, or none. */
  readonly before: string;
  readonly earlier: string;
  readonly after: string;
}

/** "The sole reason", "our sole computer". */
const BESIDE_SOLE =
  /^(?:reason|purpose|owner|one|user|problem|thing|cause|issue|aim|use|point|responsibility|survivor|trader|person|member|exception|difference|change|way|option|choice|device|port|program|programme|app|computer|laptop|pc|cable|lead|adapter|client|source|supply|battery|power|man|woman|child|observer|astronomer|fault|error|culprit|suspect|remedy|cure|answer|help|hope|mount|scope|telescope|handset|admin|administrator|manager)s?$/u;
/** Of a shoe. */
const OF_A_SHOE = /^(?:shoe|shoes|boot|boots|foot|rubber|leather|worn|inner|outer)$/u;

const EDGE = /^(?:puesta|salida|coucher|lever|tramonto|alba|sorgere|por|nascer|zachod\w*|wschod\w*)$/u;
/** "Puesta del sol", "zachód słońca": of an hour. */
const isOfItsEdge = ({ before, earlier }: Around): boolean => EDGE.test(before) || EDGE.test(earlier);

/** Words that are English, a name or a sign as well: whether such a one is the body. */
const MEANT = new Map<string, (around: Around) => boolean>(
  Object.entries({
    sole: ({ before, after }) => !BESIDE_SOLE.test(after) && !OF_A_SHOE.test(before),
    sol: ({ before, earlier }) => !(before === 'del' && /^(?:costa|puerta|isla|playa|plaza|valle)$/u.test(earlier)),
    lune: ({ after }) => !/^(?:shaped?|of)$/u.test(after),
    luna: ({ after }) => !/^(?:moth|moths|park)$/u.test(after),
    lua: ({ after }) => !/^(?:scripts?|scripting|code|files?|versions?|driver|plugin|interpreter)$/u.test(after),
  }),
);

/** Goes with the name; in English "the" stands there, or what the two together mean. */
const ARTICLES = tableOf({
  ...Object.fromEntries(
    'la le el il lo die der den dem das de het o a the'.split(' ').map((article) => [article, 'the']),
  ),
  ...Object.fromEntries('al au ao allo alla aan'.split(' ').map((led) => [led, 'at the'])),
  ...Object.fromEntries('zur zum'.split(' ').map((led) => [led, 'to the'])),
  ...Object.fromEntries('del della du des'.split(' ').map((led) => [led, 'of the'])),
  ...Object.fromEntries('vom dal dalla'.split(' ').map((led) => [led, 'from the'])),
});

const capitalAs = (typed: string, english: string): string =>
  /^\p{Lu}/u.test(typed) ? `${english.charAt(0).toUpperCase()}${english.slice(1)}` : english;

interface Found {
  readonly start: number;
  readonly end: number;
  readonly word: string;
}

const wordsIn = (text: string): readonly Found[] =>
  [...text.matchAll(WORD)].map(({ 0: typed, index }) => ({
    start: index,
    end: index + typed.length,
    word: folded(typed),
  }));

/** Whether only blanks stand between two. */
const isBeside = (text: string, left: Found | undefined, right: Found | undefined): boolean =>
  left !== undefined && right !== undefined && text.slice(left.end, right.start).trim() === '';

/** Part of a longer word or of an option, a handle or an address. */
const isPart = (text: string, { start, end }: Found): boolean =>
  /[\d:@#/_.-]/u.test(text.charAt(start - 1)) || /^(?:[\d@_]|[:/-][\p{L}\d])/u.test(text.slice(end, end + 2));

/** Any of its letters. */
const MAY_NAME = new RegExp(
  `${UNPARTED.source}|[^\\0-\\x7f]|${[...ENGLISH.keys()].filter((word) => /^[a-z ]+$/u.test(word)).join('|')}`,
  'iu',
);

const withWordsParted = (text: string): string => {
  const parted = text.replace(UNPARTED, (name) => ` ${OF_UNPARTED.get(name) ?? name} `);
  return parted === text ? text : parted.replace(/\bthe +the\b/giu, 'the').replace(/ +(?=[,.;?!])/gu, '');
};

const NO_WORD = '';

const aroundOf = (text: string, words: readonly Found[], i: number): Around => {
  const [earlier, before, own, after] = [words[i - 2], words[i - 1], words[i], words[i + 1]];
  return {
    before: isBeside(text, before, own) ? (before?.word ?? NO_WORD) : NO_WORD,
    earlier: isBeside(text, earlier, before) ? (earlier?.word ?? NO_WORD) : NO_WORD,
    after: isBeside(text, own, after) ? (after?.word ?? NO_WORD) : NO_WORD,
  };
};

interface Put {
  /** What is put for the text from here on … */
  readonly start: number;
  readonly english: string;
}

/** What stands for a name, and for the article before it; null: it is none. */
const putFor = (text: string, words: readonly Found[], i: number, own: Found): Put | null => {
  const name = ENGLISH.get(own.word);
  if (name === undefined || isPart(text, own)) return null;
  const around = aroundOf(text, words, i);
  if (name === 'sun' && isOfItsEdge(around)) return null;
  if (MEANT.get(own.word)?.(around) === false)
    return own.word === 'sole' ? { start: own.start, english: 'only' } : null;
  const english = capitalAs(text.slice(own.start), name);
  const article = ARTICLES.get(around.before);
  return article === undefined
    ? { start: own.start, english }
    : { start: words[i - 1]?.start ?? own.start, english: `${article} ${english}` };
};

/**
 * @param siteNames of the member and the club: their words are right as they stand
 */
export const withBodiesInEnglish = (text: string, siteNames: readonly string[] = []): string => {
  if (!MAY_NAME.test(text)) return text;
  const kept = new Set(siteNames.flatMap((name) => folded(name).split(/\s+/u)));
  const until = optionsFrom(text);
  const asked = withWordsParted(text.slice(0, until));
  const words = wordsIn(asked);
  let english = '';
  let done = 0;
  for (const [i, own] of words.entries()) {
    const put = kept.has(own.word) ? null : putFor(asked, words, i, own);
    if (put === null) continue;
    english += `${asked.slice(done, Math.max(done, put.start))}${put.english}`;
    done = own.end;
  }
  return `${english}${asked.slice(done)}${text.slice(until)}`;
};

/** The same, but for what is in the names of the member's and the club's sites. */
export const inEnglishNames = (text: string, { siteNames }: { readonly siteNames: readonly string[] }): string =>
  withBodiesInEnglish(text, siteNames);
