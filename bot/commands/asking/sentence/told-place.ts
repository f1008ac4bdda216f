/**
 * A place that a member says they are at, whatever follows: "im in leeds, yorkshire", "estoy en quito, que puedo ver". Pure. The words that lead
 * to it are of eight languages (from memory); what follows them has to be a place that the lists have, or it is left to others.
 */
import { isProblem } from '../../../ground/problem.js';
import {
  countryNamed,
  distanceKm,
  foldPlace,
  populationFound,
  resolvePlace,
  type PlaceResolution,
} from '../../../places/index.js';
import { spellerFor } from '../spelling/known-words.js';
import type { Known } from './asked.js';
import { isToldKit } from './told-kit.js';
import { isLittle } from './words.js';

const GREETING =
  "(?:(?:hi|hey|hello|hiya|greetings|good (?:morning|evening|afternoon|day)|hallo|hola|bonjour|bonsoir|ciao|salut|cze[sś][cć]|ol[aá]|ok|so|and|well|sorry|actually|for info|fyi)(?: (?:all|everyone|everybody|folks|there))?[,.! ]+|(?:(?:i'?m|i am|we'?re) )?(?:a )?(?:new here|new member|new to (?:this|astronomy|the club)|newbie(?: here)?|beginner(?: here)?|first (?:post|time here))[,.! ]+)*";
const NAME = "[\\p{L}'-]{2,20}";
const ADVERBS =
  '(?: (?:now|here|currently|out|up|down|just|still|also|tonight|today|staying|living|based|located|observing|camping|gerade|jetzt|heute|hier|nu|hoy|ahora|teraz|agora|hoje|ora|adesso))*';
/** "On my balcony in", "a club near". */
const STANDS_ON = "(?: (?:(?:from|at|on|with) )?(?:my|our|the|an?) [\\p{L}'-]+(?: [\\p{L}'-]+){0,2})?";
const SITE_WORD = '(?:site|place|location|position|spot|observing (?:site|spot|place)|city|town)';

const LEADS: readonly RegExp[] = [
  `(?:(?:i'?m|i am|we'?re|we are|am) ?${ADVERBS}|(?:i|we)${ADVERBS} (?:live|stay|observe|observing|image|camp))${STANDS_ON} (?:based |living |located |observing )?(?:at|in|from|from near|near|outside|close to|just outside)`,
  `(?:observing|currently|based|located|camping|living|here|set up)${ADVERBS} (?:in|at|from|near|from near|outside)`,
  '(?:in|from|at|here in|here from|here at)',
  '(?:greetings|hello|hi|hey|good (?:morning|evening|afternoon)|saludos|gr[uü](?:[sß]|ss)e|saluti) from',
  `(?:i'?m|i am|my name is|(?:my )?name's|this is|it'?s) ${NAME}(?: ${NAME})?,? (?:and )?(?:i'?m |i am |we'?re |i )?(?:live |living |based |observing )?(?:in|from|near|here in)`,
  `${NAME} here,? (?:(?:i'?m|i am|living|based) )?(?:in|from|near)`,
  "(?:(?:i|we|i've|we've|just|recently|have) )*moved(?: house)? to",
  '(?:aktuell|derzeit|momentan|zur ?zeit|gerade|actualmente|ahora|actuellement|attualmente|adesso|momenteel|nu|obecnie|teraz|atualmente|agora)(?: (?:in|bei|en|cerca de|[aà]|pr[eè]s de|a|vicino a|te|w|we|em))+',
  `(?:my|our) ${SITE_WORD}(?: is|'s|:| =)(?: (?:now|in|at|near|close to|outside|just outside))*`,
  '(?:(?:my|our) )?home is(?: (?:in|at|near|now|called))*',
  '(?:my|our) (?:home|house|garden|back ?yard|observatory|balcony|scope|telescope|dob) is (?:in|at|near|outside|close to)',
  `${SITE_WORD} ?[:=]`,
  `(?:set|change) (?:my|our) ${SITE_WORD} to`,
  `(?:ich|wir) (?:bin|wohne|lebe|beobachte|stehe|sind|wohnen|leben|beobachten)${ADVERBS} (?:in|bei|nahe|aus|von|in der n[aä]he von)`,
  '(?:mein|unser) (?:standort|ort|platz|wohnort|beobachtungsort) ist(?: (?:in|bei|nahe))?',
  `(?:estoy|estamos|vivo|vivimos|observo|observamos|soy|somos)${ADVERBS} (?:en|desde|de|cerca de)`,
  '(?:mi|nuestra|nuestro) (?:ubicaci[oó]n|sitio|lugar|ciudad|posici[oó]n) es(?: en| cerca de)?',
  "(?:je suis|nous sommes|on est|j'habite|j'observe|nous observons|nous habitons)(?: (?:pr[eè]s d[e'u]|[aà]|au|en|depuis|de|dans))+",
  '(?:mon|ma|notre) (?:site|lieu|position|ville) est(?: (?:[aà]|pr[eè]s de|en))?',
  `(?:sono|siamo|abito|abitiamo|vivo|viviamo|osservo|osserviamo)${ADVERBS} (?:a|ad|in|da|vicino a)`,
  '(?:il mio|la mia) (?:sito|luogo|posizione|citt[aà]) [eè](?: a| in)?',
  `(?:ik|wij|we) (?:ben|woon|sta|observeer|kijk|zijn|wonen)${ADVERBS} (?:in|bij|vanuit|uit|te)`,
  '(?:mijn|onze) (?:locatie|plaats|plek|stad) is(?: in| bij)?',
  `(?:jestem|jeste[sś]my|mieszkam|mieszkamy|obserwuj[eę]|obserwujemy)${ADVERBS} (?:w|we|z|ze|ko[lł]o|pod|niedaleko)`,
  'moja lokalizacja to',
  `(?:estou|estamos|moro|moramos|vivo|observo)${ADVERBS} (?:em|no|na|de|perto de)`,
  '(?:(?:o )?meu|(?:a )?minha) (?:local|localiza[cç][aã]o|cidade|lugar|posi[cç][aã]o) [eé](?: em| no| na)?',
].map((lead) => new RegExp(`^${GREETING}(?:${lead}) (?<rest>\\S.*)$`, 'iu'));
/** These alone may lead to anything: a greeting has to stand before them, or "here" behind the place. */
const BARE = /^(?:in|from|at)\b/iu;
const IS_HERE = /\bhere\b/iu;

/** What stands behind a place and says no more. */
const SAYS_NO_MORE =
  /^(?:(?:and|with|in|on|at|my|the|a|it'?s|city|town|roof\w*|garden|balcony|backyard|terrace|field|dark|darkish|bright|suburb\w*|bortle|\d|sk(?:y|ies)|site|club|area|region|county|here|now|tonight|today|this|week|weekend|month|currently|usually|always|mostly|please|pls|thanks|thx)\b[ ,.]*)*$/iu;

const LONGEST_PLACE = 5;
const LEAST_POPULATION = 5000;

export interface ToldPlace {
  /** As the site rooms read it. */
  readonly place: string;
  /** More than one is called so. */
  readonly isAmbiguous: boolean;
  /** What was said behind it, '' where that is no more than filling. */
  readonly rest: string;
  /** What was told of their telescope and mount. */
  readonly gear?: string;
  /** What was named, where no list has it: the place is the town beside it; null or left out: the place itself. */
  readonly beside?: string | null;
}

interface FoundPlace extends ToldPlace {
  /** Where it ends in what was read; null: something else stands before it. */
  readonly end: number | null;
}

/** Polish names bend after these: "w krakowie", "w gdańsku". */
export const bent = (name: string, lead: string): readonly string[] =>
  /(?<!\p{L})(?:w|we|z|ze|ko[lł]o|pod|niedaleko) $/iu.test(lead) && !/\bin $/iu.test(lead)
    ? [name, name.replace(/(?:ie|iu|ia|u|a)$/u, ''), name.replace(/ie$/u, 'a'), name.replace(/y$/u, 'a')]
    : [name];

/** A word of every day, or one that we know, and so no name. */
const isWord = (word: string, known: Known): boolean => isLittle(word) || spellerFor(known).isKnown(word);

/** So near where somebody stands a village is spoken of as often as a town. */
const NEAR_KM = 200;

/** @param isSurely a capital, or a telescope told behind it: no word of every day is meant */
const isFound = (found: PlaceResolution, name: string, isSurely: boolean, known: Known): boolean => {
  if (!isProblem(found) && found.isQualified) return true;
  const population = populationFound(found);
  if (population === null || isWord(name, known)) return false;
  const { usual = null } = known;
  const isNear = !isProblem(found) && usual !== null && distanceKm(found.place, usual) < NEAR_KM;
  return population >= LEAST_POPULATION || isSurely || isNear;
};

/** The longest run of words that is a place, and where it ends. */
const placeIn = (rest: string, lead: string, known: Known): FoundPlace | null => {
  const words = [...rest.matchAll(/[^\s,.;!?]+/gu)];
  if (isLittle(words[0]?.[0].toLowerCase() ?? '')) return null;
  for (let count = Math.min(LONGEST_PLACE, words.length); count >= 1; count--) {
    const last = words[count - 1];
    if (last === undefined) continue;
    const end = last.index + last[0].length;
    const text = rest.slice(0, end);
    if (/[.;!?]|\d/u.test(text)) continue;
    const behind = rest.slice(end).replace(/^[\s,.;!]+/u, '');
    const isSurely = /^\p{Lu}/u.test(text) || isToldKit(behind);
    for (const name of bent(text, lead)) {
      // A name of two words may have its region behind a comma that lists do not have: "leeds, yorkshire".
      const found = resolvePlace(known.places(), name, known.usual ?? null);
      if (isFound(found, name.toLowerCase(), isSurely, known))
        return { place: name, isAmbiguous: isProblem(found), rest: behind, end };
    }
  }
  return null;
};

/** "Germany, in Köln": the town first. */
const COUNTRY_FIRST = /^(\p{L}[\p{L} ]{2,20}), ?(?:in|near|close to|at|bei|en|nahe) (\p{L}[^,.;!?]*)/u;
const townFirst = (rest: string): string =>
  rest.replace(COUNTRY_FIRST, (all, country: string, town: string) =>
    countryNamed(foldPlace(country)) === null ? all : `${town}, ${country}`,
  );

/** A further sentence of the same people or their telescope, in which nothing is asked and nothing fails. */
const REMARK = /^(?:and |also |just )?(?:i|i'm|we|we're|my|our|it'?s|this is|with|an?|\d[\d.]*)\b/iu;
const MORE_THAN_REMARK =
  /\?|n't\b|\b(?:what|when|where|which|how|why|who|can|could|should|would|not|no|error|fault|problems?|trouble|stuck|lost|wrong|fail\w*|connect\w*|align\w*|slew\w*|goto|track\w*|drift\w*|show|tell|want|need|looking|tonight|remind\w*|see)\b/iu;
const isRemark = (text: string): boolean => REMARK.test(text) && !MORE_THAN_REMARK.test(text);

/** "La Serena, Chile. 10 inch scope": a place with where it lies, alone in its sentence. */
const FIRST_SENTENCE = /^(\p{L}[\p{L}' -]{1,30}, ?\p{L}[\p{L} ]{2,20})[.;] +(\S.*)$/u;
const toldFirst = (text: string, known: Known): ToldPlace | null => {
  const [, place, rest] = FIRST_SENTENCE.exec(text) ?? [];
  if (place === undefined || rest === undefined || !isRemark(rest)) return null;
  const found = resolvePlace(known.places(), place);
  return isProblem(found) || !found.isQualified ? null : { place, isAmbiguous: false, rest: '', gear: rest };
};

/** "Yorkshire" behind "leeds," is where that lies, though no list has it. */
const ONE_MORE_NAME = /^\p{L}[\p{L}'-]*(?: \p{L}[\p{L}'-]*)?$/u;

/** Whether what stands behind a place is filling, where it lies, or a remark: `typed` has it with the marks before it. */
const saysNoMore = (words: string, typed: string, known: Known): boolean => {
  if (SAYS_NO_MORE.test(words) || (/^\s*[.;!]/u.test(typed) && isRemark(words))) return true;
  if (!ONE_MORE_NAME.test(words) || words.split(' ').some((word) => isLittle(word))) return false;
  // "Penzance Cornwall": no word of ours, so where it lies.
  return (
    /^,/u.test(typed.trim()) ||
    !words
      .toLowerCase()
      .split(' ')
      .some((word) => isWord(word, known))
  );
};

/** "Nether Wibble near Hexham": a village that no list has, and the town beside it. */
const BESIDE_TOWN =
  /^(?<name>\p{L}[\p{L}'-]+(?: \p{L}[\p{L}'-]+){0,3}),? (?:(?:which is|it's|it is|a village|a hamlet|up|down) )?(?:just |right |quite |very )?(?:near(?: to)?|close to|outside(?: of)?|by|beside|next to|not far from|north of|south of|east of|west of|(?:\d+|a few|some) (?:km|kilomet\w+|miles?) (?:from|\w+ of)) (?<town>\p{L}.*)$/iu;
const besideTown = (rest: string, before: string, known: Known): FoundPlace | null => {
  const { name, town } = BESIDE_TOWN.exec(rest)?.groups ?? {};
  if (name === undefined || town === undefined) return null;
  // "A field near Hexham" names no village, and one that is known is itself the place.
  const isName = !name
    .toLowerCase()
    .split(' ')
    .every((word) => isWord(word, known));
  const isOfWords = /^(?:a|an|the|my|our|some|here|just)\b/iu.test(name);
  const found = isName && !isOfWords ? placeIn(town, `${before} near `, known) : null;
  return found === null ? null : { ...found, beside: name, end: null };
};

/** "Got a 4 inch refractor here in corbridge": the telescope first. */
const KIT_FIRST =
  /^(?<kit>.{6,60}?),? (?:(?:and )?(?:i'?m |i am |we'?re |i live |we live |live |living |based |observing |out |up |down )?here )?(?:and )?(?:i'?m |i am |i live |we live |living |based |observing )?(?:in|at|near|from|outside) (?<rest>\p{L}[\p{L}' ,-]+)$/iu;
const kitFirst = (text: string, known: Known): ToldPlace | null => {
  const { kit, rest } = KIT_FIRST.exec(text)?.groups ?? {};
  if (kit === undefined || rest === undefined || !isToldKit(kit) || !TELLS_KIT.test(kit)) return null;
  const found = placeIn(rest, 'in ', known);
  return found === null || found.rest !== ''
    ? null
    : { place: found.place, isAmbiguous: found.isAmbiguous, rest: '', gear: kit };
};
const TELLS_KIT =
  /^(?:(?:hi|hello|hey|ok|so|and|well)[, ]+)*(?:(?:i|we|i'?ve|we'?ve)\b|got\b|have\b|using\b|my\b|with\b|an?\b|new\b|\d)/iu;

/** "Based in otterburn, 200mm newtonian": no list has it, and the answer says so. */
const UNKNOWN_WITH_KIT =
  /^(?<name>\p{L}[\p{L}'-]+(?: \p{L}[\p{L}'-]+){0,2}?)(?:,| with\b| w\b| and\b| using\b)+ (?<kit>.+)$/iu;
const unknownWithKit = (rest: string, known: Known): ToldPlace | null => {
  const { name, kit } = UNKNOWN_WITH_KIT.exec(rest)?.groups ?? {};
  if (name === undefined || kit === undefined || !isToldKit(kit)) return null;
  const isName = !name
    .toLowerCase()
    .split(' ')
    .some((word) => isWord(word, known));
  return isName ? { place: name, isAmbiguous: true, rest: '', gear: kit } : null;
};

/** What stands behind words that lead to a place. */
const toldBehind = (before: string, rest: string, known: Known): ToldPlace | null => {
  const isBare = BARE.test(before);
  const found = (isBare ? null : besideTown(rest, before, known)) ?? placeIn(rest, before, known);
  if (found === null) return isBare ? null : unknownWithKit(rest, known);
  if (isBare && !IS_HERE.test(found.rest) && !isToldKit(found.rest)) return null;
  const told = { place: found.place, isAmbiguous: found.isAmbiguous, beside: found.beside ?? null };
  if (isToldKit(found.rest)) return { ...told, rest: '', gear: found.rest };
  const behind = found.end === null ? found.rest : rest.slice(found.end);
  return { ...told, rest: saysNoMore(found.rest, behind, known) ? '' : found.rest };
};

/** Null where none is told so, or what is told is none. */
export const toldPlace = (typed: string, known: Known): ToldPlace | null => {
  const text = typed
    .replace(/[’‘`]/gu, "'")
    .replace(/[?!.\s]+$/u, '')
    .trim();
  for (const lead of LEADS) {
    const rest = lead.exec(text)?.groups?.['rest'];
    const told =
      rest === undefined ? null : toldBehind(text.slice(0, text.length - rest.length), townFirst(rest), known);
    if (told !== null) return told;
  }
  return toldFirst(text, known) ?? kitFirst(text, known);
};
