/** What stands at the end of a walk, for the sheet of a helper: causes, tried or not, and the part of the chain. */
import type { Fact } from '../../reply/reply.js';
import {
  located,
  speaksFor,
  standing,
  UNEXPLAINED,
  UNSURE,
  type Assessment,
  type Standing,
  type TriageModel,
} from '../../triage/index.js';
import { answered } from './next-for-helper.js';
import { seenLine } from './tried-for-helper.js';
import { percent } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** Below this nothing stands out, and a list of guesses would only mislead. */
const STANDS_OUT = 0.15;
/** Where the first part is this likely, no second one is named. */
const PLACED = 0.6;

const ONLY_THE_TRIED = 'nothing but what was tried';

/** With this in it, what stands is half a guess. */
const TRIED = '(tried';

/** What came of a remedy that did not cure, and why its cause is named all the same. */
const TRIED_BUT: ReadonlyMap<string, string> = new Map([
  ['same', 'tried, yet it fits best: was it done in full?'],
  ['changed', 'tried, something changed: a second cause may stand behind it'],
  ['for-now', 'tried, and it helped for a time'],
]);

/** The last outcome of each remedy that was tried and did not cure. */
const failed = ({ state: { events } }: Walk): ReadonlyMap<string, string> =>
  new Map(
    events.flatMap((event) =>
      event.kind === 'try' && TRIED_BUT.has(event.outcome) ? [[event.fault, event.outcome]] : [],
    ),
  );

export const wasTriedInVain = (walk: Walk, fault: string): boolean => failed(walk).has(fault);

/** A cause that was tried is named where it is so much likelier than the first that was not. */
const FAR_LIKELIER = 1.5;

/** "Summer time is set wrong, 40 % (tried, no change, but …)": the likeliest, where its remedy was done already. */
const triedText = (
  walk: Walk,
  likely: readonly Standing[],
  untried: Standing | undefined,
  isBrief: boolean,
): string | null => {
  const tries = failed(walk);
  const best = likely.find(({ faultId }) => tries.has(faultId));
  if (best === undefined || best.probability < FAR_LIKELIER * (untried?.probability ?? 0)) return null;
  const why = TRIED_BUT.get(tries.get(best.faultId) ?? '') ?? '';
  return `${best.title}, ${percent(best.probability)} (${isBrief ? why.replace(/:.*$/u, '') : why})`;
};

/** The causes that stand and were not tried, with what speaks for the first; null where none stands out. */
const standsText = (model: TriageModel, walk: Walk, assessment: Assessment, isBrief: boolean): string | null => {
  const done = new Set(
    walk.state.events.flatMap((event) =>
      event.kind === 'try' && event.outcome !== 'could-not' && event.outcome !== UNSURE ? [event.fault] : [],
    ),
  );
  const likely = standing(assessment).filter(
    ({ faultId, probability }) => probability >= STANDS_OUT && !faultId.startsWith(UNEXPLAINED),
  );
  const named = likely.filter(({ faultId }) => !done.has(faultId)).slice(0, 2);
  const [first] = named;
  const tried = triedText(walk, likely, first, isBrief);
  if (first === undefined) return tried ?? (likely.length > 0 ? ONLY_THE_TRIED : null);
  const own = answered(walk.state.events);
  const because = speaksFor(assessment, first.faultId)
    .filter(({ check }) => own.some((event) => event.check === check))
    .slice(0, 1)
    .flatMap((event) => seenLine(model, event) ?? []);
  const texts = named.slice(0, tried === null ? 2 : 1).map(({ title, probability }, i) => {
    const reason = i === 0 && because.length > 0 && !isBrief ? ` (for it: ${because.join('; ')})` : '';
    return `${title}, ${percent(probability)}${reason}`;
  });
  return [...texts, ...(tried === null ? [] : [tried])].join('; ');
};

/** In which part of the chain it lies, listed causes and what no list holds taken together; the likeliest one or two. */
const whereText = (assessment: Assessment): string | null => {
  const [first, ...rest] = located(assessment).filter(({ probability }) => probability >= STANDS_OUT);
  if (first === undefined) return null;
  const parts = first.probability >= PLACED ? [first] : [first, ...rest.slice(0, 1)];
  return parts.map(({ title }) => title.replace(/^the /u, '')).join(', or ');
};

const NOTHING_STANDS_OUT = 'nothing stands out';

/** What stands, and, where no cause is known, the part of the chain to look at. */
export const standsFacts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  isBrief: boolean,
): readonly Fact[] => {
  const { step } = assessment;
  // Cured: what else was thought of stands no more.
  if (step.kind === 'done') return [];
  const isKnown = step.kind === 'handOn' && step.fault !== null;
  const stands = standsText(model, walk, assessment, isBrief);
  // Where a cause stands out and room is short, its part is not named as well.
  const isSaid = isKnown || (isBrief && stands !== null && stands !== ONLY_THE_TRIED && !stands.includes(TRIED));
  const where = isSaid ? null : whereText(assessment);
  return [
    ...(where !== null && (stands ?? ONLY_THE_TRIED) === ONLY_THE_TRIED
      ? []
      : [{ label: 'Stands', value: stands ?? NOTHING_STANDS_OUT }]),
    ...(where === null ? [] : [{ label: 'Where', value: where }]),
  ];
};
