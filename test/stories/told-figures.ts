/** Plays stories through the real command and says how each went: end, steps, worst moments. */
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { toldMember } from './told-member.js';
import { playWalk, type Played } from './told-player.js';
import type { Story } from './told-story.js';

export interface Told {
  readonly story: Story;
  /** Whether the knowledge lists every cause. */
  readonly listed: boolean;
  readonly verdict: 'cured' | 'named first' | 'handed on' | 'named wrongly' | 'lost';
  readonly good: boolean;
  readonly played: Played;
  readonly unknown: readonly string[];
  readonly moments: readonly string[];
}

const UNLISTED = /^(?:unexplained|unknown|unlisted)/u;
const SYNTAX = /\b(?:answer|walk|do):[\w.]+/u;
const KNOWN_FROM = 0.6;

const repeatsOf = (turns: Played['turns']): string[] =>
  turns.flatMap(({ kind, id, shown }, i) => {
    if (!turns.slice(0, i).some((earlier) => earlier.shown === shown)) return [];
    return [`${kind === 'try' ? 'the remedy' : 'the question'} ${id} again, word for word`];
  });

const momentsOf = (played: Played, listedFirst: number): string[] => [
  ...repeatsOf(played.turns),
  ...(/run out/iu.test(played.lastShown) && listedFirst >= KNOWN_FROM
    ? [`gave up with a cause at ${Math.round(100 * listedFirst)} %`]
    : []),
  ...played.turns.filter(({ shown }) => SYNTAX.test(shown)).map(({ id }) => `command syntax shown at ${id}`),
  ...(played.end === 'handed on' && SYNTAX.test(played.lastShown.replaceAll(/triage walk:\w+/gu, ''))
    ? ['command syntax shown at the hand-on']
    : []),
];

const askerFor = ({ id, member }: Story): Asker => ({
  platform: 'console',
  memberId: `console:${id}`,
  displayName: member,
  clubId: 'console:fenwold',
  channelId: 'console',
  isManager: false,
  isPrivate: true,
});

export const tell = async (deps: Deps, story: Story): Promise<Told> => {
  const model = deps.triage();
  const teller = toldMember(model, story);
  const played = await playWalk(deps, askerFor(story), teller.speaker);
  const causes = story.causes.map(({ any }) => any.filter((id) => model.fault(id) !== undefined));
  const listed = causes.every((any) => any.length > 0);
  const first = played.standing.find(({ faultId }) => !UNLISTED.test(faultId));
  // Known but not to be done by this member: the walk offered its remedy and heard that it cannot be done.
  const named =
    teller.left().some((i) => causes[i]?.includes(first?.faultId ?? '') === true) ||
    played.turns.some(({ id, answer }) => answer === 'could-not' && causes.flat().includes(id));
  const words = story.handOn.every((pattern) => new RegExp(pattern, 'iu').test(played.lastShown));
  const verdict = ((): Told['verdict'] => {
    if (played.end === 'cured') return 'cured';
    if (played.end === 'lost') return 'lost';
    if (listed) return named ? 'named first' : 'lost';
    return (first?.probability ?? 0) >= KNOWN_FROM && UNLISTED.test(played.standing[0]?.faultId ?? '') === false
      ? 'named wrongly'
      : 'handed on';
  })();
  return {
    story,
    listed,
    verdict,
    good: verdict === 'cured' || verdict === 'named first' || (verdict === 'handed on' && words),
    played,
    unknown: [...teller.unknown],
    moments: [
      ...momentsOf(played, first?.probability ?? 0),
      ...(words || played.end !== 'handed on' ? [] : ['the hand-on drops the words that matter']),
    ],
  };
};

const courseOf = ({ played }: Told): string =>
  played.turns
    .filter(({ id }) => !['path', 'system', 'client'].includes(id))
    .map(({ kind, id, answer }) => `${kind === 'try' ? 'TRY ' : ''}${id}=${answer}`)
    .join(' ');

const standingOf = ({ played }: Told): string =>
  played.standing
    .slice(0, 3)
    .map(({ faultId, probability }) => `${faultId} ${Math.round(100 * probability)} %`)
    .join(', ');

export interface Totals {
  readonly listed: number;
  readonly listedGood: number;
  readonly offList: number;
  readonly offListGood: number;
  readonly meanSteps: number;
  /** With the questions about path, system and program. */
  readonly meanAllQuestions: number;
  readonly repeats: number;
  readonly gaveUp: number;
  readonly syntax: number;
}

export const totalsOf = (told: readonly Told[]): Totals => {
  const listed = told.filter((one) => one.listed);
  const offList = told.filter((one) => !one.listed);
  const mean = (of: (one: Told) => number): number => told.reduce((sum, one) => sum + of(one), 0) / told.length;
  const momentsWith = (words: string): number =>
    told.flatMap(({ moments }) => moments).filter((moment) => moment.includes(words)).length;
  return {
    listed: listed.length,
    listedGood: listed.filter(({ good }) => good).length,
    offList: offList.length,
    offListGood: offList.filter(({ good }) => good).length,
    meanSteps: mean(({ played }) => played.steps),
    meanAllQuestions: mean(({ played }) => played.steps + played.contextQuestions),
    repeats: momentsWith('word for word'),
    gaveUp: momentsWith('gave up'),
    syntax: momentsWith('syntax'),
  };
};

export const linesOf = (told: readonly Told[]): string[] => {
  const totals = totalsOf(told);
  const unknown = [...new Set(told.flatMap((one) => one.unknown))];
  return [
    ...[...told]
      .sort((a, b) => Number(a.good) - Number(b.good) || b.played.steps - a.played.steps)
      .flatMap((one) => [
        `${one.good ? 'good' : 'BAD '} ${one.story.id}: ${one.verdict}, ${one.played.steps} steps${one.listed ? '' : ' (off the list)'}`,
        `     ${courseOf(one)}${one.played.end === 'cured' ? '' : ` | ${standingOf(one)}`}`,
        ...one.moments.map((moment) => `     ! ${moment}`),
      ]),
    '',
    `No rule and no fact for: ${unknown.length === 0 ? 'none' : unknown.join(', ')}`,
    `Listed causes cured or named first: ${totals.listedGood} of ${totals.listed}; off the list handed on with the words that matter: ${totals.offListGood} of ${totals.offList}`,
    `Mean steps ${totals.meanSteps.toFixed(1)} (with the questions about path, system and program ${totals.meanAllQuestions.toFixed(1)})`,
    `Word for word again: ${totals.repeats}; gave up on a known cause: ${totals.gaveUp}; syntax shown: ${totals.syntax}`,
  ];
};
