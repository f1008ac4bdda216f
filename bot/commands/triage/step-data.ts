/** A step as programs read it (`ask --json`): what is asked or to be done, its answers as lines to run, what was read, what stands. */
import type { Json } from '../../reply/reply.js';
import { NO_COMPUTER, standing, takenBackIn, UNSURE, type Assessment, type Step } from '../../triage/index.js';
import { answerLine, ownLines } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

interface StepAnswer {
  readonly id: string;
  readonly label: string;
}

export const NOT_SURE = 'Not sure';

export const TRY_ANSWERS: readonly StepAnswer[] = [
  { id: 'works', label: 'I see that, and it works now' },
  { id: 'same', label: 'No change' },
  { id: 'changed', label: 'Something changed, still not right' },
  { id: 'could-not', label: 'Could not do it' },
];

export const OPENING_QUESTIONS = {
  path: 'How does the computer reach the mount?',
  system: 'Which computer is it?',
  client: 'How does your program talk to the mount?',
} as const;

export const NUMBERS_QUESTION = 'What did you send it to, and where did the tube really land?';

const HANDSET_ALONE: StepAnswer = { id: NO_COMPUTER, label: 'No computer: the hand controller alone' };

/** Where a part of a computer's way was told of, there is one; what the hand controller shows is seen without any. */
const mayBeAlone = (ways: readonly string[] | undefined): boolean =>
  ways === undefined ||
  (!ways.includes('board-cable') && ['controller-serial', 'bridge-own-network'].every((way) => ways.includes(way)));

const openingAnswers = (assessment: Assessment, step: Extract<Step, { opening: true }>): readonly StepAnswer[] => {
  if (step.id === 'system')
    return [
      { id: 'windows', label: 'Windows' },
      { id: 'macos', label: 'macOS' },
      { id: 'linux', label: 'Linux' },
      { id: 'phone', label: 'Phone or tablet' },
    ];
  if (step.id === 'client')
    return [
      { id: 'direct', label: 'It opens the port itself' },
      { id: 'platform', label: 'Through a driver platform' },
    ];
  const ways = step.paths.map((id) => ({ id, label: assessment.pathTitle(id) }));
  return mayBeAlone(assessment.context.paths) ? [...ways, HANDSET_ALONE] : ways;
};

/** The answers of a step with their labels, "not sure" among them where it is one. */
export const answersOf = (assessment: Assessment): readonly StepAnswer[] => {
  const { step } = assessment;
  if (step.kind === 'try') return TRY_ANSWERS;
  if (step.kind === 'numbers') return [{ id: UNSURE, label: 'No numbers now' }];
  if (step.kind !== 'ask') return [];
  if (step.opening) return [...openingAnswers(assessment, step), { id: UNSURE, label: NOT_SURE }];
  return [
    ...step.check.answers.map(({ id, label }) => ({ id, label })),
    { id: UNSURE, label: step.check.unsureLabel ?? NOT_SURE },
  ];
};

/** "a) …": numbers belong to the choices below. */
export const lettered = (line: string, index: number): string => `${String.fromCodePoint(97 + (index % 26))}) ${line}`;

/** The remedy's lines in hand: the other way once the first was tried. */
export const remedyLines = (walk: Walk, assessment: Assessment): readonly string[] => {
  const { step, context } = assessment;
  if (step.kind !== 'try') return [];
  const { steps, otherwise, lasting } = step.fault.remedy;
  const way = step.lasting === true ? lasting : otherwise;
  const own = (step.lasting === true || step.otherwise) && way !== undefined ? way : steps;
  return ownLines(own, context.system, walk.state);
};

export const howLines = (walk: Walk, assessment: Assessment): readonly string[] => {
  const { step, context } = assessment;
  if (step.kind !== 'ask' || step.opening) return [];
  return [ownLines(step.check.how, context.system, walk.state).join(' ')];
};

const questionOf = (step: Step): string | null => {
  if (step.kind === 'numbers') return NUMBERS_QUESTION;
  if (step.kind !== 'ask') return null;
  return step.opening ? OPENING_QUESTIONS[step.id] : step.check.question;
};

const stepJson = (walk: Walk, assessment: Assessment): Json => {
  const { step } = assessment;
  const answers = answersOf(assessment).map(({ id, label }) => ({ id, label, run: answerLine(walk, step.id, id) }));
  const own = { kind: step.kind === 'numbers' ? 'ask' : step.kind, id: step.id };
  if (step.kind === 'try')
    return {
      ...own,
      title: step.fault.title,
      lines: [...remedyLines(walk, assessment)],
      see: step.fault.verify.text,
      answers,
    };
  const question = questionOf(step);
  return question === null ? own : { ...own, question, how: [...howLines(walk, assessment)], answers };
};

const readJson = (walk: Walk): readonly Json[] => {
  const denied = takenBackIn(walk.state.events);
  return walk.state.events.flatMap((event) =>
    event.kind === 'text'
      ? [...event.facts, ...event.guesses].filter(({ what }) => !denied.has(what)).map((fact): Json => ({ ...fact }))
      : [],
  );
};

export const stepData = (walk: Walk, assessment: Assessment): Readonly<Record<string, Json>> => ({
  walkId: walk.id,
  step: stepJson(walk, assessment),
  standing: standing(assessment).map(({ faultId, probability }) => ({
    faultId,
    probability: Math.round(probability * 1e4) / 1e4,
  })),
  read: readJson(walk),
  suggested: walk.state.events.flatMap((event) =>
    event.kind === 'text' ? event.suggests.filter(({ weight }) => weight > 1).map(({ faultId }) => faultId) : [],
  ),
});
