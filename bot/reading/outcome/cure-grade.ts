/**
 * How far words may be trusted that some reader takes for a cure. A walk ends on them only where a clause says by itself that what
 * failed works now, and nothing around it tells of another's gear, of a time, of a trouble or of a doubt. The rest is asked.
 */
import { toldIn } from './question-beside.js';
import { withoutOutAndIn } from './out-and-in.js';
import { rememberLines } from '../lately.js';
import { curedByDeed, plainBreath, tellsSuccess } from './cured-by-deed.js';
import { doingsNow, type Doing } from './does-what-failed.js';
import { hedgesCure } from './hedged-cure.js';
import { heldFor } from './held-for.js';
import { isNoGoodNow } from './no-good-now.js';
import { wasGoodThen } from './of-another-way.js';
import { isPlainCure } from './plain-cure.js';
import { STAR, TROUBLES } from './word-kinds.js';

/** `sure`: it ends a walk; `open`: it is asked whether it works now; `none`: of another's gear, of what comes and goes, or of a new trouble. */
export interface CureGrade {
  readonly grade: 'sure' | 'open' | 'none';
  /** What the mount is said to do; empty where it is said of the whole. */
  readonly doings: ReadonlySet<Doing>;
}

const BREATHS =
  /[.,](?!\d)|[;!?\n\u2026]+|\s[-\u2013\u2014]+\s|[()]|\b(?:and|so(?! (?:much|far|that))|n|because|cos|but|since then)\b|(?=\b(?:now|then) (?:it|its|it['\u2019]s|she|the|my|mine|everything|all|both|we|i)\b)/iu;

/** Thought, hoped, or so until further notice; asked. */
const DOUBTED =
  /\?|\b(?:hop(?:e|ing|ed)|would|so far|for now|for the moment|touch wood|fingers crossed|tr(?:y|ying) (?:it|that|this|again)|will (?!not)|gonna|going to|he says|she says|they say|supposed)\b/iu;
/** It hangs on something, or was so once. */
const BOUND =
  /\b(?:if|unless|until|till|whenever|when|while|as long as|only|except|almost|nearly|half|partly|barely|better|used to|yesterday|last (?:night|week|time|year|month)|before|earlier|as (?:root|admin\w*)|with sudo|demo|simulat\w*|in theory|into|opposite|backwards|on and on|slow(?:ly)?|every (?:second|other)|overshoots|(?:the )?first (?:star|target|one|goto|slew|object)|(?:the |my )?(?:camera|meter|handset|guider|light|lamp) (?:is|reads|works)|(?:with|from|by|on) (?:the |my )?(?:hand ?set|hand controller|keypad|buttons?|arrows?|keys?))\b/iu;
const NOT = "(?:not|never|nothing|cannot|no one|\\w+n['\u2019]t|dont|doesnt|didnt|wont|cant|isnt|arent)";
/** What is wrong still, or now. */
const TROUBLE_NOW = new RegExp(
  `\\b(?:still|says?|${NOT}|no|${TROUBLES}|denied|fails?|failed|refuses?|same|worse|different|stuck|silent|frozen|wrong|odd|weird|although|though|however|yet|out|off|garbage|rubbish|ignores?|the (?:rest|other)s?)\\b`,
  'iu',
);
/** Ahead of the cure, what was wrong may be told; what is so still may not. */
const TROUBLE_AHEAD = new RegExp(
  "\\b(?:still|now (?:it )?says|(?:does|is|are|do|will|can)(?: not|n['\u2019]?t)|wont|cant|cannot|refuses|keeps)\\b",
  'iu',
);
/** These take nothing back. */
const HARMLESS = new RegExp(
  [
    `\\b(?:no|not (?:a|one)|without(?: a| any| one)?|zero|never (?:a|one))(?: single| more| other)* (?:${TROUBLES}|need|idea|drama|worries|doubt|wonder)\\b`,
    `\\b(?:the |that |those |all )?(?:\\w+ )?(?:${TROUBLES}|message|no (?:response|reply|answer)|drift\\w*|offset)s? (?:is |are |has |have )?(?:all |now )?(?:gone|over|away|disappeared|vanished)\\b`,
    "\\b(?:do ?n['\u2019]?t|do not) (?:ask|know|understand)(?: me)?(?: why| how)?\\b|\\bstill (?:had|open(?!s)|clear|in|running|logged|parked|set|(?:dead )?cent|con+ec?ted|linked|on(?:line)?|up|running|guiding|tracking|there|alive|going)\\b|\\bnever ?mind\\b|\\bno longer\\b|\\bnot (?:once|one|a single)\\b|\\b(?:can ?not|can['\u2019]?t|cant) believe\\b|\\bwho knew\\b|\\boff (?:it|she|he|we) (?:goes|went|go)\\b|\\bnot (?:from|by|because of|due to) (?:it|that|this|yours)\\b|\\b(?:but )?not (?:that|this|it)$|\\bnot (?:moved|budged|drifted|left|lost)\\b",
    "\\b(?:has|have|did|does|do|is|are)(?: not|n['\u2019]?t) (?:\\w+ ){1,3}?(?:any ?more|any longer|again|once|since)\\b|\\b(?:hasnt|doesnt|didnt|havent|isnt) (?:\\w+ ){0,3}?(?:moved|any ?more|any longer|again|once|since)\\b",
    "\\b(?:was|were|had(?: been)?|turned out)\\b[^|]*|\\bas (?:you|it|the card) (?:said|says)\\b|\\bsays? (?:it is |its |it['\u2019]?s )?(?:connected|online)\\b|\\bwrong (?:\\w+ )?(?:port|lead|cable|socket|plug|way|time|date|zone|network|address|speed|one)\\b|\\bno (?:more|problem)\\b",
  ].join('|'),
  'giu',
);
/** It is so since. */
const NOW =
  /\b(?:now|again|at (?:long )?last|finally|since|first (?:time|go|try)|straight (?:away|off|up)|at once|right away|immediately|this time|instantly|any ?more|any longer|no longer|every time|twice|all (?:night|evening|good)|ever since|good as new|after (?:that|this|all)|gone)\b|!|\b(?:thanks?|thank you|thx|ta|ty|cheers|danke|merci|gracias|grazie|ya+y|hoo?ra+y|hurrah?|woo ?hoo|brilliant|great|lovely|wow|genius|bingo|phew|bless|legend|star|duh|doh)\b/iu;
/** That it is over needs no "now". */
const OVER =
  /\b(?:fixed|sorted|solved|cured|mended|cracked|did (?:it|the (?:trick|job))|(?:that|it) was (?:it|that|the \w+)|success|job done|bingo|up and running|back to normal|in business|came (?:alive|to life)|woke (?:right )?up|that worked|off (?:it|she|he|we) (?:goes|went|go)|there (?:it|she|he) is|(?:is|are|we['\u2019]?re|i['\u2019]?m|i am|we are) in)\b|^\W*in\W*$/iu;
/** So short it can be of nothing else. */
const BARE_WORDS = 4;

/** Said of anything that works at last. */
const AWAY = /\b(?:off|away|there) (?:it|she|he|we) (?:goes|went|go)\b/u;

const MOTION = '(?:gotos?|slew(?:s|ing)?|pointing)';
/** Said of a part alone it is no word on the whole. */
const OF_PART: readonly (readonly [RegExp, Doing])[] = [
  [new RegExp(`^(?:the |my |and )*${MOTION}\\b`, 'u'), 'lands'],
  [/^(?:the |my |and )*tracking\b/u, 'stays'],
  [/^(?:the |my |and )*(?:connection|link)\b/u, 'link'],
];
const LINK_VERB =
  /\b(?:conn?ect\w*|online|linked|talk\w*|answers?|answering|replies|responds?|reads? the position|shows? the position)\b/u;
const WHOLE =
  /\b(?:works?|working|worked|fixed|sorted|solved|cured|mended|fine|good|great|perfect\w*|ok|okay|well|did it|the trick|was it|success|normal|goes|runs?|running|done)\b/u;

/** "The error is gone", "no more drops". */
const GONE = new RegExp(
  `\\b(?:${TROUBLES}|message|warning|box|no (?:response|reply|answer)|drift\\w*|offset|it)s? (?:is |are |has |have )?(?:all |now )?(?:gone|disappeared|vanished)(?: now| away)?$|^(?:and )?(?:no|not (?:a|one)|zero|without(?: a| any| one)?)(?: single| more)* (?:${TROUBLES}|drift\\w*|access denied|no response)(?: .*)?$`,
  'u',
);
/** Whole rows of a member's own: "conn ok", "all ok", "it lives". */
const saysSuccess = (breath: string): boolean =>
  GONE.test(breath) || tellsSuccess(breath) || doingsNow(breath).size > 0 || isPlainCure(breath) || heldFor(breath);

const doingsOf = (breath: string): readonly Doing[] => {
  const ofPart = OF_PART.find(([pattern]) => pattern.test(breath))?.[1];
  if (ofPart !== undefined) return [ofPart];
  if (AWAY.test(breath)) return [];
  const doings = [...doingsNow(breath)];
  if (doings.length > 0) return doings;
  return LINK_VERB.test(breath) && !WHOLE.test(breath) ? ['link'] : [];
};

const NO_DOINGS: ReadonlySet<Doing> = new Set();
const STARS = new RegExp(`\\b${STAR}\\b`, 'u');

/** What the hand controller does says where the trouble is not, unless it was its own. */
const OF_THE_HANDSET =
  /^\W*(?:(?:yes|yep|yeah|well|and|but|ok(?:ay)?|oh)\W+)*(?:the |my |our )?(?:hand ?set|hand ?box|hand ?control(?:ler)?|keypad|hand ?paddle|paddle|remote)\b/iu;

/** @param isSo which of the breaths say that it goes */
const isSureOf = (text: string, breaths: readonly string[], isSo: readonly boolean[]): boolean => {
  if (DOUBTED.test(text) || hedgesCure(text) || (OF_THE_HANDSET.test(text) && !NOW.test(text))) return false;
  const at = isSo.indexOf(true);
  const left = breaths.map((breath) => breath.replace(HARMLESS, ' '));
  const isBound = left.some((breath, i) => isSo[i] === true && BOUND.test(breath));
  const isSpoiled = left.some((breath, i) => (i < at ? TROUBLE_AHEAD : TROUBLE_NOW).test(breath));
  if (isBound || isSpoiled) return false;
  const words = text.trim().split(/\s+/u).length;
  const isDone = breaths.slice(0, at).some((breath) => breath.includes(' ')) || curedByDeed(text).isDone;
  const isBare = words <= BARE_WORDS && (WHOLE.test(text) || LINK_VERB.test(text));
  return NOW.test(text) || OVER.test(text) || isBare || isDone || heldFor(text) || STARS.test(text);
};

const gradeIn = (text: string): CureGrade => {
  if (isNoGoodNow(text) || wasGoodThen(text)) return { grade: 'none', doings: NO_DOINGS };
  const breaths = text
    .split(BREATHS)
    .map(plainBreath)
    .filter((breath) => breath !== '');
  const isSo = breaths.map(saysSuccess);
  if (!isSo.includes(true) || !isSureOf(text, breaths, isSo)) return { grade: 'open', doings: NO_DOINGS };
  const told = breaths.filter((_, i) => isSo[i]).map(doingsOf);
  // One word on the whole is one on each part of it.
  const doings = told.some((one) => one.length === 0) ? NO_DOINGS : new Set(told.flat());
  return { grade: 'sure', doings };
};

export const cureGrade = rememberLines((text: string) => gradeIn(withoutOutAndIn(toldIn(text))));
