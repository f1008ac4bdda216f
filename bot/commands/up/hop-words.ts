/** How to come to a target from the stars that the eye sees: from a bright one, by a nearer one, which way, and what a finder then shows. */
import { starsForTheEye, type Catalogue, type Target } from '../../catalogue/index.js';
import { easeOf } from '../../evening/ease.js';
import type { Outlook } from '../../evening/outlook.js';
import { marginMag, type Seen } from '../../evening/visibility.js';
import { compassWord, degrees, magnitudeText } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg, wrapDeg180 } from '../../sky/angles.js';
import { horizontalOf, placeOf } from '../../sky/place.js';
import { magnitudePerArcsec2, nakedEyeLimit, nanolamberts, twilightNanolamberts } from '../../sky/sky-brightness.js';
import { SUN } from '../../sky/twilight.js';
import type { Equatorial, Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';

/** A star that nobody misses, and how far from it one still finds one's way; common practice, no source. */
const BRIGHT_MAG = 2.2;
const FARTHEST_DEG = 20;
/** So near, the bright one alone will do: a finder's field. Common practice, no source. */
const NEAR_DEG = 5;
const SAME_DEG = 0.02;
/** With the sky about the zenith up and down turn about one. */
const MOST_ALTITUDE_DEG = 75;
/** A finder of 50 mm held still by the mount. */
const FINDER = { apertureMm: 50, saidAs: 'a finder' } as const;

export interface FindQuestion {
  readonly target: Target;
  readonly observer: Observer;
  readonly zone: string;
  readonly utcMs: UtcMs;
  readonly zenithMagPerArcsec2: number;
  readonly found: Outlook;
}

interface Star {
  readonly name: string;
  readonly magnitude: number;
  readonly position: Equatorial;
}

type Away = Star & { readonly awayDeg: number };

const nearestOf = (stars: readonly Away[]): Away | null =>
  stars.reduce<Away | null>((best, star) => (best === null || star.awayDeg < best.awayDeg ? star : best), null);

const starWords = ({ name, magnitude }: Star): string => `${name} (mag ${magnitudeText(magnitude)})`;
const farWords = (deg: number): string => degrees(deg, deg < 10 ? 1 : 0);

const SIDES = [
  'up',
  'up and right',
  'right',
  'down and right',
  'down',
  'down and left',
  'left',
  'up and left',
] as const;

/** "at 23:00 up and left of it": as one stands facing it; null where it is down, or near the zenith. */
const sideWords = (star: Star, { target, observer, utcMs, zone }: FindQuestion): string | null => {
  const { raHours, decDeg } = star.position;
  const from = horizontalOf({ kind: 'fixed', raHoursJ2000: raHours, decDegJ2000: decDeg }, observer, utcMs);
  const to = horizontalOf(target.body, observer, utcMs);
  if (to.altitudeDeg <= 0 || from.altitudeDeg <= 0 || Math.max(to.altitudeDeg, from.altitudeDeg) > MOST_ALTITUDE_DEG)
    return null;
  const acrossDeg = wrapDeg180(to.azimuthDeg - from.azimuthDeg) * Math.cos((to.altitudeDeg * Math.PI) / 180);
  const turn = (Math.atan2(acrossDeg, to.altitudeDeg - from.altitudeDeg) * 180) / Math.PI;
  const side = SIDES[Math.round(((turn + 360) % 360) / 45) % SIDES.length] ?? 'up';
  return `at ${formatLocalTime(utcMs, zone)} ${side}`;
};

const seenOf = ({ kind, sizeArcmin, minorSizeArcmin, showpieceRank }: Target, magnitude: number | null): Seen => ({
  kind,
  magnitude: magnitude ?? Number.NaN,
  sizeArcmin: sizeArcmin ?? Number.NaN,
  minorSizeArcmin: minorSizeArcmin ?? Number.NaN,
  showpieceRank: showpieceRank ?? 0,
});

/** Common practice, no source. */
const SOFT_LOSS_MAG = 1.2;
const LIKE_STAR_ARCMIN = 3;
const isSoft = ({ kind }: Target): boolean =>
  ['galaxy', 'nebula', 'planetary-nebula', 'supernova-remnant'].includes(kind);

const isPoint = ({ kind }: Target): boolean => ['star', 'double-star', 'planet'].includes(kind);

/** What a finder shows of it, under that sky without the Moon. */
const finderWords = ({ target, zenithMagPerArcsec2, found }: FindQuestion): string => {
  const altitudeDeg = Math.max(20, found.best.altitudeDeg);
  const margin = marginMag(
    seenOf(target, found.magnitude ?? target.magnitude),
    zenithMagPerArcsec2,
    altitudeDeg,
    FINDER,
  );
  // A finder's power is low: what is soft and small hardly stands out.
  const ease = easeOf(target, isSoft(target) ? margin - SOFT_LOSS_MAG : margin);
  if (isPoint(target)) return ease === 'hidden' ? 'Too faint for a finder: lowest power there.' : 'In a finder a star.';
  if (ease !== 'hidden' && (target.sizeArcmin ?? LIKE_STAR_ARCMIN) < LIKE_STAR_ARCMIN)
    return 'In a finder like a faint star: only more power shows that it is none.';
  const look = target.kind === 'open-cluster' || target.kind === 'asterism' ? 'spray of stars' : 'soft spot';
  switch (ease) {
    case 'plain':
      return `In a finder a plain ${look}.`;
    case 'easy':
      return `In a finder a small ${look}.`;
    case 'faint':
      return `In a finder a faint ${look} at best: then the lowest power.`;
    case 'hidden':
      return 'A finder does not show it: put the place in the middle, take the lowest power and look about.';
  }
};

/** Of the stars that the eye sees on a dark night, those that show through the twilight then. */
const showingThen = (
  catalogue: Catalogue,
  { observer, utcMs, zenithMagPerArcsec2 }: FindQuestion,
): ReturnType<typeof starsForTheEye> => {
  const twilight = twilightNanolamberts(horizontalOf(SUN, observer, utcMs).altitudeDeg);
  const limit = nakedEyeLimit(magnitudePerArcsec2(nanolamberts(zenithMagPerArcsec2) + twilight));
  return twilight === 0
    ? starsForTheEye(catalogue)
    : starsForTheEye(catalogue).filter((star) => star.magnitude <= limit);
};

/** "From Vega (mag 0.0) 6.8° east-south-east to Sulafat (mag 3.3); from it 1.1° west …". */
export const hopWords = (catalogue: Catalogue, question: FindQuestion): string => {
  const { target, observer, utcMs } = question;
  const { j2000 } = placeOf(target.body, observer, utcMs);
  const stars: readonly Away[] = showingThen(catalogue, question)
    .map((star) => ({ ...star, awayDeg: separationDeg(star.position, j2000) }))
    .filter(({ awayDeg }) => awayDeg > SAME_DEG && awayDeg <= FARTHEST_DEG);
  const near = nearestOf(stars);
  if (near === null) return `No star that the eye sees then stands within ${FARTHEST_DEG}° of ${target.name}.`;
  const bright = nearestOf(stars.filter(({ magnitude }) => magnitude <= BRIGHT_MAG));
  const way = (from: Equatorial, to: Equatorial): string => compassWord(positionAngleDeg(from, to));
  const side = sideWords(near, question);
  const last = `${farWords(near.awayDeg)} ${way(near.position, j2000)}${side === null ? '' : `, ${side}`}`;
  const isDirect = bright === null || bright.name === near.name || bright.awayDeg <= NEAR_DEG;
  if (isDirect) {
    const from = bright !== null && bright.awayDeg <= NEAR_DEG ? bright : near;
    const fromSide = sideWords(from, question);
    return `From ${starWords(from)} ${farWords(from.awayDeg)} ${way(from.position, j2000)}${fromSide === null ? '' : `, ${fromSide}`}. ${finderWords(question)}`;
  }
  const hop = separationDeg(bright.position, near.position);
  return `From ${starWords(bright)} ${farWords(hop)} ${way(bright.position, near.position)} to ${starWords(near)}; from it ${last}. ${finderWords(question)}`;
};
