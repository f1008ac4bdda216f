/** Whether there is a comet to see: the brightest of the operator's list, or why none is known. */
import { NO_ELEMENTS } from '../../../catalogue/index.js';
import { problem } from '../../../ground/problem.js';
import { magnitudeText } from '../../../reply/wording.js';
import { nightLine, says, type Known, type Rule } from './asked.js';

const COMETS = /\bcomets?\b/u;
/** Fainter ones are for large telescopes; common practice, no source. */
const FAINTEST_MAG = 12;
const MOST_NAMED = 3;

const CHOICES = [
  { label: "What's up tonight?", run: 'tonight' },
  { label: 'What is coming', run: 'ahead' },
];

/** Where none is named. */
export const comets =
  ({ catalogue }: Known): Rule =>
  (asked) => {
    if (asked.targets.length > 0 || !says(asked, COMETS)) return null;
    const { moving } = catalogue;
    if (moving === undefined || moving.state() !== 'read') return problem('not-known-here', NO_ELEMENTS, CHOICES);
    const [first, ...others] = moving
      .comets(MOST_NAMED)
      .filter(({ magnitude }) => magnitude !== null && magnitude <= FAINTEST_MAG);
    if (first === undefined)
      return problem(
        'not-known-here',
        `No comet of my list is predicted brighter than magnitude ${FAINTEST_MAG} just now; comets surprise.`,
        CHOICES,
      );
    const named = others.map(({ name, magnitude }) => `${name}, mag ${magnitudeText(magnitude ?? 0)}`);
    const read = nightLine('up', first.name, { ...asked, when: { ...asked.when, note: null } });
    return {
      ...read,
      note: `The brightest comet I know of.${named.length === 0 ? '' : ` Next: ${named.join('; ')}.`}`,
    };
  };
