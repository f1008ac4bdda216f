/** "Show me the right entries please": what a walk's questions and remedies speak of, asked for in a member's own words. */
import type { WordsReader } from '../core/command.js';

const LEAD =
  '(?:(?:ok|okay|and|but|so|please|yes|sorry|can you|could you|can i|may i|i (?:want|need|would like)(?: to)?|where (?:do|can) i)[, ]+)*';
const BEHIND =
  '(?:,? (?:for (?:me|us|my site|here|this site)|again|then|now|please|pls|thanks|below|show me|tell me))*';
const ASKED = new RegExp(
  `^${LEAD}(?:show|see|let (?:me|us) see|give|tell|find|get|what(?:['\u2019]?s| is| are)?|which|where(?:['\u2019]?s| is| are)?|the)?(?: (?:me|us))?(?: (?:the|my|these|those))? ?right entries${BEHIND}[ .,?!]*(?:show me|tell me)?[ .?!]*$`,
  'iu',
);
/** With a word that asks to see them they need not be called the right ones. */
const ASKED_TO_SEE = new RegExp(
  `^${LEAD}(?:show|let (?:me|us) see|give|tell)(?: (?:me|us))? (?:the|my|these|those)? ?(?:correct |proper )?entries${BEHIND}[ .?!]*$`,
  'iu',
);

export const entriesAsked: WordsReader = {
  name: 'the right entries',
  read: (_, { text }) =>
    Promise.resolve(ASKED.test(text.trim()) || ASKED_TO_SEE.test(text.trim()) ? { line: 'entries' } : null),
};
