/** What a helper reads on one phone screen: who, what, since when, the member's own words, what was seen and tried, what stands. */
import { tidy } from '../../ground/tidy.js';
import { NOWHERE, reply, type Fact, type Reply } from '../../reply/reply.js';
import {
  CLIENT_NAMES,
  located,
  standing,
  SYSTEM_NAMES,
  UNSURE,
  type Assessment,
  type FaultEntry,
  type TriageModel,
  type WalkEvent,
} from '../../triage/index.js';
import { lettered, stepData } from './step-data.js';
import { back, doLine, linesFor, memberName, nameOf, percent, titleOf, why } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const OUTCOME_WORDS = {
  works: 'it works',
  same: 'no change',
  changed: 'something changed, not cured',
  'could-not': 'could not be done',
} as const;

/** Of the words and pastes, so many characters are shown; the record keeps more. */
const WORDS_SHOWN = 260;
const MOST_SEEN = 9;

type Answered = Extract<WalkEvent, { kind: 'answer' }>;

/** The last answer to each check, oldest first. */
const answered = (events: readonly WalkEvent[]): readonly Answered[] => {
  const answers = events.filter((event): event is Answered => event.kind === 'answer');
  return answers.filter((event, i) => !answers.slice(i + 1).some(({ check }) => check === event.check));
};

const HISTORY = ['changed-last', 'worked-before'];

/** What an answer says without its question, where the question is plain from it; else both, short. */
const seenLine = (model: TriageModel, { check, answer }: Pick<Answered, 'check' | 'answer'>): string | null => {
  const entry = model.check(check);
  const label = entry?.answers.find(({ id }) => id === answer)?.label;
  return entry === undefined || label === undefined ? null : `${tidy(entry.question, 70)} ${tidy(label, 50)}`;
};

/** Answers that tell most come first: what is not as it should be, then contrasts, then what is well. */
const tellingFirst = (model: TriageModel, answers: readonly Answered[]): readonly Answered[] => {
  const rank = ({ check, answer }: Answered): number => {
    const entry = model.check(check);
    if (entry?.contrast !== undefined) return 1;
    return entry?.good === answer ? 2 : 0;
  };
  const kept = [...answers.keys()]
    .sort((a, b) => rank(answers[a] as Answered) - rank(answers[b] as Answered) || b - a)
    .slice(0, MOST_SEEN)
    .sort((a, b) => a - b);
  return kept.flatMap((i) => answers[i] ?? []);
};

const readFacts = (model: TriageModel, events: readonly WalkEvent[]): readonly string[] => {
  const denied = new Set(events.flatMap((event) => (event.kind === 'not-so' ? [event.what] : [])));
  const own = new Set(events.flatMap((event) => (event.kind === 'answer' ? [event.check] : [])));
  return events.flatMap((event) =>
    event.kind === 'text'
      ? event.facts
          .filter(({ what }) => !denied.has(what) && !own.has(what))
          .flatMap(({ what, answer }) => seenLine(model, { check: what, answer }) ?? [])
      : [],
  );
};

const ownWords = (walk: Walk): readonly Fact[] =>
  walk.state.events
    .filter((event) => event.kind === 'text')
    .flatMap((event): Fact[] =>
      event.kind === 'text' && event.words !== ''
        ? [{ label: `${nameOf(walk, event.by)} wrote`, value: `“${tidy(event.words, WORDS_SHOWN)}”` }]
        : [],
    )
    .slice(-4);

const whereItLies = (assessment: Assessment): string | null => {
  const links = located(assessment);
  const [first] = links;
  if (first === undefined || first.probability < 0.5) return null;
  const asked = assessment.evidence.observations.length > 2;
  const clear = asked
    ? links.filter(({ link, probability }) => probability < 0.02 && link !== first.link).slice(-3)
    : [];
  return `${first.title} (${percent(first.probability)})${clear.length === 0 ? '' : `; hardly in ${clear.map(({ title }) => title).join(', nor ')}`}`;
};

const tried = (model: TriageModel, walk: Walk): readonly string[] =>
  walk.state.events.flatMap((event) =>
    event.kind === 'try'
      ? [`${tidy(model.fault(event.fault)?.title ?? event.fault, 80)}: ${OUTCOME_WORDS[event.outcome]}`]
      : [],
  );

/** Below this nothing stands out, and a list of guesses would only mislead. */
const STANDS_OUT = 0.08;

const standsText = (assessment: Assessment): string => {
  const named = standing(assessment, 3).filter(({ probability }) => probability >= STANDS_OUT);
  return named.length === 0
    ? 'nothing stands out yet'
    : named.map(({ title, probability }) => `${title} (${percent(probability)})`).join('; ');
};

const listFact = (label: string, lines: readonly string[]): readonly Fact[] =>
  lines.length === 0 ? [] : [{ label, value: lines.map((line) => `• ${line}`).join('\n') }];

/** What a helper reads in ten seconds; causes whose remedy failed and that no longer stand are left out of "stands". */
export const summaryFacts = (model: TriageModel, walk: Walk, assessment: Assessment): readonly Fact[] => {
  const { context } = assessment;
  const answers = answered(walk.state.events).filter(({ answer }) => answer !== UNSURE);
  const history = answers.filter(({ check }) => HISTORY.includes(check));
  const seen = tellingFirst(
    model,
    answers.filter(({ check }) => !HISTORY.includes(check)),
  );
  const numbers = walk.state.events.flatMap((event) =>
    event.kind === 'found'
      ? [`numbers of the miss${event.said === '' ? '' : ` (${tidy(event.said, 90)})`}: ${event.cause}`]
      : [],
  );
  const lies = whereItLies(assessment);
  return [
    { label: 'Whose mount', value: memberName(walk) },
    {
      label: 'Connection',
      value: [
        context.path === null ? 'way not known' : (model.path(context.path)?.title ?? context.path),
        context.system === null ? 'computer not known' : SYSTEM_NAMES[context.system],
        ...(context.client === null ? [] : [CLIENT_NAMES[context.client]]),
      ].join('; '),
    },
    ...history.flatMap(({ check, answer }) => {
      const label = model.check(check)?.answers.find(({ id }) => id === answer)?.label;
      return label === undefined
        ? []
        : [{ label: check === 'changed-last' ? 'Changed last' : 'Worked before', value: label }];
    }),
    ...ownWords(walk),
    ...listFact('Seen', [
      ...readFacts(model, walk.state.events).slice(0, 4),
      ...seen.flatMap((event) => seenLine(model, event) ?? []),
      ...numbers,
    ]),
    ...listFact('Tried', tried(model, walk)),
    { label: 'Stands', value: standsText(assessment) },
    ...(lies === null ? [] : [{ label: 'It lies in', value: lies }]),
  ];
};

/** What is best looked at next by somebody who knows. */
const lookAtNext = (assessment: Assessment): string | null => {
  const ask = assessment.ranked.find(({ kind }) => kind === 'ask');
  const check = ask?.kind === 'ask' ? assessment.situation.checks[ask.check]?.entry : undefined;
  return check === undefined ? null : `Best looked at next: ${check.question}`;
};

const mustBeDone = (fault: FaultEntry, assessment: Assessment): readonly string[] => {
  const { steps, otherwise } = fault.remedy;
  return [
    ...linesFor(steps, assessment.context.system).map(lettered),
    ...(otherwise === undefined
      ? []
      : linesFor(otherwise, assessment.context.system).map((line) => `Or another way: ${line}`)),
  ];
};

const NO_MORE = 'My questions end here; a person should look at this. Show them what follows.';

export const handOnReply = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  fault: FaultEntry | null,
): Reply => {
  const next = fault === null ? lookAtNext(assessment) : null;
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk),
    level: 'caution',
    summary: fault === null ? NO_MORE : `It is most likely this: ${fault.title}. A person must do what follows.`,
    facts: summaryFacts(model, walk, assessment),
    notes: [
      ...(fault === null ? [] : mustBeDone(fault, assessment)),
      ...(next === null ? [] : [next]),
      `A helper can carry on from here: triage walk:${walk.id}`,
    ],
    choices: [back(walk), why(walk), { label: 'End', run: doLine(walk, 'end') }],
    data: stepData(walk, assessment),
  });
};

export const summaryReply = (model: TriageModel, walk: Walk, assessment: Assessment): Reply => {
  const { step } = assessment;
  const summary = ((): string => {
    if (walk.endedUtcMs !== null) return 'This walk has ended. What was said:';
    if (step.kind === 'done') return `Fixed: ${step.fault.title}. What was said:`;
    return 'Under way. What was said so far:';
  })();
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk),
    summary,
    facts: summaryFacts(model, walk, assessment),
    choices: walk.endedUtcMs === null ? [{ label: 'Go on', run: `triage walk:${walk.id}`, preferred: true }] : [],
    data: stepData(walk, assessment),
  });
};
