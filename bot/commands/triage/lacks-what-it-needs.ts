/** Whether the remedy on show asks for what the member says is not there. */
import { namesLacked, thingsLacked } from '../../reading/index.js';
import type { Began } from './turn.js';

const CANNOT =
  /\b(?:can ?not|can['\u2019]?t|couldn['\u2019]?t|could not|not possible|impossible|unable|no way|so no)\b/iu;

/** "I have no hand controller, cant do that": what the remedy asks for is not there. */
export const lacksWhatItNeeds = ({ before: { step, context } }: Began, text: string): boolean => {
  if (step.kind !== 'try' || thingsLacked(text).size === 0) return false;
  const { steps, otherwise = [] } = step.fault.remedy;
  const system = context.system ?? '';
  const lines = [step.otherwise ? otherwise : steps].map((way) =>
    typeof way === 'object' && !Array.isArray(way) && system in way ? way[system as keyof typeof way] : way,
  );
  return CANNOT.test(text) || namesLacked(text, JSON.stringify(lines));
};
