/** "I take it: …": what was read from a member's words or paste, with one press to take each thing back. */
import type { Choice } from '../../ground/problem.js';
import type { AnswerMeant, ReadFact, Reading } from '../../reading/index.js';
import { tableOf } from '../../ground/table-of.js';
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import { CLIENT_NAMES, SYSTEM_NAMES, takenBackIn, type TriageModel } from '../../triage/index.js';
import { fitted, wordsWithin } from './fitted.js';
import { COMPLAINT } from './told-at-card.js';
import { answerLine, briefOf, titleOf } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const MOST_TAKEN = 6;
const MOST_TO_TAKE_BACK = 8;
const MOST_GUESSED = 3;
const MOST_MEANINGS = 3;

const labelOf = (model: TriageModel, what: string, answer: string): string | null => {
  if (what === 'path') return model.path(answer)?.title ?? null;
  if (what === 'system') return Object.entries(SYSTEM_NAMES).find(([id]) => id === answer)?.[1] ?? null;
  if (what === 'client') return Object.entries(CLIENT_NAMES).find(([id]) => id === answer)?.[1] ?? null;
  return model.check(what)?.answers.find(({ id }) => id === answer)?.label ?? null;
};

/** "Another cable: no, just the same": an answer's label alone does not say of what. */
const guessLabel = (model: TriageModel, { what, answer }: Pick<ReadFact, 'what' | 'answer'>): string => {
  const [check, label] = [model.check(what), labelOf(model, what, answer)];
  return check === undefined || label === null ? '' : `${inSentence(briefOf(check))}: ${inSentence(label)}`;
};

/** "Both are right", "The time": of what, only the question says. */
const SAYS_NOT_OF_WHAT = /^(?:both|none|yes|no|all|one|nothing|neither|same|the other)\b/iu;

/** An answer's label as a line of its own: the trouble is told in full by it, of all else what was looked at stands before it. */
const ownLabel = (model: TriageModel, { what, answer }: Pick<ReadFact, 'what' | 'answer'>): string => {
  const label = labelOf(model, what, answer) ?? '';
  const standsAlone = model.check(what) === undefined || (COMPLAINT.has(what) && !SAYS_NOT_OF_WHAT.test(label));
  return standsAlone ? label : guessLabel(model, { what, answer });
};

/** As it is said back; a way or a system by its own name. */
export const labelledGuess = (model: TriageModel, { what, answer }: Pick<ReadFact, 'what' | 'answer'>): string =>
  fitted(guessLabel(model, { what, answer }) || inSentence(labelOf(model, what, answer) ?? ''), LONGEST_TAKEN);

/** Characters of one thing taken, so that the line stays one to glance at. */
const LONGEST_TAKEN = 90;

export const NOTHING_SURE = 'I keep your words for whoever helps; I could not read a sure sign from them, so I ask.';

/** So much of a member's words tells which are meant. */
const QUOTED = 60;

/** Said of words to a question that were no answer to it. */
export const notPlaced = (text: string, meant: AnswerMeant | null): string =>
  meant === null
    ? `I could not make an answer of “${wordsWithin(text, QUOTED)}”; your words are kept. Pick one, or tell me in other words.`
    : `Did you mean “${fitted(meant.label, LONGEST_TAKEN)}”? Or tell me in other words; yours are kept.`;

/** In a sentence: names and codes keep their capitals. */
const inSentence = (label: string): string =>
  /^[A-Z]{2}|^(?:I\b|Windows|Linux|Bluetooth|USB|Code)/u.test(label)
    ? label
    : label.charAt(0).toLowerCase() + label.slice(1);

/** What is told coarsely, and the checks whose answers, other than good, say it once more and say more. */
const SAID_BY = tableOf<readonly string[]>({
  'how-far.elsewhere': ['mount-does', 'miss', 'miss-shape', 'follow'],
  'how-far.no-move': ['mount-does', 'refused-where', 'slew'],
  'how-far.guiding': ['guiding'],
  'how-far.drops': ['when-drops'],
  'how-far.no-connect': ['message'],
  'how-far.not-seen': ['message', 'port-appears', 'device-status'],
  'mount-does.elsewhere': ['miss', 'miss-shape'],
  'mount-does.drifts': ['follow'],
  'mount-does.refuses-some': ['refused-where'],
  'worked-before.changed': ['changed-last'],
  'start-doubts.axis': ['polar-axis', 'north-by'],
  'start-doubts.not-home': ['home-start'],
  'start-doubts.star': ['star-sure', 'aligned-through'],
  'power-walk.thin': ['power-lead'],
  'power-walk.loose': ['power-touch'],
  'power-walk.weak': ['battery-volts', 'supply-amps'],
  'slew.nothing': ['mount-does'],
  'slew.parked': ['park-state', 'handset-shows'],
  'slew.low-limit': ['handset-shows'],
  'slew.side-limit': ['handset-shows'],
  'slew.not-aligned': ['handset-shows'],
  'handset-shows.parked': ['park-state'],
  'other-place.other-system': ['other-computer'],
});

type Told = Pick<ReadFact, 'what' | 'answer'>;

/** Whether others of what was read tell it already, and more. */
const isSaidBy = (model: TriageModel, { what, answer }: Told, others: readonly Told[]): boolean =>
  (SAID_BY.get(`${what}.${answer}`) ?? []).some((check) =>
    others.some((other) => other.what === check && other.answer !== model.check(check)?.good),
  );

interface Guessed {
  readonly perhaps: readonly Told[];
  readonly told: readonly Told[];
}

const isSameLabel = (one: string | null, other: string | null): boolean =>
  one !== null && one.toLowerCase() === other?.toLowerCase();

/** Of what words are only like, what a reply shows; `asked`: the step in hand, whose answer is asked for already. */
export const guessesShown = (
  model: TriageModel,
  { perhaps, told }: Guessed,
  asked: string | undefined,
): readonly Told[] =>
  perhaps
    .filter(({ what }) => what !== asked && !told.some((own) => own.what === what))
    .filter((guess) => !isSaidBy(model, guess, [...told, ...perhaps]))
    .filter(
      (guess) =>
        !told.some((own) =>
          isSameLabel(labelOf(model, own.what, own.answer), labelOf(model, guess.what, guess.answer)),
        ),
    )
    // The complaint is told in several ways: beside one of them a guess at another says the same again.
    .filter(({ what }) => !COMPLAINT.has(what) || !told.some((own) => COMPLAINT.has(own.what)))
    .filter((guess) => guessLabel(model, guess) !== '')
    .slice(0, MOST_GUESSED);

/**
 * What a reply says of a text just read, before the next step.
 * @param meant the answer to the step in hand that the text is, or is nearest to
 * @param asked the step in hand, whose answer is asked for already
 */
export const readWords = (
  model: TriageModel,
  read: Reading,
  meant: AnswerMeant | null = null,
  asked?: string,
): readonly string[] => {
  const answered =
    meant?.isSure === true ? [{ what: asked ?? '', answer: meant.id, label: fitted(meant.label, LONGEST_TAKEN) }] : [];
  const understood = read.understood.map(({ fact, label }) => ({
    what: fact.what,
    answer: fact.answer,
    label: fitted(label || ownLabel(model, fact), LONGEST_TAKEN),
  }));
  const taken = [...answered, ...understood]
    .filter(({ label }, i, all) => label !== '' && all.findIndex((other) => isSameLabel(other.label, label)) === i)
    .filter((one) => !isSaidBy(model, one, read.facts))
    .slice(0, MOST_TAKEN);
  const meanings =
    read.by === 'words' ? [] : read.says.slice(0, MOST_MEANINGS).map((says) => `That message means: ${says}`);
  const perhaps = guessesShown(model, { perhaps: read.perhaps, told: understood }, asked).map((fact) =>
    fitted(guessLabel(model, fact), LONGEST_TAKEN),
  );
  const nearest = meant?.isSure === false ? [`Did you mean “${fitted(meant.label, LONGEST_TAKEN)}”?`] : [];
  const guessed = [...(perhaps.length === 0 ? [] : [`Perhaps: ${perhaps.join('; ')}. If not, tell me.`]), ...nearest];
  // What is looked at next says enough.
  if (taken.length + meanings.length === 0 && meant === null && read.named.length > 0) return guessed;
  if (taken.length === 0) return meanings.length + guessed.length > 0 ? [...meanings, ...guessed] : [NOTHING_SURE];
  // A label that was cut still says what the meaning says.
  const same = new Set(taken.map(({ label }) => label.toLowerCase().replace(/…$/u, '')));
  return [
    ...(read.by === 'picture' ? ['Read from the picture; letters may have slips.'] : []),
    `I take it: ${taken.map(({ label }) => inSentence(label)).join('; ')}.`,
    ...guessed,
    ...meanings.filter((line) => ![...same].some((label) => line.toLowerCase().includes(label))),
  ];
};

/** Silent where nothing was understood. */
export const heardIn = (model: TriageModel, read: Reading): readonly string[] =>
  read.understood.length > 0 ? readWords(model, read) : [];

export interface TakenItem {
  readonly what: string;
  readonly answer: string;
  readonly label: string;
}

/** What was read in this walk and not taken back, the newest of it last. */
export const takenItems = (model: TriageModel, walk: Walk): readonly TakenItem[] => {
  const denied = takenBackIn(walk.state.events);
  const texts = walk.state.events.flatMap((event) => (event.kind === 'text' ? [event] : []));
  const said = texts.flatMap(({ facts }) => facts);
  const guesses = texts
    .flatMap((event) => event.guesses)
    .filter(({ what }) => !said.some((fact) => fact.what === what));
  const facts = [...guesses, ...said];
  return facts
    .filter(({ what }, i) => !denied.has(what) && !facts.slice(i + 1).some((later) => later.what === what))
    .map((fact) => {
      const label = guesses.includes(fact) ? guessLabel(model, fact) : ownLabel(model, fact);
      return { what: fact.what, answer: fact.answer, label: fitted(label, 60) };
    })
    .filter(({ label }) => label !== '')
    .slice(-MOST_TO_TAKE_BACK);
};

const notSo = (label: string): string => `Not so: ${label}`;

/** A line for each of them. */
export const takeBackChoices = (model: TriageModel, walk: Walk): readonly Choice[] =>
  takenItems(model, walk).map(({ what, label }) => ({ label: notSo(label), run: answerLine(walk, 'not', what) }));

const NOTHING_READ = 'Nothing is left that I read from your words.';

export const doubtReply = (model: TriageModel, walk: Walk, notes: readonly string[] = []): Reply => {
  const choices = takeBackChoices(model, walk);
  return reply({
    pointsAt: NOWHERE,
    title: titleOf(walk, 'What I read'),
    summary: choices.length === 0 ? NOTHING_READ : 'Which of these is not so?',
    notes,
    choices: [
      ...choices,
      ...(choices.length === 0 ? [] : [{ label: 'All of it is right', run: answerLine(walk, 'read', 'right') }]),
      { label: 'Go on', run: `triage walk:${walk.id}` },
    ],
    data: { walkId: walk.id },
  });
};
