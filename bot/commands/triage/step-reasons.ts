/** Why a step comes now, in a few words, where that is not plain. */
import {
  contradictions,
  isForPrudence,
  likelyBehind,
  OWN_SUSPICION,
  ownSuspicion,
  whatEachAnswerSays,
  type Assessment,
  type Step,
} from '../../triage/index.js';
import { suspectedCause, supposition } from '../../reading/index.js';
import { ofOwnSuspicion, OTHER_COMPUTER } from './own-suspicion.js';
import { saysWorksSo } from './short-cure.js';
import type { Walk } from './walk-keeper.js';
import { lowered, percent } from './walk-words.js';

/** The two causes that the likelier answers of a question would point to, where they differ. */
const tellsApart = (assessment: Assessment): string | null => {
  const [first, second] = whatEachAnswerSays(assessment)
    .filter(({ likeliest }) => likeliest[0] !== undefined)
    .sort((a, b) => b.probability - a.probability)
    .map(({ likeliest }) => likeliest[0])
    .filter((one, i, all) => all.findIndex((other) => other?.faultId === one?.faultId) === i);
  if (first === undefined || second === undefined) return null;
  return `This tells “${lowered(first.title)}” from “${lowered(second.title)}”.`;
};

type CheckStep = Extract<Step, { readonly opening: false }>;

/** The step, where it asks for one of the model's checks. */
export const checkOf = (step: Step): CheckStep | null => (step.kind === 'ask' && !step.opening ? step : null);

type LastEvent = Walk['state']['events'][number] | undefined;

/** What the last remedy came to, where it did not cure. */
const afterRemedy = (last: LastEvent): string | null => {
  if (last?.kind !== 'try' || last.outcome === 'works') return null;
  return last.outcome === 'could-not' ? 'Then on to what you can do.' : 'So it was not that, or not alone.';
};

const NOT_HERE = 'not-here';
const WITHOUT_IT = 'What the usual way needs is not here, so here is another way to it.';
const DONE_ALREADY = 'You did the usual thing already and it still fits best, so here is another way to it.';

/** Why a remedy is offered once more; null where it is not. */
const remedyAgain = (
  { step, evidence, situation }: Assessment,
  events: Walk['state']['events'],
): readonly string[] | null => {
  if (step.kind !== 'try') return null;
  if (evidence.notTaken.has(situation.faultIndex.get(step.id) ?? -1))
    return ['It has not taken yet, so once more, a line at a time.'];
  if (step.lasting === true) return ['It helped, so the cause was right. It came back, so this is to make it last.'];
  if (!step.otherwise) return null;
  if (!events.some((event) => event.kind === 'try' && event.fault === step.id))
    return [step.fault.remedy.already?.check === NOT_HERE ? WITHOUT_IT : DONE_ALREADY];
  const last = events.findLast(({ kind }) => kind === 'try');
  const couldNot = last?.kind === 'try' && last.outcome === 'could-not';
  return couldNot
    ? []
    : ['That did not do it. The signs still fit, so once the other way; after that I leave this cause.'];
};

/** What speaks against the cause whose remedy changed nothing, before one look at whether it has taken. */
const afterDenied = ({ situation }: Assessment, events: Walk['state']['events']): string => {
  const last = events.findLast((event) => event.kind === 'try');
  const title = situation.faults.find(({ id }) => last?.kind === 'try' && id === last.fault)?.title;
  const spoken = title === undefined ? 'it' : `“${lowered(title)}”`;
  return `No change speaks against ${spoken}. One look whether it has taken; if so, I leave it.`;
};

const BECAUSE: ReadonlyMap<string, string> = new Map([
  ['changed', 'One cause may be mended and another stand behind it. Write it in your own words, or pick.'],
]);

/** From here on a suspicion fits well with what was told; below, hardly. */
const [FITS, HARDLY] = [0.25, 0.03];
const SPOKEN_OF = 'You spoke of it, so this look comes first.';

/** How likely it is by what was told, where the member wonders about it; it may have been named only. */
const ofSupposed = (walk: Walk, assessment: Assessment, check: string): string => {
  const { events } = walk.state;
  const at = events.findLastIndex((event) => event.kind === 'supposed' && event.check === check);
  const words = events.slice(0, Math.max(0, at)).findLast(({ kind }) => kind === 'text');
  const said = words?.kind === 'text' ? words.words : '';
  const suspected = suspectedCause(said);
  if (suspected === null && supposition(said) === null) return SPOKEN_OF;
  if (check === OTHER_COMPUTER && suspected !== null) return ofOwnSuspicion(suspected);
  const likely = likelyBehind(assessment, check);
  if (likely >= FITS) return `By what you told me it may well be: ${percent(likely)}. This look tells.`;
  // What was seen speaks for it, whatever was told before.
  if (words?.kind === 'text' && words.suggests.some(({ weight }) => weight > 1)) return SPOKEN_OF;
  return likely >= HARDLY || likely === 0
    ? 'It may be. This look tells.'
    : `By what you told me hardly: ${percent(likely)}. This look tells.`;
};

const becauseOf = (walk: Walk, assessment: Assessment, asked: CheckStep | null): string | undefined => {
  if (asked?.because === 'supposed') return ofSupposed(walk, assessment, asked.id);
  return asked?.because === 'verify' ? afterDenied(assessment, walk.state.events) : BECAUSE.get(asked?.because ?? '');
};

/** What the look did may be all that was wanted. */
const GOES_SO = 'So that is it. If all is well as it is now, tell me so; these lines are to make it last.';

/** The answer last given to a look, or told in words. */
const lastLook = (last: LastEvent): readonly { readonly what: string; readonly answer: string }[] => {
  if (last?.kind === 'answer') return [{ what: last.check, answer: last.answer }];
  return last?.kind === 'text' ? last.facts : [];
};

const isWellSo = ({ situation }: Assessment, last: LastEvent): boolean =>
  lastLook(last).some(({ what, answer }) => {
    const look = situation.checks[situation.checkIndex.get(what) ?? -1]?.entry;
    return saysWorksSo(look?.answers.find(({ id }) => id === answer)?.label ?? '');
  });

/** Why this step comes now, where that is not plain: after a remedy that failed, changed something, or a doubtful answer. */
export const reasonNotes = (walk: Walk, assessment: Assessment): readonly string[] => {
  const asked = checkOf(assessment.step);
  if (asked?.id === OWN_SUSPICION) return [ofOwnSuspicion(ownSuspicion(walk.state.events)?.said ?? '')];
  const because = becauseOf(walk, assessment, asked);
  if (because !== undefined) return [because];
  const again = remedyAgain(assessment, walk.state.events);
  if (again !== null) return again;
  if (assessment.step.kind === 'try' && isForPrudence(assessment.situation, assessment.evidence))
    return ['Nobody can say what levels that lead gives, so it is treated as the one that does harm.'];
  if (assessment.step.kind === 'try' && isWellSo(assessment, walk.state.events.at(-1))) return [GOES_SO];
  const opened = afterRemedy(walk.state.events.at(-1));
  if (opened === null) return [];
  const apart = asked === null ? null : tellsApart(assessment);
  return [apart === null ? opened : `${opened} ${apart}`];
};

/** An answer that fits ill with the rest and is asked for once more. */
export const doubtNotes = (assessment: Assessment): readonly string[] => {
  const asked = checkOf(assessment.step);
  if (asked?.because !== 'again') return [];
  const own = contradictions(assessment).find(({ checkId }) => checkId === asked.id);
  return own === undefined
    ? []
    : [`Earlier I noted “${own.answer}”. The rest does not fit with it, and the slip may be mine; so one more look.`];
};
