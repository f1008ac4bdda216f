/** Words the step of a walk for people: a question, a remedy, the numbers of a miss, the cure. */
import type { Choice } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import {
  lookAlikes,
  NUMBERS,
  type Assessment,
  type CheckEntry,
  type Step,
  type TriageModel,
} from '../../triage/index.js';
import { aboutRemedy } from './about-remedy.js';
import { answerChoices } from './answer-choices.js';
import { fitsCard } from './card-room.js';
import { pasteOffer } from './collecting-offer.js';
import { doneParts, fixedParts, whichCuredParts, type Parts } from './end-parts.js';
import { handOnReply } from './hand-on.js';
import { numbersParts } from './numbers-parts.js';
import { howLines, lettered, OPENING_QUESTIONS, remedyLines, stepData } from './step-data.js';
import { stepCautions } from './step-cautions.js';
import { checkOf, doubtNotes, reasonNotes } from './step-reasons.js';
import { answerLine, entriesOffer, forTablet, lowered, titleOf } from './walk-words.js';
import { unclear, waysOut } from './ways-out.js';
import type { Walk } from './walk-keeper.js';

export interface Said {
  /** Said before the step: what was read, that a helper joined. */
  readonly notes?: readonly string[];
  /** Every answer of a long list. */
  readonly whole?: boolean;
  /** The step shown before these words: its lines are not said twice. */
  readonly before?: Step | undefined;
  /** Cautions that earlier replies of the walk gave. */
  readonly cautioned?: readonly string[] | undefined;
  /** The words, where they ask how the step in hand is done. */
  readonly asksBack?: string | undefined;
  /** The notes say how it is done. */
  readonly isTold?: boolean | undefined;
  /** The answers that the notes ask back. */
  readonly first?: readonly string[] | undefined;
  /** Asked a moment ago: what stands above is not said again. */
  readonly few?: boolean | undefined;
  readonly offers?: Choice | undefined;
  /** Asked whether the trouble is over: the line that a yes runs. */
  readonly ifFixed?: string | undefined;
  /** Asked which of these causes was the cure. */
  readonly whichCured?: readonly string[] | undefined;
}

const CLIENT_HELP =
  'If you pick a port such as COM3 or /dev/ttyUSB0 in the program itself, it opens the port. If you pick a driver from a list, it goes through a driver platform.';
const IN_YOUR_WORDS =
  'Or tell me in your own words: what it says, what changed last, what you have tried. A pasted message helps most.';

const paste = (walk: Walk): Choice => ({
  label: 'Paste or write',
  run: `triage walk:${walk.id}`,
  form: 'paste',
  invitation: IN_YOUR_WORDS,
});

const openingParts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  id: 'path' | 'system' | 'client',
  { cautioned = [], first }: Said,
): Parts => {
  const silent = !walk.state.events.some(({ kind }) => kind === 'text');
  return {
    summary: OPENING_QUESTIONS[id],
    notes: id === 'client' ? [CLIENT_HELP] : [],
    cautions: stepCautions(cautioned, assessment),
    choices: [
      ...answerChoices(walk, assessment, { whole: true, first }),
      ...(silent ? [paste(walk)] : waysOut(model, walk)),
    ],
  };
};

/** What the club adds to what ships. */
const clubNote = ({ note }: { readonly note?: string | undefined }): readonly string[] =>
  note === undefined ? [] : [`At your club: ${note}`];

const askParts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  check: CheckEntry,
  { whole, cautioned = [], first, few, isTold }: Said,
): Parts => {
  const because = checkOf(assessment.step)?.because ?? null;
  const summary = ((): string => {
    if (isTold === true) return `Once you have looked: ${lowered(check.question)}`;
    if (because === 'again') return `Please look once more: ${check.question}`;
    return because === 'changed' ? 'What is different now: how far does it get?' : check.question;
  })();
  return {
    summary,
    notes: [
      ...doubtNotes(assessment),
      ...reasonNotes(walk, assessment),
      // Shown a moment ago: what is asked stands above, what was not understood too.
      ...(few === true ? [] : [...howLines(walk, assessment), ...clubNote(check)]),
    ],
    cautions: stepCautions(cautioned, assessment),
    choices: [
      ...answerChoices(walk, assessment, { whole, first }),
      ...waysOut(model, walk),
      ...pasteOffer(model, walk, assessment),
      ...entriesOffer(walk, check),
    ],
  };
};

/** What came of a remedy: the same few on every card, so they share their lines. */
const outcomes = (walk: Walk, assessment: Assessment): readonly Choice[] =>
  [...answerChoices(walk, assessment), unclear(walk, assessment.step.id)].map((choice) => ({
    ...choice,
    beside: 'answer' as const,
  }));

const wayOf = ({ otherwise, lasting }: Extract<Step, { kind: 'try' }>): string => {
  if (lasting === true) return 'For good';
  return otherwise ? 'Another way' : 'Likely cause';
};

const tryParts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  { cautioned = [], notes: heard = [] }: Said,
): Parts => {
  const { step } = assessment;
  if (step.kind !== 'try') return { summary: '' };
  const { fault } = step;
  const others = lookAlikes(model, fault).map(({ title }) => lowered(title));
  const summary = `${wayOf(step)}: ${fault.title}. Try this.`;
  const cautions = stepCautions(cautioned, assessment);
  const notes = [
    ...reasonNotes(walk, assessment),
    ...remedyLines(walk, assessment).map(lettered),
    ...clubNote(fault.remedy),
    `You should see: ${fault.verify.text}`,
    ...(others.length > 0 ? [`Looks the same: ${others.join('; ')}. That comes next if this is not it.`] : []),
  ];
  // What is to be done comes before why, which is told where there is room, and under "Why this?".
  const isFirstWay = !step.otherwise && step.lasting !== true;
  const tellsWhy = isFirstWay && fitsCard([summary, fault.why, ...cautions, ...heard, ...notes]);
  return {
    summary,
    facts: tellsWhy ? [{ label: 'Why', value: fault.why }] : [],
    notes,
    cautions,
    choices: [...outcomes(walk, assessment), ...waysOut(model, walk), ...entriesOffer(walk, fault.remedy)],
  };
};

const partsOf = (model: TriageModel, walk: Walk, assessment: Assessment, said: Said): Parts | null => {
  const { step } = assessment;
  switch (step.kind) {
    case 'ask':
      return step.opening
        ? openingParts(model, walk, assessment, step.id, said)
        : askParts(model, walk, assessment, step.check, said);
    case NUMBERS:
      return numbersParts(model, walk, assessment, reasonNotes(walk, assessment));
    case 'try':
      return tryParts(model, walk, assessment, said);
    case 'done':
      return doneParts(walk, step.fault);
    case 'handOn':
      return null;
  }
};

const isSameRemedy = (before: Step | undefined, now: Step): boolean =>
  before?.kind === 'try' &&
  now.kind === 'try' &&
  before.id === now.id &&
  before.otherwise === now.otherwise &&
  before.lasting === now.lasting;

/** So much of a remedy reminds of it once its lines have scrolled away. */
const REMINDER = 110;

/** The remedy shown before still stands: a reminder of it, and what came of it is asked. */
const stillParts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  { asksBack, isTold = false }: Pick<Said, 'asksBack' | 'isTold'>,
): Parts => {
  const { step } = assessment;
  const fault = step.kind === 'try' ? step.fault : null;
  const reminded = (): readonly string[] =>
    asksBack === undefined
      ? [`It was: ${tidy(remedyLines(walk, assessment).join(' '), REMINDER)}`]
      : aboutRemedy(model, walk, assessment, asksBack);
  return {
    summary: isTold
      ? 'Once that is tried: what came of it?'
      : `The last thing to try: ${fault?.title ?? ''}. What came of it?`,
    notes: isTold ? [] : reminded(),
    choices: [
      ...outcomes(walk, assessment),
      ...waysOut(model, walk),
      ...(isTold ? [] : [{ label: 'Show the lines again', run: `triage walk:${walk.id}` }]),
      ...entriesOffer(walk, fault?.remedy),
    ],
  };
};

/** The step's own words, each through the same change. */
const reworded = (parts: Parts, change: (line: string) => string): Parts => ({
  ...parts,
  summary: change(parts.summary),
  ...(parts.facts === undefined ? {} : { facts: parts.facts.map((fact) => ({ ...fact, value: change(fact.value) })) }),
  ...(parts.notes === undefined ? {} : { notes: parts.notes.map(change) }),
  ...(parts.choices === undefined
    ? {}
    : { choices: parts.choices.map((choice) => ({ ...choice, label: change(choice.label) })) }),
});

/** Behind the step's own answers, whose numbers stay. */
const withOffer = (choices: readonly Choice[], own: string, offer: Choice | undefined): readonly Choice[] => {
  if (offer === undefined) return choices;
  const at = choices.findLastIndex(({ run }) => run.startsWith(own)) + 1;
  return [...choices.slice(0, at), offer, ...choices.slice(at)];
};

/** The reply for where the walk stands now. */
export const stepReply = (model: TriageModel, walk: Walk, assessment: Assessment, said: Said = {}): Reply => {
  const { notes = [], before, ifFixed, whichCured, offers } = said;
  const { step } = assessment;
  const still = isSameRemedy(before, step);
  const partsNow = (): Parts | null => {
    if (whichCured !== undefined) return whichCuredParts(model, walk, whichCured);
    if (ifFixed !== undefined) return fixedParts(walk, ifFixed, step.kind === 'try' ? step.fault : null);
    return still ? stillParts(model, walk, assessment, said) : partsOf(model, walk, assessment, said);
  };
  const made = partsNow();
  const parts = made === null ? null : reworded(made, forTablet(walk.state, assessment.context.system));
  if (parts === null) {
    const sheet = handOnReply(model, walk, assessment, step.kind === 'handOn' ? step.fault : null);
    return { ...sheet, notes: [...notes, ...sheet.notes] };
  }
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, step.kind === 'done' ? 'Fixed' : undefined),
    level: (parts.cautions ?? []).length > 0 ? 'caution' : 'info',
    ...parts,
    notes: [...notes, ...(parts.notes ?? [])],
    choices: withOffer(parts.choices ?? [], answerLine(walk, step.id, ''), offers),
    data: stepData(walk, assessment),
  });
};
