/** What stands under an answer of `up`: what makes the target hard to follow or to see well, and where the horizon hides it. */
import type { Outlook } from '../../evening/outlook.js';
import { compassWord } from '../../reply/wording.js';
import { horizontalOf } from '../../sky/place.js';
import { formatLocalTime } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';
import { asksForCompanion } from './split-words.js';

/** Higher than this a mount that turns in azimuth can hardly follow; common practice, no source. */
const OVERHEAD_DEG = 80;
/** Lower than this the air is thick; common practice, no source. */
const LOW_DEG = 15;

const companionNotes = (typed: string, { target }: TargetAtSite): readonly string[] =>
  target.double !== null && asksForCompanion(typed, target)
    ? [
        `Its companion, mag ${target.double.magnitudes[1]}, stands ${target.double.separationArcsec.toFixed(1)}″ from it: the times are those of the pair.`,
      ]
    : [];

const lowNotes = ({ verdict, best }: Outlook): readonly string[] =>
  verdict === 'low' || (verdict === 'up' && best.altitudeDeg < LOW_DEG)
    ? ['Low down the air blurs and dims; roofs and trees may hide it.']
    : [];

const overheadNotes = ({ verdict, best }: Outlook): readonly string[] =>
  verdict === 'up' && best.altitudeDeg > OVERHEAD_DEG
    ? ['Nearly overhead then: a Dobsonian or alt-azimuth mount follows it better an hour before or after.']
    : [];

const faintNotes = ({ target }: TargetAtSite, { verdict }: Outlook, isEverDark: boolean): readonly string[] => {
  const isFaint =
    target.body.kind === 'fixed' &&
    !target.kind.endsWith('star') &&
    !['never-up', 'past', 'lost-in-sun', 'day-only'].includes(verdict);
  return isFaint && !isEverDark ? ['The sky does not get fully dark, so faint detail will be lost.'] : [];
};

const horizonNotes = ({ target, where }: TargetAtSite, { clearsUtcMs, hiddenUtcMs, best }: Outlook): string[] => {
  const { observer, zone } = where.site;
  const side = compassWord(horizontalOf(target.body, observer, clearsUtcMs ?? hiddenUtcMs ?? best.utcMs).azimuthDeg);
  return [
    ...(clearsUtcMs === null ? [] : [`Behind your ${side} horizon until ${formatLocalTime(clearsUtcMs, zone)}.`]),
    ...(hiddenUtcMs === null ? [] : [`Goes behind your horizon at ${formatLocalTime(hiddenUtcMs, zone)}.`]),
  ];
};

export const upNotes = (typed: string, asked: TargetAtSite, found: Outlook, isEverDark: boolean): readonly string[] => [
  ...companionNotes(typed, asked),
  ...lowNotes(found),
  ...overheadNotes(found),
  ...faintNotes(asked, found, isEverDark),
  ...horizonNotes(asked, found),
];
