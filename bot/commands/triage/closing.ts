/** How a mended walk closes: its cause counted or not, what was another kept, and idle words met once, briefly. */
import { problem, type Problem } from '../../ground/problem.js';
import { tableOf } from '../../ground/table-of.js';
import { talkIn } from '../asking/talk-among-people.js';
import { asksBack } from '../../reading/index.js';
import { tellText, turnFrom, type Speaker, type Step } from '../../triage/index.js';
import { afterCure, endingMeant, NOT_CURED, withoutCure } from './at-the-end.js';
import { askedWhatElse } from './which-cured.js';
import { changed, type Began, type Turn, type TurnContext } from './turn.js';
import type { Walk } from './walk-keeper.js';

const COUNTED = tableOf({
  yes: 'Counted, without your name. Clear skies.',
  no: 'Not counted. Clear skies.',
  other: 'Then I do not count it for that cause. Clear skies.',
});

const COUNTED_BEFORE = 'It was counted for you this month already, and counts once. Clear skies.';

/** Only the one whose mount it is; before they have said anything, the one who began it for them too. */
export const mayEnd = (walk: Walk, by: Speaker): boolean => by === 'member' || walk.awaitsMember === true;

export const count = async (
  { deps, by, nowUtcMs }: TurnContext,
  walk: Walk,
  consent: string,
  { step, isWorded = false }: { readonly step: Step; readonly isWorded?: boolean },
): Promise<Turn | Problem> => {
  if (step.kind !== 'done')
    return problem(
      'nothing-to-count',
      `Nothing has been fixed in this walk yet. See where it stands with: triage walk:${walk.id}`,
    );
  if (walk.endedUtcMs !== null) return problem('walk-ended', 'This walk has ended, and its outcome is settled.');
  if (by !== 'member' && (consent === 'yes' || !mayEnd(walk, by)))
    return problem('consent', 'Only the one whose mount it is can answer that.');
  if (consent === 'other' && !isWorded) return askedWhatElse(walk);
  const isNew = consent !== 'yes' || (await deps.store.outcomes.add(walk.clubId, step.id, walk.memberId, nowUtcMs));
  const note = isNew ? (COUNTED.get(consent) ?? COUNTED.get('no') ?? '') : COUNTED_BEFORE;
  return { walk: { ...walk, endedUtcMs: nowUtcMs }, notes: [note], show: 'summary' };
};

/** It was another, and no word on which. */
const SAYS_NO_MORE =
  /^\W*(?:no,? |sorry,? |well,? |but )*(?:it |that )?(?:was|were|is)? ?(?:n['\u2019]?t (?:that|it|this)|not (?:that|it|this)(?: one)?|(?:something|sth) else|another(?: one| thing)?)(?: (?:really|actually|i think|though))*\W*$/iu;

const KEPT = 'I keep that with the walk. Clear skies.';
const WELCOME = 'You are welcome. Clear skies.';
const GOOD_NIGHT = 'Good night; cap the tube and park the mount.';
const GLAD = 'Good to hear. Clear skies.';

/** A line of the end, and nothing of the page before it: what is said from here on is for others, but for what is of the mount. */
const resting = ({ notes, walk }: Began, line: string, state = walk.state): Turn => ({
  walk: { ...walk, state: { ...state, rests: true } },
  notes: [...notes, line],
  show: 'glad',
});

const lineFor = (text: string): string => {
  const kind = talkIn(text)?.kind;
  if (kind === 'farewell') return GOOD_NIGHT;
  return kind === 'thanks' ? WELCOME : GLAD;
};

/** "Yes, count it", "it was two things", thanks: words at the end, where the member was asked whether the cause may be counted. */
export const takeClosing = async (began: Began, text: string): Promise<Turn | Problem | null> => {
  const { context, walk, before } = began;
  const { step } = before;
  if (step.kind !== 'done' || walk.endedUtcMs !== null) return null;
  const uncured = withoutCure(context.by, walk.state, text);
  if (uncured !== null) return changed(began, uncured, { notes: [NOT_CURED] });
  const { state, read } = tellText(context.model, walk.state, text, context.by);
  if (read.by !== 'words' || afterCure(context.model, text, read) !== null) return null;
  const ending = endingMeant(context.model, text, step.fault.title);
  if (ending === 'yes' || ending === 'no') return count(context, walk, ending, { step });
  if (ending === 'other')
    return count(context, { ...walk, state: turnFrom(walk.state, state) }, ending, {
      step,
      isWorded: !SAYS_NO_MORE.test(text),
    });
  if (ending === 'cause') return resting(began, KEPT, turnFrom(walk.state, state));
  return asksBack(context.model.reading.sayings.lexicon, text)
    ? changed(began, state, { at: step })
    : resting(began, lineFor(text));
};
