/** Words the offer of one line to copy whose output answers many questions. */
import { collectingOffer, type Assessment, type TriageModel } from '../../triage/index.js';
import type { Walk } from './walk-keeper.js';

/** The line stands alone, whole, so that it can be copied. */
export const offerNotes = (model: TriageModel, walk: Walk, assessment: Assessment): readonly string[] => {
  const offer = collectingOffer(model, walk.state, assessment);
  return offer === null
    ? []
    : [`Or let one paste answer many questions: copy this into ${offer.where} and send me what it prints.`, offer.line];
};
