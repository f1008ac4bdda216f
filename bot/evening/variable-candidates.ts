/** Which stars are worth following for their change of light, and how bright they may be taken for in the hours asked about. */
import { TARGET_KINDS, type Catalogue, type Target, type VariableStar } from '../catalogue/index.js';
import type { UtcMs } from '../sky/types.js';
import { kindsOf } from './kinds.js';
import type { PickQuestion } from './pick.js';
import { variableNow } from './variable-now.js';

const VARIABLE_KINDS: readonly PickQuestion['kind'][] = ['variable-star', 'carbon-star'];

/** Stars are asked for as ones that vary; so do carbon stars, all of them. */
export const isOfVariables = ({ kind, also }: Pick<PickQuestion, 'kind' | 'also'>): boolean =>
  VARIABLE_KINDS.includes(kind) && (also === undefined || also === kind);

const CARBON = /\bcarbon\b/u;

/** What an eye tells apart beside a neighbour with some practice; common practice, no source. */
const LEAST_CHANGE_MAG = 0.4;
const changeMagOf = ({ brightestMagnitude, faintestMagnitude }: VariableStar): number =>
  faintestMagnitude - brightestMagnitude;

/** By their brightest; how bright they are in the night itself is looked at later. */
export const isVariable = (
  catalogue: Catalogue,
  faintest: number,
  kind: PickQuestion['kind'],
): ((index: number) => boolean) => {
  const isOfKind = ({ type, ...variable }: VariableStar): boolean =>
    kind === 'carbon-star' ? CARBON.test(type) : changeMagOf({ type, ...variable }) >= LEAST_CHANGE_MAG;
  const kinds = new Set(kindsOf({ kind: 'variable-star' }).map((kind) => TARGET_KINDS.indexOf(kind)));
  const { sweep } = catalogue;
  return (index) => {
    if (!kinds.has(sweep.kindIndex[index] as number) && !kinds.has(sweep.alsoKindIndex[index] as number)) return false;
    const { variable } = catalogue.targetAt(index);
    return variable !== null && variable.brightestMagnitude <= faintest && isOfKind(variable);
  };
};

const MOST_CHANGE_WORTH = 1.5;
/** What keeps time within a month is seen to change within a few evenings. */
const SOON_DAYS = 30;
const MOST_BRIGHT_WORTH = 1.5;
/** Bright, well known, far between its extremes, and soon from one to the other: common practice, no source. */
export const variableWorth = ({ variable }: Target, isWellKnown: boolean): number => {
  if (variable === null) return 0;
  const { brightestMagnitude, periodDays } = variable;
  const bright = Math.max(0, Math.min(MOST_BRIGHT_WORTH, (7 - brightestMagnitude) / 3));
  const change = Math.min(MOST_CHANGE_WORTH, changeMagOf(variable));
  return change + bright + Number(isWellKnown) + Number(periodDays !== null && periodDays < SOON_DAYS);
};

/** As bright as its period makes it; what keeps no clock may be at its faintest. Null: no variable star. */
export const safeMagnitude = ({ variable }: Target, utcMs: UtcMs): number | null => {
  if (variable === null) return null;
  const now = variableNow(variable, utcMs);
  return now.by === 'nothing' ? variable.faintestMagnitude : now.magnitude;
};
