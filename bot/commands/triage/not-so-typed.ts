/** What is typed to "Which of these is not so?": the item it names is taken back, whatever way it is named; never affirmed. */
import { wordCountOf } from '../../ground/fold-text.js';
import { isProblem } from '../../ground/problem.js';
import { tableOf } from '../../ground/table-of.js';
import { leavesWalk, readText, takesBack, tellingMarks } from '../../reading/index.js';
import { answerStep, tellText, type TriageModel, type WalkState } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { takenItems, readWords, type TakenItem } from './read-notes.js';
import { changed, type Began, type Turn } from './turn.js';
import { briefOf } from './walk-words.js';

/** Longer than this is a tale of its own. */
const LONGEST = 140;

const ALL_RIGHT =
  /^\W*(?:no(?:ne|thing)?|all|they|it|everything|that)?(?:['’]s| is| are| of (?:it|them|those|these))*(?: all)* ?(?:is |are )?(?:right|correct|fine|true|ok(?:ay)?|good|none|so)\W*$|^\W*(?:none|nothing|no one|neither)(?: of (?:it|them|those|these|that))?\W*$/iu;
const ALL_WRONG =
  /^\W*(?:all|everything|every one|the lot|both)(?: of (?:it|them|those|these))?(?: is| are)?(?: all)?(?: (?:wrong|not (?:so|right|true)|false|off))?\W*$/iu;
const GO_ON = /^\W*(?:(?:ok|never ?mind|forget it|just),? )*(?:go on|carry on|continue|next|move on|leave it)\b/iu;
/** Said of one that stands. */
const AFFIRMS = /\b(?:is|are|was|were) (?:right|correct|true|ok(?:ay)?|fine|so)\b|\b(?:rest|others?) (?:is|are)\b/iu;
const DENIES = /\b(?:not|never|no|wrong|false|nor|untrue)\b|n['’]?t\b/iu;

const ORDINALS: readonly (readonly [RegExp, number])[] = [
  [/\b(?:first|1st|top|upper)\b/iu, 0],
  [/\b(?:second|2nd)\b/iu, 1],
  [/\b(?:third|3rd)\b/iu, 2],
  [/\b(?:fourth|4th)\b/iu, 3],
  [/\b(?:fifth|5th)\b/iu, 4],
  [/\b(?:last|bottom|lowest)\b/iu, -1],
];
/** A number by itself, or after "number". */
const NUMBER =
  /^\W*(?:number |no\.? ?|nr\.? ?|#)?(\d)\b(?!\s*(?:v|volts?|m|min|hours?|degrees?|bit)\b)|\bnumber (\d)\b/iu;

const namedByPlace = (items: readonly TakenItem[], part: string): TakenItem | undefined => {
  const number = NUMBER.exec(part);
  if (number !== null) return items[Number(number[1] ?? number[2]) - 1];
  const found = ORDINALS.find(
    ([pattern]) => pattern.test(part) && /\b(?:one|line|thing|item)\b|^\W*(?:the )?\w+\W*$/iu.test(part),
  );
  return found === undefined ? undefined : items.at(found[1]);
};

/** Words of the listing and of denial name none of them. */
const OF_THE_LIST = new Set('not no right wrong true false so thing one isnt correct read i'.split(' '));
/** What an item's label says counts before what its question asks; and so far the best must be ahead of the next. */
const [BY_QUESTION, AHEAD] = [0.4, 0.15];

/** How far the words name an item, 0 to 1: the share of the item's rarer words that are said. */
export const nearness = (model: TriageModel, items: readonly TakenItem[], part: string): readonly number[] => {
  const { lexicon } = model.reading.sayings;
  const said = [...tellingMarks(lexicon, part)].filter((mark) => !OF_THE_LIST.has(mark));
  if (said.length === 0) return items.map(() => 0);
  const labels = items.map(({ label }) => tellingMarks(lexicon, label));
  const questions = items.map(({ what }) => {
    const check = model.check(what);
    return tellingMarks(lexicon, check === undefined ? what : `${briefOf(check)}. ${check.question}`);
  });
  const share = (marks: ReadonlySet<string>, all: readonly ReadonlySet<string>[]): number =>
    said.reduce((sum, mark) => (marks.has(mark) ? sum + 1 / all.filter((own) => own.has(mark)).length : sum), 0) /
    said.length;
  return items.map(
    (_, i) => share(labels[i] ?? new Set(), labels) + BY_QUESTION * share(questions[i] ?? new Set(), questions),
  );
};

const LEAST_NEAR = 0.12;

/** Systems by the names that people call them. */
const SYSTEM_CALLED = tableOf({
  windows: /\b(?:windows|win ?(?:7|8|10|11)|pc)\b/iu,
  macos: /\b(?:i?macs?|mac ?os|macbooks?|osx|apple)\b/iu,
  linux: /\b(?:linux|ubuntu|debian|raspberry|pi)\b/iu,
  phone: /\b(?:i ?phones?|phones?|tablets?|android|i ?pads?)\b/iu,
});

const systemCalled = (items: readonly TakenItem[], part: string): TakenItem | undefined =>
  items.find(({ what, answer }) => what === 'system' && SYSTEM_CALLED.get(answer)?.test(part) === true);

/** The item of which the words tell: by its place, by what is read of them, by its own words. */
const itemIn = ({ context: { model } }: Began, items: readonly TakenItem[], part: string): TakenItem | undefined => {
  const placed = namedByPlace(items, part) ?? systemCalled(items, part);
  if (placed !== undefined) return placed;
  const near = nearness(model, items, part);
  const [best = 0, next = 0] = [...near].sort((a, b) => b - a);
  if (best >= LEAST_NEAR && best - next >= AHEAD) return items[near.indexOf(best)];
  const { facts, perhaps } = readText(model.reading, part);
  const read = items.filter(({ what }) => [...facts, ...perhaps].some((fact) => fact.what === what));
  if (read.length === 1) return read[0];
  return best >= LEAST_NEAR && read.length === 0 && best > next ? items[near.indexOf(best)] : undefined;
};

/** "2 and android", "windows; and the cable". */
const PARTS = /[,;]|\band\b|&/iu;

const itemsIn = (began: Began, items: readonly TakenItem[], text: string): readonly TakenItem[] => {
  if (AFFIRMS.test(text) && !DENIES.test(text)) return [];
  const whole = itemIn(began, items, text);
  const parts = text.split(PARTS).flatMap((part) => (part.trim() === '' ? [] : (itemIn(began, items, part) ?? [])));
  return parts.length > 1 || whole === undefined ? [...new Set(parts)] : [whole];
};

/** What is said in its place: "its a mac, not windows". Of what is taken back nothing else is read. */
const toldInstead = ({ context }: Began, state: WalkState, text: string, taken: readonly TakenItem[]) => {
  const { model, by } = context;
  const told = tellText(model, state, text, by);
  const isOther = ({ what, answer }: { readonly what: string; readonly answer: string }): boolean =>
    taken.some((item) => item.what === what && item.answer !== answer) && ['path', 'system', 'client'].includes(what);
  const last = told.state.events.at(-1);
  if (last?.kind !== 'text' || !last.facts.some(isOther)) return { state: keptWords(by, state, text), notes: [] };
  const facts = last.facts.filter(isOther);
  const understood = told.read.understood.filter(({ fact }) => isOther(fact));
  return {
    state: {
      ...told.state,
      events: [...told.state.events.slice(0, -1), { ...last, facts, guesses: [], suggests: [] }],
    },
    notes: readWords(model, { ...told.read, understood, perhaps: [] }),
  };
};

/** So few words may name an item by themselves. */
const FEW = 5;
const WHICH = 'Which of them do you mean? A number is enough.';
/** What one does, and what happens, names no item. */
const NEWS =
  /\b(?:i|we|it|its|now|just|also|too|as well|same|still|yes|tried|says?|said|shows?|stays?|works?|drops?|dropped|happens?|goes|came|comes|is|are|was|has|have|had|does|swapped|changed|plugged|rebooted|restarted|hi|hello|hey|ok|thanks)\b/iu;
/** How one speaks of what is listed. */
const OF_A_LIST =
  /\b(?:wrong|false|untrue|incorrect|not (?:so|right|true|correct)|never said|did ?n['\u2019]?t say|the (?:one|thing|line|bit|part) (?:about|with|on|of|that))\b/iu;
/** Of a set-up another word stands in its place: "its a mac". */
const SET_UP: readonly string[] = ['path', 'system', 'client'];
const BESIDE_IT = /\b(?:also|too|as well|now|then|same|still|either|tried|on (?:my|his|her|a|the) \w+(?: \w+)?)\b/iu;

type Told = { readonly what: string; readonly answer: string };

/** It says once more what was read, and takes none of it back: "another cable does not help either". */
const saysAgain = (items: readonly TakenItem[], facts: readonly Told[]): boolean =>
  facts.some(({ what, answer }) => items.some((item) => item.what === what && item.answer === answer));

const tellsOther = (items: readonly TakenItem[], facts: readonly Told[]): boolean =>
  facts.some(
    ({ what, answer }) => SET_UP.includes(what) && items.some((item) => item.what === what && item.answer !== answer),
  );

/** Whether words are said to the list; all else is news, and none of it takes an item back. */
const isOfList = ({ context: { model } }: Began, items: readonly TakenItem[], text: string): boolean => {
  if (takesBack(text) || OF_A_LIST.test(text) || ALL_WRONG.test(text) || namedByPlace(items, text) !== undefined)
    return true;
  if (wordCountOf(text) <= FEW && !NEWS.test(text)) return true;
  const { facts } = readText(model.reading, text);
  if (saysAgain(items, facts)) return false;
  if (DENIES.test(text))
    return facts.every(({ what }) => SET_UP.includes(what) || items.some((item) => item.what === what));
  return tellsOther(items, facts) && !BESIDE_IT.test(text);
};

/** @returns null where the words are no word on the list */
export const takeNotSo = (began: Began, text: string): Turn | null => {
  const { context, walk } = began;
  if (walk.state.asked?.kind !== 'doubt' || text.length > LONGEST) return null;
  const items = takenItems(context.model, walk);
  if (items.length === 0 || leavesWalk(context.model.reading, text) !== null) return null;
  if (GO_ON.test(text)) return { walk, notes: began.notes, show: 'step' };
  if (ALL_RIGHT.test(text)) {
    const right = answerStep(context.model, walk.state, 'read', 'right', context.by);
    return isProblem(right) ? null : changed(began, right, { notes: ['Good; then on.'] });
  }
  if (!isOfList(began, items, text)) return null;
  const taken = ALL_WRONG.test(text) ? items : itemsIn(began, items, text);
  if (taken.length === 0) return { walk, notes: [...began.notes, WHICH], show: 'doubt' };
  const state = taken.reduce<WalkState>((at, { what }) => {
    const next = answerStep(context.model, at, 'not', what, context.by);
    return isProblem(next) ? at : next;
  }, walk.state);
  const instead = toldInstead(began, state, text, taken);
  const gone = `Taken back: ${taken.map(({ label }) => label).join('; ')}.`;
  return changed(began, instead.state, { notes: [gone, ...instead.notes], at: began.before.step });
};
