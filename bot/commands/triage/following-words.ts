/** The reader of follow-ups: asked before all others, as nothing is kept but for some minutes after a question of the sky. */
import { leavesWalk, readText } from '../../reading/index.js';
import { assess, NUMBERS } from '../../triage/index.js';
import type { Deps, SaidWords, WordsReader } from '../core/command.js';
import { waitingWalk } from './find-walk.js';
import { numbersSaid } from './take-numbers.js';
import type { Walk } from './walk-keeper.js';
import { followedAbroad } from '../asking/asked-abroad.js';
import { knownFor } from '../asking/plain-reader.js';
import { followUp } from '../asking/following/follow-up.js';
import { keepTold } from '../asking/following/told-here.js';
import { mayTellKit } from '../asking/following/kit-told.js';
import { mayFollow } from '../asking/following/may-follow.js';
import { asksBest } from '../asking/following/outright.js';
import { isOfSeenOrNot } from '../asking/following/seen-or-not.js';
import { lastAsked } from '../asking/following/last-asked.js';
import { isSmallAfter, toldLine } from '../asking/following/told-line.js';

/** Whether a walk that waits may mean the words: its own questions are answered with stars and figures too. */
const isForWalk = (deps: Deps, { text, nowUtcMs }: SaidWords, { state }: Walk): boolean => {
  const model = deps.triage();
  const { kind } = assess(model, state).step;
  return (kind === NUMBERS && numbersSaid(text, deps, nowUtcMs) !== null) || leavesWalk(model.reading, text) !== null;
};

const isBriefAfter = (last: string, line: string, { commands }: Deps): boolean => {
  const [before, asked] = [toldLine(last, commands), toldLine(line, commands)];
  return before !== null && asked !== null && isSmallAfter(before, asked);
};

export const followingWords: WordsReader = {
  name: 'what follows a question',
  read: async (deps, said) => {
    const { asker, nowUtcMs } = said;
    const last = mayFollow(said.text) ? lastAsked(deps.store, asker, nowUtcMs) : null;
    if (last === null) return null;
    const text = followedAbroad(said.text, deps.catalogue) ?? said.text;
    const walk = await waitingWalk(deps, asker, nowUtcMs);
    const found = followUp(last, text, await knownFor(deps, said), {
      isStrict: walk !== null,
      earlier: lastAsked(deps.store, asker, nowUtcMs, 'earlier'),
    });
    if (found === null || (walk !== null && isForWalk(deps, said, walk))) return null;
    const { facts, perhaps } = readText(deps.triage().reading, text);
    // What tells of a mount is never of the sky, whatever it follows; beside a walk, what may tell of one.
    if (
      (facts.length > 0 && !asksBest(text) && !(walk === null && isOfSeenOrNot(text))) ||
      (walk !== null && perhaps.length > 0)
    )
      return null;
    if (mayTellKit(text)) keepTold(deps.store, said, { kit: toldLine(found.line, deps.commands)?.values['with'] });
    return {
      ...found,
      isBrief: isBriefAfter(last, found.line, deps),
      note: `Taken to follow your last question: ${found.line}`,
    };
  },
};
