/** Words the offer of one line to copy whose output answers many questions: a choice, and the line on a card of its own. */
import type { Choice } from '../../ground/problem.js';
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import { collectingOffer, type Assessment, type TriageModel } from '../../triage/index.js';
import { doLine, titleOf } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

export const pasteOffer = (model: TriageModel, walk: Walk, assessment: Assessment): readonly Choice[] =>
  collectingOffer(model, walk.state, assessment) === null
    ? []
    : [{ label: 'One paste instead of questions', run: doLine(walk, 'collect'), beside: true }];

/** The line stands alone, whole, so that it can be copied. */
export const collectReply = (model: TriageModel, walk: Walk, { context }: Assessment): Reply => {
  const offer = model.collecting.find(({ system }) => system === context.system);
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'One paste'),
    summary:
      offer === undefined
        ? 'I must know first which computer it is.'
        : `Copy this into ${offer.where} and send me what it prints. It changes nothing.`,
    notes: offer === undefined ? [] : [offer.line],
    choices: [{ label: 'Rather the questions', run: `triage walk:${walk.id}` }],
    data: { walkId: walk.id },
  });
};
