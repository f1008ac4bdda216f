/** The numbers of a miss, asked for in one line or a form. */
import type { Assessment, TriageModel } from '../../triage/index.js';
import { answerChoices } from './answer-choices.js';
import type { Parts } from './end-parts.js';
import { NUMBERS_QUESTION } from './step-data.js';
import type { Walk } from './walk-keeper.js';
import { waysOut } from './ways-out.js';

const NUMBERS_HOW = [
  'In one line, and I work out which entry is wrong: target; where it landed; if you can, the altitude and azimuth it shows, its sidereal time; your site, if I have none saved.',
  'Such as: Vega; about 15 degrees east of it; shown 41, 135; lst 18:22',
];

/** How the miss was told in words: it is not asked once more. */
const OF_THE_MISS: readonly string[] = ['miss', 'miss-shape'];
const MISS_IS_TOLD = 'On which target was that, and what did the mount show then?';

const isMissTold = ({ situation, evidence }: Assessment): boolean =>
  evidence.observations.some(({ check, guessed }) => {
    const id = situation.checks[check]?.entry.id ?? '';
    return guessed !== true && OF_THE_MISS.includes(id);
  });

/** @param reasons why it comes now */
export const numbersParts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  reasons: readonly string[],
): Parts => ({
  summary: isMissTold(assessment) ? MISS_IS_TOLD : NUMBERS_QUESTION,
  notes: [...reasons, ...NUMBERS_HOW],
  choices: [
    {
      label: 'Type the numbers',
      run: `triage walk:${walk.id}`,
      form: 'numbers',
      invitation: 'Type them in one line, as in the example.',
    },
    ...answerChoices(walk, assessment),
    ...waysOut(model, walk),
  ],
});
