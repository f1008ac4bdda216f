/** `triage`: walks a member, or a helper on that member's behalf, from "it does not connect" to a verified cure. */
import { onceOf } from '../../ground/once.js';
import { createInTurn, type InTurn } from '../../ground/in-turn.js';
import { isProblem, problem } from '../../ground/problem.js';
import { withoutFaces } from '../../ground/without-faces.js';
import { readMemberFile } from '../../pictures/read-member-file.js';
import type { Outcome, Reply } from '../../reply/reply.js';
import type { Store } from '../../store/store.js';
import { assess, standing, type Assessment, type TriageModel, type WalkState } from '../../triage/index.js';
import { choice, defineCommand, file, member, optional, text } from '../core/command.js';
import type { Form } from '../core/form.js';
import { answersShown } from './answer-choices.js';
import { collectReply } from './collecting-offer.js';
import { acceptHelper, agreed, askToHelp, hasSpoken } from './consent.js';
import { entriesInWalk } from './entries-in-walk.js';
import { findWalk, notYours, speakerOf, unknownWalk, type Found } from './find-walk.js';
import { forAPersonReply, gladReply, summaryReply } from './hand-on.js';
import { keepEnd } from './just-ended.js';
import { doubtReply } from './read-notes.js';
import { cautionsOf } from './step-cautions.js';
import { stepReply } from './step-reply.js';
import { withoutThirdAsking } from './put-twice.js';
import { takeTurn } from './take-turn.js';
import { DOINGS, type Turn } from './turn.js';
import { clubOutcomes, keepWalk, latestOf, type Walk } from './walk-keeper.js';
import { whyReply } from './why-reply.js';
import { memberName } from './walk-words.js';

const PASTE: Form = {
  title: 'What it says',
  fields: [
    { id: 'text', option: 'text', label: 'A message, a log, or your own words', kind: 'paragraph' },
    { id: 'file', option: 'file', label: 'Or a log file or screenshot', kind: 'file' },
  ],
};

const NUMBERS_FORM: Form = {
  title: 'The numbers of the miss',
  into: 'text',
  fields: [
    { id: 'target', label: 'Sent to', hint: 'Vega', kind: 'line', required: true },
    { id: 'landed', label: 'Landed at: a star, or how far off', hint: 'about 15 degrees east of it', kind: 'line' },
    { id: 'shown', label: 'Altitude, azimuth the mount shows', hint: '41, 135', kind: 'line' },
    { id: 'lst', label: 'Sidereal time the mount shows', hint: '18:22:30', kind: 'line' },
    { id: 'site', label: 'Site, if not saved: a place, or lat,long', hint: '52.71, 0.12', kind: 'line' },
  ],
};

/** The cautions given in this walk, those of this reply among them. */
const cautionedBy = ({ walk, ifFixed, whichCured }: Turn, assessment: Assessment): WalkState => {
  const given = walk.state.cautioned ?? [];
  const asksElse = ifFixed !== undefined || whichCured !== undefined;
  const fresh = asksElse ? [] : cautionsOf(assessment).filter((id) => !given.includes(id));
  return fresh.length === 0 ? walk.state : { ...walk.state, cautioned: [...given, ...new Set(fresh)] };
};

/** The walk, which keeps what its reply lists and warns of. */
const listing = (turn: Turn, assessment: Assessment): Walk => {
  const { walk, show, first } = turn;
  const { shown: _before, ...state } = show === 'step' || show === 'more' ? cautionedBy(turn, assessment) : walk.state;
  if (show !== 'step' && show !== 'more') return walk;
  if (assessment.step.kind !== 'ask' || assessment.step.opening) return { ...walk, state };
  const answers = answersShown(walk, assessment, { whole: show === 'more', first });
  return { ...walk, state: { ...state, shown: { step: assessment.step.id, answers: [...answers] } } };
};

const shown = (
  model: TriageModel,
  turn: Turn,
  assessment: Assessment,
  outcomes: Readonly<Record<string, number>>,
  cautioned: readonly string[] | undefined,
): Reply => {
  const { walk, notes, show } = turn;
  if (show === 'glad') return gladReply(walk, assessment, notes);
  if (show === 'why') return whyReply(model, walk, assessment, standing(assessment, 5), outcomes);
  if (show === 'summary' || walk.endedUtcMs !== null) {
    const made = summaryReply(model, walk, assessment);
    return { ...made, notes: [...notes, ...made.notes] };
  }
  if (show === 'person') {
    const made = forAPersonReply(model, walk, assessment);
    return { ...made, notes: [...notes, ...made.notes] };
  }
  if (show === 'collect') return collectReply(model, walk, assessment);
  if (show === 'doubt') return doubtReply(model, walk, notes);
  const pointer =
    walk.awaitsMember === true ? [`${memberName(walk)} can answer too, by writing: triage walk:${walk.id}`] : [];
  return stepReply(model, walk, assessment, {
    notes: [...notes, ...pointer],
    whole: show === 'more',
    before: turn.at,
    cautioned,
    asksBack: turn.asksBack,
    isTold: turn.isTold,
    first: turn.first,
    few: turn.few,
    ifFixed: turn.ifFixed,
    whichCured: turn.whichCured,
    offers: turn.offers,
  });
};

/** The walk's reply keeps the cautions and the privacy of the answer it rests on. */
const restingOn = (made: Reply, { rests }: Turn): Reply =>
  rests === undefined
    ? made
    : {
        ...made,
        level: rests.level === 'danger' ? 'danger' : made.level,
        cautions: [...new Set([...rests.cautions, ...made.cautions])],
        pointsAt: rests.pointsAt,
        audience: rests.audience === 'asker' ? 'asker' : made.audience,
      };

const endedMeanwhile = (): Outcome =>
  problem(
    'walk-ended',
    'This walk was ended while the file was being read, so nothing of it was taken. To begin anew with it, send it once more with: triage do:new',
  );

/** By the part of the store that keeps walks: each request has a store of its own around it. */
const turnsIn = onceOf((_: Store['walks']): InTurn => createInTurn());
const turnsOf = ({ walks }: Store): InTurn => turnsIn(walks);

export const triage = defineCommand({
  name: 'triage',
  summary: 'Find out, step by step, why the computer and the mount do not talk',
  options: {
    text: optional(
      text('What you see, in words, or pasted: an error message, a system log, a device list', { maxLength: 3900 }),
    ),
    for: optional(member('The member you are helping; both of you may answer')),
    walk: optional(text('Which walk, by its id; default: the one under way', { maxLength: 12 })),
    answer: optional(text('An answer to the question in hand', { maxLength: 80 })),
    do: optional(
      choice(
        'why this step, back a step, the summary, end, a new walk, accept or release a helper, more answers, doubt what was read, collect by one paste',
        DOINGS,
      ),
    ),
    file: optional(file('A log file or a screenshot')),
  },
  bare: 'text',
  freeText: true,
  forms: { paste: PASTE, numbers: NUMBERS_FORM },
  examples: [
    'triage',
    'triage the port is not in the list',
    'triage usb 1-1: device descriptor read/64, error -71',
    'triage do:why',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, asker, nowUtcMs, privacy } = request;
    const model = deps.triage();
    const bare = options.text?.trim().toLowerCase();
    const fresh = options.do === 'new' || bare === 'new';
    const found = await findWalk(deps, model, request, { walk: options.walk, for: options.for, fresh }, nowUtcMs);
    if (isProblem(found)) return found;
    const words = options.text === undefined ? undefined : withoutFaces(options.text);
    const inWords = fresh ? { text: bare === 'new' ? undefined : words } : { ...options, text: words };
    // A picture takes its time, in which the walk is free for the next press.
    const isHeard = speakerOf(found.walk, asker) !== null && found.asksToHelp !== true;
    const sent = isHeard ? options.file : undefined;
    const read = sent === undefined ? undefined : await readMemberFile(deps.pictures, sent);
    const said = { ...inWords, file: read };
    const answered = async (latest: Found): Promise<Outcome> => {
      if (latest.asksToHelp === true) return askToHelp(deps.store, latest.walk, asker);
      if (options.do === 'accept') return acceptHelper(deps.store, latest.walk, asker, options.answer);
      const by = speakerOf(latest.walk, asker);
      if (by === null) return notYours(latest.walk);
      if (read !== undefined && latest.walk.endedUtcMs !== null && found.walk.endedUtcMs === null)
        return endedMeanwhile();
      if (options.do === 'entries') return entriesInWalk(deps, request, latest.walk, by);
      const outcomes = await clubOutcomes(deps.store, latest.walk.clubId);
      const context = { deps, model, asker, privacy, by, outcomes, nowUtcMs };
      const took = await takeTurn(context, latest, said);
      if (isProblem(took)) return took;
      const taken = withoutThirdAsking(context, took, latest.walk.state);
      const assessment = assess(model, taken.walk.state, outcomes);
      const turn = { ...taken, walk: listing(taken, assessment) };
      const agrees = by === 'member' && turn.walk.awaitsMember === true && hasSpoken(options);
      const kept = await keepWalk(deps.store, { ...(agrees ? agreed(turn.walk) : turn.walk), updatedUtcMs: nowUtcMs });
      keepEnd(deps.store, asker, [latest.walk, turn.walk], nowUtcMs);
      const told = kept.trouble === null ? turn : { ...turn, notes: [...turn.notes, kept.trouble] };
      const made = restingOn(shown(model, told, assessment, outcomes, taken.walk.state.cautioned), turn);
      return agrees ? { ...made, data: { ...made.data, agreed: true } } : made;
    };
    // Two who answer one walk at the same moment are both heard: each turn begins where the one before left it.
    return turnsOf(deps.store)(found.walk.id, async () => {
      const latest = found.isNew ? found.walk : await latestOf(deps.store, found.walk);
      // Forgotten while it waited its turn: nothing of it is written again.
      return latest === null ? unknownWalk(found.walk.id) : answered({ ...found, walk: latest });
    });
  },
});
