/** Words a triage walk for people: each step, the reasons for it, the summary for a helper. */
import { tidy } from '../../ground/tidy.js';
import type { Choice } from '../../ground/problem.js';
import { reply, type Fact, type Json, type Level, type Reply } from '../../reply/reply.js';
import {
  CLIENT_NAMES,
  contradictions,
  lookAlikes,
  standing,
  SYSTEM_NAMES,
  UNSURE,
  whatEachAnswerSays,
  whoSaidWhat,
  type Assessment,
  type CheckEntry,
  type FaultEntry,
  type Speaker,
  type System,
  type TriageModel,
} from '../../triage/index.js';
import { cautionText } from '../../cautions/cautions.js';
import type { Walk } from './walk-keeper.js';

const BUTTONS_IN_A_ROW = 5;
export const answerLine = (walk: Walk, step: string, answer: string): string =>
  `triage walk:${walk.id} answer:${step}.${answer}`;
const doLine = (walk: Walk, what: string): string => `triage walk:${walk.id} do:${what}`;

const why = (walk: Walk): Choice => ({ label: 'Why this?', run: doLine(walk, 'why') });
const back = (walk: Walk): Choice => ({ label: 'Back a step', run: doLine(walk, 'back') });

/** Answers first; "why" and "back" only as far as one row of buttons holds them (they can always be typed). */
const withTools = (walk: Walk, answers: readonly Choice[], tools: readonly Choice[]): readonly Choice[] =>
  answers.length > BUTTONS_IN_A_ROW ? [...answers, ...tools] : [...answers, ...tools].slice(0, BUTTONS_IN_A_ROW);

const percent = (probability: number): string =>
  probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;

const forSystem = (
  parts: { readonly all?: readonly string[] | string | undefined } & {
    readonly [K in System]?: readonly string[] | string | undefined;
  },
  system: System | null,
): string[] => {
  const own: readonly (readonly [System, string])[] = [
    ['windows', 'Windows'],
    ['macos', 'macOS'],
    ['linux', 'Linux'],
  ];
  const lines = parts.all === undefined ? [] : [parts.all].flat();
  if (system !== null) return [...lines, ...[parts[system] ?? []].flat()];
  return [...lines, ...own.flatMap(([key, name]) => [parts[key] ?? []].flat().map((line) => `${name}: ${line}`))];
};

const howLines = (check: CheckEntry, system: System | null): string[] =>
  typeof check.how === 'string' ? [check.how] : [forSystem(check.how, system).join(' ')];

const remedyLines = (fault: FaultEntry, system: System | null): string[] => {
  const { steps } = fault.remedy;
  return Array.isArray(steps) ? steps : forSystem(steps, system);
};

const cautionLines = (ids: readonly string[]): string[] => [...new Set(ids)].map(cautionText);

/** Before a member has spoken only the id is known; Discord's is a number, of no use to a reader. */
const memberName = ({ state, memberId }: Walk): string => {
  if (state.names.member !== null) return tidy(state.names.member, 30);
  const readable = /^(?:console:|matrix:@)([^:]+)/u.exec(memberId)?.[1];
  return readable === undefined ? 'the member' : tidy(readable, 30);
};

const nameOf = (walk: Walk, by: Speaker | null): string => {
  if (by === null) return 'Known';
  return by === 'member' ? memberName(walk) : tidy(walk.state.names.helper ?? 'The helper', 30);
};

const titleOf = (walk: Walk): string =>
  walk.helperId === null && walk.state.names.helper === null
    ? 'Finding the connection fault'
    : `Finding the connection fault for ${memberName(walk)}`;

const dataOf = (walk: Walk, assessment: Assessment): Readonly<Record<string, Json>> => ({
  walkId: walk.id,
  step: { kind: assessment.step.kind, id: assessment.step.id },
  standing: standing(assessment).map(({ faultId, probability }) => ({
    faultId,
    probability: Math.round(probability * 1e4) / 1e4,
  })),
});

interface Said {
  readonly notes?: readonly string[];
}

const openingReply = (
  model: TriageModel,
  walk: Walk,
  id: 'path' | 'system' | 'client',
): Pick<Reply, 'summary' | 'notes' | 'choices'> => {
  const notSure: Choice = { label: 'Not sure', run: answerLine(walk, id, UNSURE) };
  switch (id) {
    case 'path':
      return {
        summary: 'How does the computer reach the mount?',
        notes: [],
        choices: [...model.paths.map((path) => ({ label: path.title, run: answerLine(walk, id, path.id) })), notSure],
      };
    case 'system':
      return {
        summary: 'Which computer is it?',
        notes: [],
        choices: [
          ...(['windows', 'macos', 'linux'] as const).map((system) => ({
            label: SYSTEM_NAMES[system],
            run: answerLine(walk, id, system),
          })),
          notSure,
        ],
      };
    case 'client':
      return {
        summary: 'How does your program talk to the mount?',
        notes: [
          'If you pick a port such as COM3 or /dev/ttyUSB0 in the program itself, it opens the port. If you pick a driver from a list, it goes through a driver platform.',
        ],
        choices: [
          { label: 'It opens the port itself', run: answerLine(walk, id, 'direct') },
          { label: 'Through a driver platform', run: answerLine(walk, id, 'platform') },
          notSure,
        ],
      };
  }
};

const tryReply = (
  model: TriageModel,
  walk: Walk,
  fault: FaultEntry,
  system: System | null,
): Pick<Reply, 'summary' | 'facts' | 'notes' | 'cautions' | 'choices'> => {
  const others = lookAlikes(model, fault).map(({ title }) => title.toLowerCase());
  const astray =
    fault.handsOverTo === undefined
      ? []
      : [
          'The miss tells which entry is wrong: ask astray with the target, your site, and where the tube landed (help astray shows how), ' +
            `then answer with its cause: triage walk:${walk.id} answer:found.CAUSE`,
        ];
  return {
    summary: `Try this: ${fault.title}.`,
    facts: [{ label: 'Why', value: fault.why }],
    notes: [
      ...remedyLines(fault, system).map((line, i) => `${i + 1}. ${line}`),
      ...astray,
      `You should see: ${fault.verify.text} And what failed before should work.`,
      ...(others.length > 0 ? [`Looks the same: ${others.join('; ')}. That comes next if this is not it.`] : []),
    ],
    cautions: cautionLines(fault.remedy.cautions ?? []),
    choices: withTools(
      walk,
      [
        { label: 'I see that, and it works now', run: answerLine(walk, fault.id, 'works') },
        { label: 'No change', run: answerLine(walk, fault.id, 'same') },
        { label: 'Something changed, still not right', run: answerLine(walk, fault.id, 'changed') },
        { label: 'Could not do it', run: answerLine(walk, fault.id, 'could-not') },
      ],
      [
        ...(fault.handsOverTo === undefined ? [] : [{ label: 'How astray works', run: 'help astray' }]),
        why(walk),
        back(walk),
      ],
    ),
  };
};

const askReply = (
  walk: Walk,
  check: CheckEntry,
  again: boolean,
  assessment: Assessment,
): Pick<Reply, 'summary' | 'notes' | 'cautions' | 'choices'> => ({
  summary: again ? `Please look once more: ${check.question}` : check.question,
  notes: howLines(check, assessment.context.system),
  cautions: cautionLines([...(check.powerOffFirst === true ? ['power-off-first'] : []), ...(check.cautions ?? [])]),
  choices: withTools(
    walk,
    [
      ...check.answers.map(({ id, label }) => ({ label, run: answerLine(walk, check.id, id) })),
      { label: 'Not sure', run: answerLine(walk, check.id, UNSURE) },
    ],
    [why(walk), back(walk)],
  ),
});

const doubtNotes = (assessment: Assessment): string[] => {
  const { step } = assessment;
  return contradictions(assessment).map(({ checkId, question, answer }) =>
    step.kind === 'ask' && step.id === checkId
      ? `You said "${answer}". That does not fit the other answers; one of them must be off.`
      : `This does not fit the rest: "${question}" ${answer}.`,
  );
};

/** What a helper reads in ten seconds. */
export const summaryFacts = (model: TriageModel, walk: Walk, assessment: Assessment): readonly Fact[] => {
  const said = whoSaidWhat(model, walk.state);
  const { context } = assessment;
  return [
    {
      label: 'Connection',
      value: context.path === null ? 'not known' : (model.path(context.path)?.title ?? context.path),
    },
    {
      label: 'Computer',
      value: [
        context.system === null ? 'not known' : SYSTEM_NAMES[context.system],
        ...(context.client === null ? [] : [CLIENT_NAMES[context.client]]),
      ].join('; '),
    },
    ...said
      .filter((_, i) => !['path', 'system', 'client'].includes(walk.state.events[i]?.kind ?? ''))
      .slice(-14)
      .map(({ by, text }) => ({ label: nameOf(walk, by), value: tidy(text, 160) })),
    {
      label: 'Still standing',
      value: standing(assessment, 3)
        .map(({ title, probability }) => `${title} (${percent(probability)})`)
        .join('; '),
    },
  ];
};

/** The reply for where the walk stands now. */
export const stepReply = (model: TriageModel, walk: Walk, assessment: Assessment, { notes = [] }: Said = {}): Reply => {
  const { step } = assessment;
  const common = { title: titleOf(walk), data: dataOf(walk, assessment) };
  const made = (parts: Pick<Reply, 'summary'> & Partial<Reply>, level?: Level): Reply => {
    const cautions = parts.cautions ?? [];
    return reply({
      ...common,
      level: level ?? (cautions.length > 0 ? 'caution' : 'info'),
      ...parts,
      notes: [...notes, ...(parts.notes ?? [])],
    });
  };
  switch (step.kind) {
    case 'ask': {
      if (step.opening) return made(openingReply(model, walk, step.id));
      const asked = askReply(walk, step.check, step.again, assessment);
      return made({ ...asked, notes: [...doubtNotes(assessment), ...asked.notes] });
    }
    case 'try': {
      const tried = tryReply(model, walk, step.fault, assessment.context.system);
      return made({ ...tried, notes: [...doubtNotes(assessment), ...tried.notes] });
    }
    case 'done':
      return made(
        {
          summary: `Fixed: ${step.fault.title}.`,
          notes: [
            'May I count this cause for the club, without your name? It helps to ask the right thing sooner next time.',
          ],
          choices: [
            { label: 'Yes, count it', run: answerLine(walk, 'count', 'yes'), preferred: true },
            { label: 'No, just end', run: answerLine(walk, 'count', 'no') },
            { label: 'It stopped working again', run: doLine(walk, 'back') },
          ],
        },
        'good',
      );
    case 'handOn':
      return made(
        {
          summary: 'I have run out of likely causes; a person should look at this. Show them what follows.',
          facts: summaryFacts(model, walk, assessment),
          notes: [`A helper can carry on from here: triage walk:${walk.id}`],
          choices: [back(walk), why(walk), { label: 'End', run: doLine(walk, 'end') }],
        },
        'caution',
      );
  }
};

/** Causes still standing and what the step in hand would tell. */
export const whyReply = (model: TriageModel, walk: Walk, assessment: Assessment): Reply => {
  const { step } = assessment;
  const causes = standing(assessment, 5);
  const best = assessment.ranked[0];
  const reason = ((): string => {
    switch (step.kind) {
      case 'ask':
        return step.opening
          ? 'What can be wrong depends on it.'
          : step.check.safety === true
            ? 'A wrong guess here could hurt you or the mount, so it comes first.'
            : step.again
              ? 'An answer given before fits badly with the rest; a second look is cheaper than a wrong turn.'
              : 'Its answers split the causes still standing best for the minutes it takes.';
      case 'try':
        return 'It is likely enough, and quick enough, that trying it beats asking more.';
      case 'done':
        return 'The remedy was done and its effect was seen.';
      case 'handOn':
        return 'Nothing left to ask or try is likely to pay for its time.';
    }
  })();
  const leads = whatEachAnswerSays(assessment)
    .filter(({ likeliest }) => likeliest.length > 0)
    .map(
      ({ label, likeliest }) =>
        `"${label}" would point to: ${likeliest.map(({ title, probability }) => `${title} (${percent(probability)})`).join('; ')}.`,
    );
  return reply({
    title: titleOf(walk),
    summary: reason,
    facts: causes.map(({ title, probability }) => ({ label: percent(probability), value: title })),
    notes: [
      ...leads,
      ...(best === undefined
        ? []
        : [`About ${Math.round(best.minutes)} minutes to go on average, a helper's visit counted.`]),
    ],
    choices: [{ label: 'Go on', run: `triage walk:${walk.id}`, preferred: true }, back(walk)],
    data: dataOf(walk, assessment),
  });
};

export const summaryReply = (model: TriageModel, walk: Walk, assessment: Assessment): Reply =>
  reply({
    title: titleOf(walk),
    summary:
      walk.endedUtcMs !== null
        ? 'This walk has ended. What was said:'
        : assessment.step.kind === 'done'
          ? `Fixed: ${assessment.step.fault.title}. What was said:`
          : 'Under way. What was said so far:',
    facts: summaryFacts(model, walk, assessment),
    choices: walk.endedUtcMs === null ? [{ label: 'Go on', run: `triage walk:${walk.id}`, preferred: true }] : [],
    data: dataOf(walk, assessment),
  });

/** What pasted text answered by itself. */
export const readingNotes = (
  model: TriageModel,
  read: {
    readonly matched: readonly { readonly says?: string | undefined }[];
    readonly answers: ReadonlyMap<string, string>;
  },
  asked: ReadonlySet<string>,
): string[] => {
  if (read.matched.length === 0) return ['I recognised nothing in that text, so I ask.'];
  const skipped = [...read.answers]
    .filter(([checkId]) => asked.has(checkId))
    .flatMap(([checkId, answer]) => {
      const check = model.check(checkId);
      return check === undefined
        ? []
        : [
            `Skipped, your text answers it: ${check.question} ${check.answers.find(({ id }) => id === answer)?.label ?? answer}.`,
          ];
    });
  return [
    ...read.matched.flatMap(({ says }) => (says === undefined ? [] : [`Your text says: ${says}`])).slice(0, 4),
    ...skipped.slice(0, 6),
  ];
};
