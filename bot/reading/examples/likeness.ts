/** What the clauses of a text are like, beside what the sayings read in it: doubts about the latter, and guesses at what they do not know. */
import { answersOf, type Answer } from '../answers-told.js';
import type { Finding } from '../finding.js';
import { holdsEither, holdsSeveral, keepsFromHarm, keyOf, type ReadFact, type Understood } from '../reading.js';
import type { Clauses } from '../words/sentences.js';
import type { Span } from '../messages/compile-pattern.js';
import type { Clause } from './clauses.js';
import { IS } from '../words/asked.js';
import { isStageInBrief } from './stage-in-brief.js';
import { isWorded } from './worded.js';
import { isOfMember } from '../words/stands.js';
import type { Likely, WeighClauses } from './likely.js';

export interface Likeness {
  readonly weighClauses: WeighClauses;
  /** Whether an answer ("check.answer") may be doubted or guessed: it is one of today's, and its check keeps no gear from harm. */
  readonly isOpen: (answer: string) => boolean;
  /** Whether a check is of a way to the mount ("path" of a fact; of several ways together each check is). */
  readonly bears: (check: string, path: string) => boolean;
}

export interface Liked {
  /** What sayings found, without what the text is nothing like. */
  readonly weighed: (findings: readonly Finding[]) => readonly Finding[];
  /**
   * The facts that stand, with what the text all but says; and guesses, never taken as said: what it is likely to tell of checks that
   * have no answer yet, at most one a check.
   * @param printed checks that a message answers, whatever words stand around it; null: so few words that little else can be meant; nothing is doubted
   * @param found "check.answer" of all that words and messages told before it was weighed which of it holds
   * @param quieted checks, and answers ("check.answer"), of which the text's likeness says nothing
   */
  readonly judged: (
    gathered: { readonly facts: readonly ReadFact[]; readonly understood: readonly Understood[] },
    printed: ReadonlySet<string> | null,
    found: ReadonlySet<string>,
    quieted: ReadonlySet<string>,
  ) => Judged;
}

export interface Judged {
  readonly facts: readonly ReadFact[];
  readonly understood: readonly Understood[];
  readonly perhaps: readonly ReadFact[];
}

/** A saying's fact that its text is less like is a guess: as often as not it is not what was meant. */
const FIRM = 0.4;
/** And one that it is hardly like is nothing. */
const WORTH_ASKING_BACK = 0.2;
/** What is so sure (a club's own words are) does not hang on what others said. */
const BEYOND_DOUBT = 0.95;

/** A saying whose words are less like what tells it is none. */
const UNLIKE = 0.01;
/** Another answer so likely, and so many times likelier, sets a saying's own aside. */
const [RIVAL, TIMES] = [0.74, 5];
/** A guess is worth telling from here on; less than RIVAL. */
const WORTH_TELLING = 0.6;
/** So likely it is as good as said: of all that strangers' messages were taken to tell with this, 95 of 100 were right or harmless (a blind reader). */
const AS_GOOD_AS_SAID = 0.75;
/** A story of more clauses tells of several evenings, and of how it was before. */
const STORY = 12;
/** One sentence leaves no room to be sure: what it tells has sayings, or is asked back; and two leave little. */
const AS_GOOD_IN_BRIEF = [1, 1, 0.95];
/** "Hub: none" is a line of a list. */
const OF_LIST = /^["“]?[\p{L} ]{2,24}:\s/u;
const MOST_GUESSES = 8;

/** What a guide is quoted with, or is said in jest, is nobody's own. */
const isMeant = ({ sentence: { bits }, from, to }: Clause): boolean =>
  bits.slice(from, to).every((own) => (own & IS.unmeant) === 0);

const isOwn = (clauses: readonly Clause[]): boolean =>
  clauses.every((clause) => isMeant(clause) && isOfMember(clause.sentence, clause.from, clause.to));

type Entry = Finding['entry'];

/** What other messages are like speaks against no answer to it. */
const standsAsSaid = (check: string): boolean => holdsSeveral(check) || keepsFromHarm(check);

const NONE: Liked = {
  weighed: (findings) => findings,
  judged: ({ facts, understood }) => ({ facts, understood, perhaps: [] }),
};

/**
 * @param startOf where a sentence's line starts in the text
 * @param quoteOf the words of a span
 */
export const likenessOf = (
  likeness: Likeness | null,
  sentences: readonly Clauses[],
  startOf: (sentence: Clauses) => number,
  quoteOf: (span: Span) => string,
): Liked => {
  if (likeness === null || sentences.length === 0) return NONE;
  const { weighClauses, isOpen, bears } = likeness;
  const { probabilityOf, likeliest, clauseCount } = weighClauses(sentences);
  const likely = likeliest(WORTH_TELLING);
  const rivals = new Map(likely.map(({ check, probability }) => [check, probability]));
  const isRivalled = (check: string, own: number): boolean => {
    const rival = rivals.get(check) ?? 0;
    return rival >= RIVAL && rival >= TIMES * own;
  };
  const isUnlike = ({ check, name }: Answer): boolean => {
    if (!isOpen(name) || standsAsSaid(check)) return false;
    const own = probabilityOf(name);
    // "When I slew, and when it is left alone": one does not speak against the other.
    return own < UNLIKE || (!holdsEither(check) && isRivalled(check, own));
  };
  const weigh = (entry: Entry): Entry | null => {
    const told = entry.answers === undefined ? [] : answersOf(entry.answers);
    const unlike = told.filter(isUnlike);
    if (unlike.length === 0) return entry;
    const { system, client, path } = entry;
    if (unlike.length === told.length && [system, client, path].every((part) => part === undefined)) return null;
    const kept = told.filter((one) => !unlike.includes(one)).map(({ check, answer }) => [check, answer] as const);
    return { ...entry, answers: Object.fromEntries(kept), label: undefined };
  };
  // The same sayings come again and again.
  const known = new Map<Entry, Entry | null>();
  const weighed = (finding: Finding): readonly Finding[] => {
    if (finding.sureness >= BEYOND_DOUBT) return [finding];
    const before = known.get(finding.entry);
    const entry = before === undefined ? weigh(finding.entry) : before;
    if (before === undefined) known.set(finding.entry, entry);
    if (entry === null) return [];
    return [entry === finding.entry ? finding : { ...finding, entry }];
  };
  const spanOf = (clauses: readonly Clause[]): Span => {
    const [first, last] = [clauses[0], clauses.at(-1)];
    const start = first === undefined ? 0 : startOf(first.sentence) + (first.sentence.tokens[first.from]?.start ?? 0);
    const end = last === undefined ? start : startOf(last.sentence) + (last.sentence.tokens[last.to - 1]?.end ?? 0);
    return { start, end };
  };
  const factOf = ({ check, answer, probability, clauses }: Likely): ReadFact => ({
    what: check,
    answer,
    sureness: Math.round(90 * probability) / 100,
    quote: quoteOf(spanOf(clauses)),
    by: 'words',
  });
  /** Likeliest first, of checks that no fact answers. */
  const likelyBeside = (facts: readonly ReadFact[]): readonly Likely[] => {
    const taken = new Set(facts.map(({ what, answer }) => keyOf(what, answer)));
    return likely
      .filter(({ check, answer }) => !taken.has(keyOf(check, answer)) && isOpen(`${check}.${answer}`))
      .filter(({ clauses }) => isOwn(clauses))
      .sort((a, b) => b.probability - a.probability);
  };
  const asGood = AS_GOOD_IN_BRIEF[sentences.length] ?? AS_GOOD_AS_SAID;
  const isAsSaid = ({ check, answer, probability, clauses }: Likely): boolean =>
    (probability >= asGood || isStageInBrief(check, answer, probability, clauses)) &&
    clauseCount < STORY &&
    isWorded(check, answer, clauses) &&
    clauses.every(({ sentence }) => !sentence.asks) &&
    !OF_LIST.test(quoteOf(spanOf(clauses)));
  return {
    weighed: (findings) => findings.flatMap(weighed),
    judged: ({ facts, understood }, printed, found, quieted) => {
      const isJudged = ({ what, answer, by, sureness }: ReadFact): boolean =>
        by === 'words' &&
        sureness < BEYOND_DOUBT &&
        !standsAsSaid(what) &&
        printed?.has(what) === false &&
        isOpen(`${what}.${answer}`);
      const least = (fact: ReadFact): number =>
        isJudged(fact)
          ? Math.max(...[fact.answer, ...(fact.or ?? [])].map((a) => probabilityOf(`${fact.what}.${a}`)))
          : 1;
      const firm = facts.filter((fact) => least(fact) >= FIRM);
      const taken = new Set(firm);
      const beside = likelyBeside(firm).filter(
        ({ check, answer }) => !quieted.has(check) && !quieted.has(`${check}.${answer}`),
      );
      // What was told and then set aside, of another way to the mount say, stays aside.
      const isNew = ({ check, answer }: Likely): boolean => !found.has(`${check}.${answer}`);
      const path = facts.find(({ what }) => what === 'path')?.answer;
      const isOfWay = ({ check }: Likely): boolean => path === undefined || bears(check, path);
      const nearSaid = beside.filter((one) => isAsSaid(one) && isNew(one) && isOfWay(one));
      const asSaid = nearSaid.map(factOf);
      const guesses = beside.filter((one) => !nearSaid.includes(one)).map(factOf);
      const checked = new Set([...firm, ...asSaid, ...guesses].map(({ what }) => what));
      const doubtful = facts.filter(
        (fact) => !taken.has(fact) && !checked.has(fact.what) && least(fact) >= WORTH_ASKING_BACK,
      );
      return {
        facts: [...firm, ...asSaid],
        understood: [
          ...understood.filter(({ fact }) => taken.has(fact)),
          // Named by the answer's own label.
          ...asSaid.map((fact) => ({ fact, label: '' })),
        ],
        perhaps: [...guesses, ...doubtful].slice(0, MOST_GUESSES),
      };
    },
  };
};
