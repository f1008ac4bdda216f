/** "Show me the right entries please": what a walk's questions and remedies speak of, asked for in a member's own words. */
import type { WordsReader } from '../core/command.js';

const ASKED =
  /^(?:(?:ok|okay|and|but|so|please|yes|sorry|can you|could you|can i|may i|i (?:want|need|would like)(?: to)?|where (?:do|can) i)[, ]+)*(?:show|see|let (?:me|us) see|give|tell|find|get|what(?:['\u2019]?s| is| are)?|which|where(?:['\u2019]?s| is| are)?|the)?(?: (?:me|us))?(?: (?:the|my|these|those))? ?right entries(?: (?:for (?:me|us|my site|here|this site)|again|then|now|please|pls|thanks|below))*[ .?!]*$/iu;

export const entriesAsked: WordsReader = {
  name: 'the right entries',
  read: (_, { text }) => Promise.resolve(ASKED.test(text.trim()) ? { line: 'entries' } : null),
};
