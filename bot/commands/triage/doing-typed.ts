/** What the lines beside the answers are called, typed rather than pressed. */
import { labelSaid } from '../../ground/label-said.js';
import { DOINGS, type Doing } from './turn.js';

const LABELS: readonly (readonly [string, Doing])[] = [
  ['why this', 'why'],
  ['back a step', 'back'],
  ['something of this is wrong', 'doubt'],
  ['another', 'more'],
  ['one paste instead of questions', 'collect'],
];
const LONGEST = 80;

export const doingTyped = (text = ''): Doing | undefined => {
  const line = text.trim();
  if (line.length > LONGEST) return undefined;
  const bare = line.toLowerCase().replace(/[.?!…]+$/u, '');
  return DOINGS.find((word) => word === bare) ?? LABELS.find(([label]) => labelSaid(label, line))?.[1];
};
