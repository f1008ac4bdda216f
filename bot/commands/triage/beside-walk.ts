/**
 * What is plainly not for the walk that waits, though it is no command: talk among people, a wish to begin another walk, another bot's
 * command. Asked before the walk is, so that none of it becomes the member's account of the mount.
 */
import { isProblem, problem } from '../../ground/problem.js';
import { leavesWalk, outcomeSaid, suspectedCause, tellsOfMount } from '../../reading/index.js';
import { assess, mendedBy } from '../../triage/index.js';
import { plainQuestion } from '../asking/plain-question.js';
import { knownFor } from '../asking/plain-reader.js';
import { isLittle } from '../asking/sentence/words.js';
import { talkInWalk, type Talk, type TalkFound, THANKS_FIRST } from '../asking/talk-among-people.js';
import type { Deps, SaidWords, WordsRead, WordsReader } from '../core/command.js';
import { LINE_LIMIT, parseLine, unknownCommand } from '../core/grammar.js';
import { openWalkHere, waitingWalk } from './find-walk.js';
import { STAYS } from './said-of-the-talk.js';
import { outcomeNamed } from './told-at-card.js';
import { isOfTheSkyAlone } from './waiting-words.js';
import type { Walk } from './walk-keeper.js';

const ANSWERS: Readonly<Record<Talk, string>> = {
  hello: `Hello. ${STAYS}`,
  thanks: `You are welcome. ${STAYS}`,
  farewell: 'Good night; cap the tube and park the mount. The walk waits where it was: triage brings it back.',
  wait: `No hurry. ${STAYS}`,
  others: `That seems to be for the others. ${STAYS}`,
};

const ASKS =
  "(?:(?:never mind|leave (?:that|it)|please|ok|okay|so|right|now|can (?:we|i|you)|could (?:we|i|you)|let us|let'?s|i (?:want|need|would like|'?d like) to),? )*";
const ANOTHER = '(?:new|fresh|another|different|separate|second|unrelated)';
const MATTER = '(?:walk|triage|problem|fault|issue|matter|trouble|topic|subject|story)';
const AFRESH = '(?:over|again|afresh|anew|from scratch|from the (?:start|beginning|top))';
const END = '(?: (?:please|now|then|thanks))*[.!]*';

/** "New walk", "let's start over"; what follows a mark is said in the new one: "another problem: the hand controller is dead". */
const BEGINS_ANOTHER: readonly RegExp[] = [
  new RegExp(
    `^${ASKS}(?:(?:start|begin|open|make|do|have|it is|it's|this is|i have|i've got) )?(?:an? |the )?${ANOTHER} ${MATTER}${END}(?:(?:[:;,.!?]| -)\\s*(?<words>\\S[\\s\\S]*))?$`,
    'iu',
  ),
  new RegExp(
    `^${ASKS}(?:(?:start|begin|starting|beginning)(?: all)? ${AFRESH}(?: ${AFRESH})?|restart the walk)${END}$`,
    'iu',
  ),
  new RegExp(
    `^(?:(?:now|ok|and|so|then),? )*(?:(?:now )?(?:to )?(?:something|something completely) (?:else|different)|on another (?:note|matter|subject)|a different (?:thing|question))\\s*(?:[:;,.!?]| -)\\s*(?<words>\\S[\\s\\S]*)$`,
    'iu',
  ),
];

/** The words for the new walk, '' where none are said yet; null where none is wished for. */
const wishForAnother = (text: string): string | null => {
  const found = BEGINS_ANOTHER.map((form) => form.exec(text.trim())).find((match) => match !== null);
  return found === undefined ? null : (found.groups?.['words'] ?? '');
};

const begun = async (deps: Deps, said: SaidWords, words: string, before: Walk | null): Promise<WordsRead> => {
  // "Something else: what is up tonight?"
  const asked = words === '' ? null : plainQuestion(words, await knownFor(deps, said));
  if (asked !== null && (!('line' in asked) || !/^triage\b/u.test(asked.line)))
    return 'line' in asked ? asked : { outcome: asked.outcome };
  const command = words === '' ? null : parseLine(words, deps.commands);
  if (command !== null && !isProblem(command)) return { line: words, isTyped: true };
  const line = `triage do:new ${words}`.trim();
  return before === null ? { line } : { line, note: `The one before stays as it was: triage walk:${before.id}` };
};

/** A word behind "!" that is no command of ours; "!the port is gone" is a sentence all the same. */
const othersCommand = (text: string): string | null => {
  const word = /^\s*!(\p{L}[\p{L}\d_-]*)/u.exec(text)?.[1];
  return word === undefined || isLittle(word.toLowerCase()) ? null : word;
};

/** Whether the walk itself hears it: who wants to stop, and what came of the remedy in hand. */
const isForWalk = (deps: Deps, { state }: Walk, text: string, { unless }: TalkFound): boolean => {
  const model = deps.triage();
  if (unless !== null && tellsOfMount(model.reading, unless.words, unless.often)) return true;
  if (leavesWalk(model.reading, text) !== null || suspectedCause(text) !== null) return true;
  const said = outcomeSaid(model.reading, text);
  // "Connected!! ta" ends a walk whatever it asks.
  return said.isCureAnywhere || (assess(model, state).step.kind === 'try' && outcomeNamed(said) !== null);
};

/** "Thanks, I unplugged the hub": the walk's, but for a question of another kind behind the thanks. */
const afterThanks = async (deps: Deps, said: SaidWords, walk: Walk): Promise<WordsRead> => {
  const asked = plainQuestion(said.text.replace(THANKS_FIRST, ''), await knownFor(deps, said));
  return asked !== null && 'line' in asked && !/^triage\b/u.test(asked.line)
    ? asked
    : { line: `triage walk:${walk.id} ${said.text}` };
};

/** Under another answer the walk's question is a word away. */
const IS_BACK =
  /^\W*(?:(?:ok|right|and|now|go|i am|i'm|im|we are|we're|take me|bring me) )*back(?: (?:again|now|to (?:it|the walk|my walk|the question|work|business)))*\W*$/iu;

export const besideWalk: WordsReader = {
  name: 'beside the walk',
  read: async (deps, said) => {
    const { text, asker, nowUtcMs } = said;
    if (text.length > LINE_LIMIT) return null;
    const others = othersCommand(text);
    if (others !== null) return { outcome: unknownCommand(others, deps.commands, `!${others}`) };
    const wish = wishForAnother(text);
    if (wish !== null) return begun(deps, said, wish, await waitingWalk(deps, asker, nowUtcMs));
    return besideIt(deps, said);
  },
};

const besideIt = async (deps: Deps, said: SaidWords): Promise<WordsRead | null> => {
  const { text, asker, nowUtcMs } = said;
  const talk = talkInWalk(text);
  const thanks = THANKS_FIRST.test(text);
  const isBack = IS_BACK.test(text);
  if (talk === null && !thanks && !isBack) return null;
  // Asked for, one that was left behind comes back as well.
  const left = isBack ? await openWalkHere(deps, asker, nowUtcMs) : null;
  if (left !== null && left.state.rests !== true) return { line: `triage walk:${left.id}` };
  const walk = await waitingWalk(deps, asker, nowUtcMs);
  if (walk === null || (!thanks && isOfTheSkyAlone(text, deps, nowUtcMs))) return null;
  // At a mended end the walk has its own words for talk.
  if (talk !== null && mendedBy(walk.state) === null && !isForWalk(deps, walk, text, talk))
    return { outcome: problem('beside-the-walk', ANSWERS[talk.kind]) };
  return thanks ? afterThanks(deps, said, walk) : null;
};
