/** Where a walk ends well: the cure, and whether there is one. */
import type { Reply } from '../../reply/reply.js';
import type { FaultEntry, TriageModel } from '../../triage/index.js';
import { answerLine, doLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

export type Parts = Pick<Reply, 'summary'> & Partial<Reply>;

const FIXED_MEANS = 'Yes means that what failed before works now.';

export const doneParts = (walk: Walk, { id, title }: FaultEntry): Parts => ({
  summary: `Fixed: ${title}.`,
  notes: ['May I count this cause for the club, without your name? It helps to ask the right thing sooner next time.'],
  choices: [
    { label: 'Yes, count it', run: answerLine(walk, 'count', 'yes'), preferred: true },
    { label: 'No, just end', run: answerLine(walk, 'count', 'no') },
    { label: 'It was something else', run: answerLine(walk, 'count', 'other') },
    { label: 'It stopped working again', run: answerLine(walk, id, 'for-now') },
  ],
  level: 'good',
});

/**
 * One press ends it, or goes on.
 * @param remedy the one in hand: a yes may only say that it was done
 */
export const fixedParts = (walk: Walk, ifFixed: string, remedy: FaultEntry | null): Parts => ({
  summary: 'Is it fixed?',
  notes: [FIXED_MEANS],
  choices: [
    { label: 'Yes, it works now', run: ifFixed },
    ...(remedy === null
      ? []
      : [
          { label: 'Done, and no change', run: answerLine(walk, remedy.id, 'same') },
          { label: 'Only for now', run: answerLine(walk, remedy.id, 'for-now') },
        ]),
    { label: remedy === null ? 'No, go on' : 'Not done yet: show the lines', run: `triage walk:${walk.id}` },
  ],
});

/** It was none that was shown: a few words say what. */
const whatElseParts = (walk: Walk): Parts => ({
  summary: 'What was it, then? A few words are enough; they stay with the walk.',
  choices: [
    { label: 'I cannot say: just end', run: doLine(walk, 'end') },
    { label: 'It does not work yet', run: `triage walk:${walk.id}` },
  ],
});

/** One press says which of the causes it was; none are named where it was none of them. */
export const whichCuredParts = (model: TriageModel, walk: Walk, faults: readonly string[]): Parts =>
  faults.length === 0 ? whatElseParts(walk) : whichOfParts(model, walk, faults);

const whichOfParts = (model: TriageModel, walk: Walk, faults: readonly string[]): Parts => ({
  summary: 'Good to hear. What was it?',
  choices: [
    ...faults.map((id) => ({ label: model.fault(id)?.title ?? id, run: answerLine(walk, id, 'works') })),
    { label: 'Something else', run: doLine(walk, 'end') },
  ],
});
