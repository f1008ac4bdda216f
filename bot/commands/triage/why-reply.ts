/** Why this step: its reason in a sentence, the causes still standing, what each answer would point to, what this club has met. */
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import { NUMBERS, whatEachAnswerSays, type Assessment, type TriageModel } from '../../triage/index.js';
import { stepData } from './step-data.js';
import { back, lowered, percent, titleOf } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const stepReason = ({ step }: Assessment): string => {
  switch (step.kind) {
    case 'ask':
      if (step.opening) return 'What can be wrong depends on it.';
      if (step.check.safety === true) return 'A wrong guess here could hurt you or the mount, so it comes first.';
      return step.because === 'again'
        ? 'An answer given before fits badly with the rest; a second look is cheaper than a wrong turn.'
        : 'Its answers split the causes still standing best for the minutes it takes.';
    case NUMBERS:
      return 'Where the tube landed tells which entry is wrong better than any question.';
    case 'try':
      return 'It is likely enough, and quick enough, that trying it beats asking more.';
    case 'done':
      return 'The remedy was done and its effect was seen.';
    case 'handOn':
      return step.fault === null
        ? 'Nothing left to ask or try is likely to pay for its time.'
        : 'The cause is as good as known, and what is left must be done by a person.';
  }
};

/** Causes still standing, what the step in hand would tell, and what this club has met. */
export const whyReply = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  causes: readonly { readonly title: string; readonly probability: number }[],
  outcomes: Readonly<Record<string, number>>,
): Reply => {
  const leads = whatEachAnswerSays(assessment)
    .filter(({ likeliest }) => likeliest.length > 0)
    .sort((a, b) => b.probability - a.probability)
    .slice(0, 5)
    .map(
      ({ label, likeliest }) =>
        `“${label}” would point to: ${likeliest.map(({ title, probability }) => `${lowered(title)} (${percent(probability)})`).join('; ')}.`,
    );
  const counted = Object.entries(outcomes)
    .filter(([id, n]) => n > 0 && model.fault(id) !== undefined)
    .sort(([, a], [, b]) => b - a)
    .slice(0, 5)
    .map(([id, n]) => `${lowered(model.fault(id)?.title ?? id)} × ${n}`);
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'Why this'),
    summary: stepReason(assessment),
    facts: [
      ...(assessment.step.kind === 'try' ? [{ label: 'How it comes about', value: assessment.step.fault.why }] : []),
      ...causes.map(({ title, probability }) => ({ label: percent(probability), value: title })),
      ...(counted.length === 0 ? [] : [{ label: 'Cured in this club so far', value: counted.join('; ') }]),
    ],
    notes: leads,
    choices: [{ label: 'Go on', run: `triage walk:${walk.id}`, preferred: true }, back(walk)],
    data: stepData(walk, assessment),
  });
};
