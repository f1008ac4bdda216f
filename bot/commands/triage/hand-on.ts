/** What a helper reads on one phone screen: who, what, since when, the member's own words, what was seen and tried, what stands. */
import { tidy } from '../../ground/tidy.js';
import { withoutContact } from '../../ground/without-contact.js';
import { NOWHERE, reply, type Fact, type Reply } from '../../reply/reply.js';
import {
  CLIENT_NAMES,
  OWN_SUSPICION,
  ownSuspicion,
  suspicions,
  SYSTEM_NAMES,
  takenBackIn,
  type Assessment,
  type FaultEntry,
  type TriageModel,
  type WalkEvent,
} from '../../triage/index.js';
import { fitted, wordsWithin } from './fitted.js';
import { takeBackChoices } from './read-notes.js';
import { answered, lookAtNext, mustBeDone, type Answered } from './next-for-helper.js';
import { roomBeside } from './sheet-room.js';
import { stepData } from './step-data.js';
import { standsFacts, wasTriedInVain } from './stands-for-helper.js';
import { labelOf, seenLine, tried } from './tried-for-helper.js';
import { wordsForHelper } from './words-for-helper.js';
import { back, doLine, doubt, memberName, titleOf, why } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const MOST_SEEN = 4;

const HISTORY = ['changed-last', 'worked-before'];

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

/** What stood in a log or a picture; the member's own words stand there themselves. */
const readInLogs = (model: TriageModel, events: readonly WalkEvent[]): readonly string[] => {
  const denied = takenBackIn(events);
  const own = new Set(events.flatMap((event) => (event.kind === 'answer' ? [event.check] : [])));
  const lines = events.flatMap((event) =>
    event.kind === 'text'
      ? event.facts
          .filter(({ what, by }) => by !== 'words' && !denied.has(what) && !own.has(what))
          .flatMap(({ what, answer }) => seenLine(model, { check: what, answer }) ?? [])
      : [],
  );
  return [...new Set(lines)].slice(0, 2);
};

const listFact = (label: string, lines: readonly string[]): readonly Fact[] =>
  lines.length === 0 ? [] : [{ label, value: lines.map((line) => `• ${line}`).join('\n') }];

/** On a sheet that others read, "your friend" is theirs who wrote. */
const theirs = (about: string): string => about.replace(/^your /u, 'a ');

const whoText = (model: TriageModel, walk: Walk, { context }: Assessment): string =>
  [
    walk.state.about === undefined ? memberName(walk) : `${memberName(walk)} for ${theirs(walk.state.about)}`,
    ...(context.path === null ? [] : [model.path(context.path)?.title ?? context.path]),
    ...(context.system === null ? [] : [SYSTEM_NAMES[context.system]]),
    ...(context.client === null ? [] : [CLIENT_NAMES[context.client]]),
  ].join('; ');

/** What changed and whether it ever worked; "nothing changed" only where the member's words told of nothing either. */
const sinceText = (model: TriageModel, walk: Walk, { evidence, situation }: Assessment): string =>
  answered(walk.state.events)
    .filter(({ check, answer }) => {
      const index = situation.checkIndex.get(check);
      const held = evidence.observations.filter((observation) => observation.check === index);
      const holds = held.some((one) => situation.checks[one.check]?.answers[one.answer] === answer);
      return HISTORY.includes(check) && (held.length === 0 || holds);
    })
    .flatMap((event) => labelOf(model, event) ?? [])
    .join('; ');

/** So many of the member's suspicions, each in so many characters. */
const [MOST_SUSPECTED, SUSPECTED_SHOWN] = [2, 60];

/** What the member suspects, and what the look at it showed. */
const suspectsFacts = (model: TriageModel, { state: { events } }: Walk): readonly Fact[] => {
  const shown = suspicions(events)
    .slice(-MOST_SUSPECTED)
    .map(({ check, said }) => {
      const answer = events.findLast((event) => event.kind === 'answer' && event.check === check);
      const label = answer?.kind === 'answer' ? labelOf(model, answer) : undefined;
      return `“${wordsWithin(withoutContact(said ?? ''), SUSPECTED_SHOWN)}”${label === undefined ? '' : `: ${fitted(label, 48)}`}`;
    });
  return shown.length === 0 ? [] : [{ label: 'Suspects', value: shown.join('; ') }];
};

/** With less than this left for the member's words, what speaks for a cause is left out. */
const ROOM_FOR_WORDS = 100;

/** Characters that the later remarks are given before what was found well is shown. */
const ROOM_FOR_WELL = 160;

/**
 * What a helper reads in ten seconds; nothing that was only guessed from words stands among what was seen. The member's later remarks
 * get the room that the rest leaves.
 * @param beside what else stands on the same sheet
 */
export const summaryFacts = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  beside: readonly Fact[] = [],
): readonly Fact[] => {
  const since = sinceText(model, walk, assessment);
  const seen = tellingFirst(
    model,
    answered(walk.state.events).filter(({ check }) => !HISTORY.includes(check) && check !== OWN_SUSPICION),
  );
  const numbers = walk.state.events.flatMap((event) =>
    event.kind === 'found' ? [`Numbers of the miss: ${event.said === '' ? event.cause : tidy(event.said, 90)}`] : [],
  );
  const who: Fact = { label: 'Who, what', value: whoText(model, walk, assessment) };
  const standsWith = (isBrief: boolean): readonly Fact[] => [
    ...standsFacts(model, walk, assessment, isBrief),
    ...(since === '' ? [] : [{ label: 'Since', value: since }]),
  ];
  const afterWith = (shown: readonly Answered[], isBrief = false): readonly Fact[] => [
    ...listFact('Seen', [
      ...readInLogs(model, walk.state.events),
      ...shown.flatMap((event) => seenLine(model, event) ?? []),
      ...numbers,
    ]),
    ...listFact('Tried', tried(model, walk, isBrief)),
  ];
  const suspects = suspectsFacts(model, walk);
  const words = (room?: number): readonly Fact[] => [...wordsForHelper(walk, room), ...suspects];
  const room = (after: readonly Fact[], isBrief = false): number =>
    roomBeside([who, ...standsWith(isBrief), ...words().slice(0, 1), ...suspects, ...after, ...beside]);
  // What was found well goes first where there is no room: it tells least.
  const whole = afterWith(seen);
  const telling = seen.filter(({ check, answer }) => model.check(check)?.good !== answer);
  const isBrief = room(whole) <= ROOM_FOR_WELL && room(afterWith(telling)) < ROOM_FOR_WORDS;
  const after = room(whole) > ROOM_FOR_WELL ? whole : afterWith(telling, isBrief);
  return [who, ...words(room(after, isBrief)), ...standsWith(isBrief), ...after];
};

const withNext = (model: TriageModel, walk: Walk, assessment: Assessment, next: readonly Fact[]): readonly Fact[] => [
  ...summaryFacts(model, walk, assessment, next),
  ...next,
];

const SHOW_THIS = 'Show this to somebody who knows mounts; it can be copied.';
const NO_MORE = `My questions end here. ${SHOW_THIS}`;

/** The trouble went with what they suspected. */
const FOUND_BY_THEM = `Then you have found it yourself: leave it away, or have it put right. ${SHOW_THIS}`;

const endOf = ({ state }: Walk): string => (ownSuspicion(state.events)?.isGone === true ? FOUND_BY_THEM : NO_MORE);

const knownCause = (walk: Walk, { id, title }: FaultEntry): string =>
  `${wasTriedInVain(walk, id) ? 'Most likely, though it was tried' : 'Most likely'}: ${title}. Somebody should do what stands last.`;

export const handOnReply = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  fault: FaultEntry | null,
): Reply => {
  const next = fault === null ? lookAtNext(model, walk, assessment) : mustBeDone(walk, fault, assessment);
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'For a helper'),
    level: 'caution',
    summary: fault === null ? endOf(walk) : knownCause(walk, fault),
    facts: withNext(
      model,
      walk,
      assessment,
      next === null ? [] : [{ label: fault === null ? 'Look next' : 'To do', value: next }],
    ),
    choices: [
      why(walk),
      back(walk),
      ...(takeBackChoices(model, walk).length > 0 ? [doubt(walk)] : []),
      { label: 'End', run: doLine(walk, 'end') },
    ],
    data: stepData(walk, assessment),
  });
};

/** The same for a member who asks for a person before the questions are at their end; nothing is lost if they go on. */
export const forAPersonReply = (model: TriageModel, walk: Walk, assessment: Assessment): Reply => {
  const { step } = assessment;
  const next = step.kind === 'try' ? mustBeDone(walk, step.fault, assessment) : lookAtNext(model, walk, assessment);
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'For a helper'),
    summary: `Of course. ${SHOW_THIS}`,
    facts: withNext(
      model,
      walk,
      assessment,
      next === null ? [] : [{ label: step.kind === 'try' ? 'Try next' : 'Look next', value: next }],
    ),
    choices: [{ label: 'Go on', run: `triage walk:${walk.id}` }, why(walk), { label: 'End', run: doLine(walk, 'end') }],
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
    title: titleOf(walk, 'What was said'),
    summary,
    facts: summaryFacts(model, walk, assessment),
    choices: walk.endedUtcMs === null ? [{ label: 'Go on', run: `triage walk:${walk.id}`, preferred: true }] : [],
    data: stepData(walk, assessment),
  });
};

/** A word at a mended end, and no page. */
export const gladReply = (walk: Walk, assessment: Assessment, notes: readonly string[]): Reply =>
  reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'Fixed'),
    level: 'good',
    summary: notes.join(' '),
    data: stepData(walk, assessment),
  });
