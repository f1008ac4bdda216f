/** A plain question back on the step in hand, which deserves the how-to and not the menu again. */
import { asksBack, outcomeSaid, type Reading, type Vocabulary } from '../../reading/index.js';

/** Longer than this is a story, whatever it asks. */
const LONGEST = 120;

/** Where to look is asked by the names of what is there: "how do I get to the device manager" tells of a system. */
const SURROUNDINGS: readonly string[] = ['system', 'path', 'client'];

/** Of words that told nothing of how the mount does. */
export const asksOfStep = (vocabulary: Vocabulary, text: string, { by, facts }: Reading): boolean =>
  by === 'words' &&
  facts.every(({ what }) => SURROUNDINGS.includes(what)) &&
  text.length <= LONGEST &&
  (asksBack(vocabulary.sayings.lexicon, text) || outcomeSaid(vocabulary, text).what === 'asks-back');

/** Said in place of "I could not read a sure sign". */
export const ASKED_BACK = {
  notes: ['Here is how, once more. “Not sure” or “Could not do it” is an answer too.'],
  choices: [],
};

const ASKS =
  /^(?:(?:but|and|ok|okay|so|um|er|sorry|wait),? )*(?:is|are|will|would|can|could|may|should|shall|do|does|must|what (?:if|happens)|how much (?:does|is|would|do)|where (?:do|can) (?:i|we) (?:get|buy|find))\b/iu;
const DOING =
  /\b(?:safe|danger\w*|harm\w*|hurt|break|burn|damage|wipe\w*|lose|erase|delete|undo|shock|pull|plug|unplug|switch\w*|turn\w*|leave it|on while|while (?:it|its)|cost|buy|get (?:such|one|a)|internet|password|settings|align\w*|need)\b/iu;
/** The Sun and lasers have words of their own, and so has the walk itself: how long, and why. */
const NOT_OF_DOING =
  /\b(?:sun|solar|lasers?|eclipse|questions?|steps?|much longer|how long|how many|why|you (?:need|ask|want))\b/iu;
const OF_CARE =
  /\b(?:safe|danger\w*|harm\w*|hurt|break|burn|damage|wipe\w*|lose|erase|shock|ok(?:ay)? to|all ?right to|while (?:it|its)|on while|without (?:turning|switching))\b/iu;

/** What a member asks of the doing: whether it is safe, what it needs. Not of the talk, however like it the words are. */
export const asksOfDoing = (text: string): boolean =>
  text.length <= LONGEST && ASKS.test(text.trim()) && DOING.test(text) && !NOT_OF_DOING.test(text);

/** Said to "is that safe". */
const WITH_CARE =
  'What needs care stands with the step. In doubt: note a setting before you change it, switch the mount off before a lead is pulled, and leave mains and opened cases to someone qualified.';

/** What such a question is answered with, beside the step's own lines. */
export const answerOfDoing = (text: string): typeof ASKED_BACK =>
  OF_CARE.test(text) ? { ...ASKED_BACK, notes: [WITH_CARE] } : ASKED_BACK;
