/** What children and beginners are shown: the Moon, planets and what is bright and high enough, early and few. Common practice, no source. */
import type { Pick } from '../../evening/tonight-picks.js';
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import type { UtcMs } from '../../sky/types.js';
import { localToUtc, type NamedNight } from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { soughtOf, type Sought } from './sought.js';
import type { TonightOptions } from './tonight-options.js';

const MOST = 5;
const FAINTEST_MAG = 5;
/** Nobody's neck, and no ladder: a Dobsonian's eyepiece is then hardest to reach. */
const HIGHEST_DEG = 78;
const MOST_DOUBLES = 1;
const BED = { hour: 21, minute: 30, second: 0 } as const;
const BED_SAID = `${BED.hour}:${BED.minute}`;
/** With less than this left, bed is past. */
const LEAST_LEFT_MS = 30 * MS_PER_MINUTE;
const HIDDEN = /^(?:Uranus|Neptune)$/u;
const OF_NONE = /variable|carbon|asterism|planetary/u;

const isEasy = ({ target }: Pick): boolean =>
  !HIDDEN.test(target.name) &&
  !OF_NONE.test(target.kind) &&
  (target.magnitude === null || target.magnitude <= FAINTEST_MAG);

/** Five at most, the finest first; one double among them. */
export const easyOf = (picks: readonly Pick[]): readonly Pick[] => {
  const easy = picks.filter(isEasy);
  const doubles = easy.filter(({ target }) => /double/u.test(target.kind)).slice(MOST_DOUBLES);
  return easy.filter((pick) => !doubles.includes(pick)).slice(0, MOST);
};

/** With what is easy as its limits, as far as none were given. */
export const easyLimits = (given: TonightOptions): TonightOptions => ({
  ...given,
  brighter: given.brighter ?? FAINTEST_MAG,
  below: given.below ?? HIGHEST_DEG,
});

/** Until children go to bed, or for an hour and a half where that is past; a night that is dark later has its own hours. */
export const easySought = (
  given: TonightOptions,
  asked: { readonly where: ResolvedSite; readonly night: NamedNight },
  nowUtcMs: UtcMs,
): Sought | Problem => {
  if (given.easy !== true || given.until !== undefined || given.at !== undefined || given.from !== undefined)
    return soughtOf(given, asked, nowUtcMs);
  const bedUtcMs = localToUtc(asked.night.date, BED, asked.where.site.zone).utcMs;
  const until = nowUtcMs < bedUtcMs - LEAST_LEFT_MS ? BED_SAID : 'in 90 minutes';
  const early = soughtOf({ ...given, until }, asked, nowUtcMs);
  return isProblem(early) || early.hours === null ? soughtOf(given, asked, nowUtcMs) : early;
};
