/** The plainest questions of the sky in other languages, from knowledge/asked-abroad.yaml, put into English: what is not there is not guessed. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { foldWords } from '../../ground/fold-text.js';
import { once } from '../../ground/once.js';
import { projectRoot } from '../../ground/project-root.js';
import { isNamed, resolveTarget, type Catalogue } from '../../catalogue/index.js';

const words = z.record(z.string(), z.array(z.string().regex(/^[a-z0-9 ]+$/u)).min(1));
const schema = z.strictObject({
  names: words,
  besides: words,
  follows: z.record(z.string(), z.array(z.tuple([z.string().min(4), z.string().min(4)])).min(1)),
  asks: z.record(z.string(), z.array(z.tuple([z.string().min(6), z.string().min(6)])).min(1)),
});

type Words = readonly (readonly [said: string, english: string])[];

/** The longest first: "heute nacht" before "heute". */
const wordsIn = (given: z.infer<typeof words>): Words =>
  Object.entries(given)
    .flatMap(([english, said]) => said.map((one) => [one, english] as const))
    .sort(([a], [b]) => b.length - a.length);

const ARTICLES = '(?:(?:der|die|das|den|dem|el|la|los|las|le|les|l|il|lo|gli|de|het|een|o|a|os|as|planeta|planet) )*';
const LED_BY_ARTICLES = new RegExp(`^${ARTICLES}`, 'u');
const TARGET = `${ARTICLES}(?<target>[a-z0-9]+(?: [a-z0-9]+){0,3}?)`;

/** Reads the file. Throws an Error that names it and what is wrong with it. */
export const readAskedAbroad = (file: string) => {
  const parsed = schema.safeParse(parse(readFileSync(file, 'utf8')));
  if (!parsed.success) throw new Error(`${file}: ${z.prettifyError(parsed.error)}`);
  const { names, besides, follows, asks } = parsed.data;
  const forms = Object.entries(asks)
    .flatMap(([language, pairs]) => pairs.map(([like, says]) => ({ language, like, says })))
    .map(({ language, like, says }) => ({
      language,
      like: new RegExp(`^${like.replace('TARGET', TARGET).replace('OTHER', TARGET.replace('target', 'other'))}$`, 'u'),
      says,
    }));
  const followed = Object.values(follows)
    .flat()
    .map(([like, says]) => ({ like: new RegExp(`^${like}$`, 'u'), says }));
  return { names: wordsIn(names), besides: wordsIn(besides), followed, forms };
};

const shipped = once(() => readAskedAbroad(path.join(projectRoot(), 'knowledge', 'asked-abroad.yaml')));

const GREETING =
  /^(?:(?:hallo|hola|bonjour|bonsoir|salut|ciao|hoi|czesc|ola|hi|hello|hey|guten abend|buenas noches|buonasera|boa noite|dobry wieczor|bitte|y|und|et|dann|oraz|por favor|per favore|prego|prosze) )+/u;
/** "Um 22 Uhr", "a las 22", "à 22h", "alle 22", "o 22", "às 22 horas". */
const AT_HOUR =
  /\b(?:um|a las|a|alle|om|o|as)? ?(\d{1,2})(?: (\d\d))? ?(?:uhr|h|horas?|heures?|uur)\b|\b(?:a las|alle|um) (\d{1,2})\b/u;
/** "Mit 8 Zoll", "de 8 pulgadas", "de 200 mm". */
const APERTURE = /\b(\d{1,2}) ?(?:zoll|pulgadas|pouces|pollici|inch|cali|polegadas)\b/u;
const MILLIMETRES = /\b(\d{2,3}) ?mm\b/u;

const besidesIn = (plain: string): readonly string[] => {
  const { besides } = shipped();
  const first = besides.find(([said]) => ` ${plain} `.includes(` ${said} `) && BY_NIGHT.test(englishOf(said)));
  // "Mañana por la mañana" is one day and its morning.
  const rest = first === undefined ? ` ${plain} ` : ` ${plain} `.replace(` ${first[0]} `, ' ');
  const others = besides.filter(([said, english]) => rest.includes(` ${said} `) && !BY_NIGHT.test(english));
  const [, hour, minute, alone] = AT_HOUR.exec(plain) ?? [];
  const inches = APERTURE.exec(plain)?.[1];
  const mm = MILLIMETRES.exec(plain)?.[1];
  const at = hour ?? alone;
  return [
    ...(first === undefined ? [] : [first[1]]),
    ...others.map(([, english]) => english),
    ...(at === undefined ? [] : [`at ${at}:${minute ?? '00'}`]),
    ...(inches === undefined ? [] : [`with ${inches} inch`]),
    ...(inches === undefined && mm !== undefined ? [`with ${mm} mm`] : []),
  ];
};
const BY_NIGHT = /^(?:tonight|this evening|tomorrow|tomorrow night|tomorrow morning|now)$/u;
const englishOf = (said: string): string => shipped().besides.find(([one]) => one === said)?.[1] ?? '';

const without = (text: string, besides: Words): string =>
  besides
    .reduce((left, [said]) => ` ${left} `.replace(` ${said} `, ' ').trim(), text)
    .replace(AT_HOUR, ' ')
    .replace(/ (?:um|om|o|a|mit|con|avec|met|z|przez|com)$/u, '')
    .trim();

/** The English name of a target; null where neither the list nor the catalogue has it. */
const nameOf = (said: string, catalogue: Catalogue): string | null => {
  const { names, besides } = shipped();
  for (const name of [said, without(said, besides)]) {
    const english = names.find(([one]) => one === name)?.[1];
    if (english !== undefined) return english;
    if (isNamed(resolveTarget(catalogue, name))) return name;
  }
  return null;
};

/** "Im Teleskop", "con el telescopio": with what is said elsewhere. */
const WITH_TUBE =
  /\b(?:im|mit|durchs?|con|col|al|a|avec|au|met|de|w|com|no|nel|in|den|dem|der|el|un|il|le|la|het|o|mon|mi|mio|mein\w*|my )?(?: (?:dem|den|el|un|il|le|la|het|o|mon|mi|mio|meinem|mijn))? ?(?:teleskop\w*|telescop\w*|fernrohr)\b/u;
const LONGEST = 120;

/** Folding leaves these two as they are. */
const foldedAbroad = (text: string): string => foldWords(text.replace(/[łŁ]/gu, 'l').replace(/ß/gu, 'ss'));

/** The question in English; null where it is none of these. */
export const askedAbroad = (text: string, catalogue: Catalogue): string | null =>
  inEnglish(text, catalogue)?.english ?? null;

export interface InEnglish {
  readonly english: string;
  /** In which it was asked, by its code of two letters. */
  readonly language: string;
}

export const inEnglish = (text: string, catalogue: Catalogue): InEnglish | null => {
  if (text.length > LONGEST) return null;
  const plain = foldedAbroad(text).replace(GREETING, '');
  const bare = without(plain, shipped().besides).replace(WITH_TUBE, ' ').replace(/\s+/gu, ' ').trim();
  const said =
    formOf(plain, catalogue) ??
    (bare === plain ? null : (formOf(bare, catalogue) ?? targetAlone(plain, bare, catalogue)));
  return said === null ? null : { ...said, english: [said.english, ...besidesIn(plain)].join(' ') };
};

/** "Andromeda stasera", "m31 ce soir": a name, and when or with what. */
const targetAlone = (plain: string, bare: string, catalogue: Catalogue): InEnglish | null => {
  if (besidesIn(plain).length === 0) return null;
  const name = nameOf(bare.replace(LED_BY_ARTICLES, ''), catalogue);
  return name === null ? null : { english: name, language: ANY_LANGUAGE };
};
/** Its few words are of several. */
const ANY_LANGUAGE = '';

const formOf = (plain: string, catalogue: Catalogue): InEnglish | null => {
  for (const { like, says, language } of shipped().forms) {
    const found = like.exec(plain);
    if (found === null) continue;
    const [name, other] = ['target', 'other'].map((group) => {
      const said = found.groups?.[group];
      return said === undefined ? '' : nameOf(said, catalogue);
    });
    if (name != null && other != null)
      return { english: says.replace('TARGET', name).replace('OTHER', other), language };
  }
  return null;
};

const AND_ABROAD =
  /^(?:und|et|e|ed|y|en|i|ou|oder|o|aber|pero|mais|ma) (?:dann |luego |puis |poi |was ist mit |wie ist es mit |que tal |quen est il de |che ne dici di )?/u;
const HOUR_LATER =
  /^(?:(?:in )?eine stunde spater|una hora (?:mas tarde|despues)|une heure (?:plus tard|apres)|un ora (?:dopo|piu tardi)|een uur later|uma hora (?:mais tarde|depois))$/u;

/** "Wann geht er unter", "à quelle heure se lève-t-il", "¿a qué hora sale?": of what was asked before. */
const itAbroad = (plain: string): string | null => {
  const bare = without(plain, shipped().besides);
  const says = shipped().followed.find(({ like }) => like.test(plain) || like.test(bare))?.says;
  return says === undefined ? null : [says, ...(bare === plain ? [] : besidesIn(plain))].join(' ');
};

/** "Und morgen?", "et Mars ?", "y una hora más tarde": what is led in as a follow-up, in English; null where it is none of these. */
export const followedAbroad = (text: string, catalogue: Catalogue): string | null => {
  if (text.length > MOST_IN_FOLLOW_UP) return null;
  const plain = foldedAbroad(text);
  const lead = AND_ABROAD.exec(plain)?.[0];
  const ofIt = itAbroad(plain.slice(lead?.length ?? 0));
  if (ofIt !== null) return ofIt;
  if (lead === undefined) return whenAlone(plain);
  // "Morgen" alone is tomorrow, elsewhere it may be the morning.
  const rest = plain.slice(lead.length).replace(/^morgen$/u, 'morgen abend');
  if (HOUR_LATER.test(rest)) return 'and one hour later';
  const bare = without(rest, shipped().besides);
  if (bare === '') return `and ${besidesIn(rest).join(' ')}?`;
  const name = nameOf(rest.replace(LED_BY_ARTICLES, ''), catalogue);
  return name === null ? null : ['what about', name, ...besidesIn(rest)].join(' ');
};
const MOST_IN_FOLLOW_UP = 50;

/** "Um 4 Uhr?", "stasera?": nothing but an hour, a night or what one looks with; null where more is said. */
const whenAlone = (plain: string): string | null => {
  const words = plain.replace(/^morgen$/u, 'morgen abend');
  const said = without(words, shipped().besides) === '' ? besidesIn(words) : [];
  return said.length === 0 ? null : `and ${said.join(' ')}?`;
};
