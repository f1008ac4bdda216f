/** "On Windows it works fine", from one who told of Linux before: a comparison, and not another computer at hand. */
import type { Reading } from '../../reading/index.js';
import type { WalkEvent } from './walk-state.js';

const SYSTEM = '(?:windows|linux|ubuntu|debian|mac ?os|macos|os ?x|mac|android|ios|ipad ?os)';
const WELL =
  '(?:works?|worked|working|fine|perfect(?:ly)?|ok|okay|connects?|connected|answers?|no (?:problems?|trouble|issues?))';
const WORKS_UNDER = new RegExp(
  `\\b(?:on|under|in|with|from) (?:(?:the|my|same|a) )*${SYSTEM}\\b[^.;!?]{0,60}\\b${WELL}\\b|\\b${WELL}\\b[^.;!?]{0,40}\\b(?:on|under|in|with|from) (?:(?:the|my|same|a) )*${SYSTEM}\\b`,
  'iu',
);

const knownSystem = (events: readonly WalkEvent[]): string | undefined =>
  events
    .flatMap((event) => {
      if (event.kind === 'system') return event.value === null ? [] : [event.value];
      return event.kind === 'text'
        ? event.facts.filter(({ what }) => what === 'system').map(({ answer }) => answer)
        : [];
    })
    .at(-1);

export const withoutOtherSystem = (read: Reading, text: string, events: readonly WalkEvent[]): Reading => {
  const named = read.facts.find(({ what }) => what === 'system');
  if (named === undefined || read.by !== 'words' || !WORKS_UNDER.test(text)) return read;
  const known = knownSystem(events);
  if (known === undefined || known === named.answer) return read;
  return {
    ...read,
    facts: read.facts.filter(({ what }) => what !== 'system'),
    understood: read.understood.filter(({ fact }) => fact.what !== 'system'),
  };
};
