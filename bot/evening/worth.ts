/** What an object is worth pointing at, as a sum that a reader can check: what it is, how plainly it shows, how high it stands. */
import type { TargetKind } from '../catalogue/index.js';
import type { SolarSystemBody } from '../sky/types.js';
import { isEyes, isHandHeld, type Equipment } from './equipment.js';
import { tableOf } from '../ground/table-of.js';

export interface Worth {
  /** 0..8: what people come for. */
  readonly showpiece: number;
  /** 0..3: magnitudes above the threshold of seeing. */
  readonly seen: number;
  /** 0..2: from 15° (10° for planets) up to 60°. */
  readonly height: number;
}

export const total = ({ showpiece, seen, height }: Worth): number => showpiece + seen + height;

const clamp = (value: number, most = 1): number => Math.max(0, Math.min(most, value));

/** By the catalogue's rank; what is well known without one counts a little. */
const BY_RANK: readonly number[] = [0, 4, 2.2, 1.2, 0.8];

/** The finest of their kinds, and by how much they stand above the other showpieces; from memory of what handbooks put first. */
const FINEST = tableOf({
  ngc1976: 4,
  ngc5139: 3,
  ngc104: 2.5,
  ngc3372: 2.5,
  mel22: 2,
  ngc224: 2,
  ngc6205: 2,
  c14: 1.5,
  ngc6523: 1.5,
  ngc6720: 1.5,
  ngc6853: 1,
  ngc6656: 1,
  ngc2070: 1,
  ngc5194: 1,
  ngc3031: 1,
  ngc4594: 1,
  ngc5128: 1,
  ngc5236: 0.5,
  ngc2632: 0.5,
  ngc6705: 0.5,
  ngc5272: 0.5,
  ngc5904: 0.5,
  hip95947: 1,
  hip65378: 0.5,
});

/** 0 for all but the finest. */
export const finestOf = (id: string): number => FINEST.get(id) ?? 0;

export interface ShowpieceFacts {
  /** See {@link finestOf}. */
  readonly finest: number;
  readonly kind: TargetKind;
  readonly showpieceRank: number;
  readonly wellKnown: boolean;
  readonly magnitude: number;
  readonly sizeArcmin: number;
  readonly separationArcsec: number;
}

/** A telescope's widest field, and what it does not hold; common practice, no source. */
const WIDE_ARCMIN = 120;
const CLOUD_ARCMIN = 240;
const SMALL_ARCMIN = 4;
/** What binoculars and eyes split; common practice, no source. */
const SPLIT_BY_BINOCULARS_ARCSEC = 20;
const SPLIT_BY_EYES_ARCSEC = 200;

const suits = ({ kind, sizeArcmin, separationArcsec }: ShowpieceFacts, equipment: Equipment): number => {
  if (kind === 'double-star') {
    const least = isEyes(equipment) ? SPLIT_BY_EYES_ARCSEC : SPLIT_BY_BINOCULARS_ARCSEC;
    return isHandHeld(equipment) && !(separationArcsec >= least) ? -9 : 0;
  }
  if (isHandHeld(equipment)) return sizeArcmin < SMALL_ARCMIN ? -3 : clamp((sizeArcmin - 20) / 60);
  // A cloud as wide as a hand is for the eye; in a telescope it is what lies in it.
  if (kind === 'galaxy' && sizeArcmin > CLOUD_ARCMIN) return -2.5;
  const isStars = kind === 'open-cluster' || kind === 'asterism';
  return isStars && sizeArcmin > WIDE_ARCMIN ? -2.5 : 0;
};

/** Single stars: the brighter the more people ask. */
const starShowpiece = (magnitude: number): number => clamp(3 - 0.7 * magnitude, 4);

export const showpieceWorth = (facts: ShowpieceFacts, equipment: Equipment): number => {
  const { finest, kind, showpieceRank, wellKnown, magnitude } = facts;
  const known = wellKnown ? 0.4 : 0;
  const rank = showpieceRank > 0 ? (BY_RANK[showpieceRank] ?? 0) : known;
  if (kind === 'star') return Math.max(rank, starShowpiece(magnitude));
  const byMagnitude = Number.isNaN(magnitude) ? 0 : clamp((8 - magnitude) / 6);
  const bright = kind === 'double-star' ? 0.3 : byMagnitude;
  return rank + bright + finest + suits(facts, equipment);
};

export interface PlanetFacts {
  readonly body: SolarSystemBody;
  readonly magnitude: number;
  readonly litFraction: number;
  /** Angle from the Sun, 0..180°. */
  readonly elongationDeg: number;
}

const PLANET_BASE: Readonly<Partial<Record<SolarSystemBody, number>>> = {
  Jupiter: 7,
  Saturn: 7,
  Venus: 6.5,
  Mars: 3.5,
  Mercury: 3,
  Uranus: 2,
  Neptune: 1.5,
};

export const planetWorth = ({ body, magnitude, litFraction, elongationDeg }: PlanetFacts): number => {
  if (body === 'Moon' && litFraction > 0.95) return 5;
  if (body === 'Moon') return litFraction < 0.04 ? 3 : 7;
  const nearOpposition = elongationDeg > 140 && body !== 'Mercury' && body !== 'Venus' ? 1 : 0;
  const marsGrows = body === 'Mars' ? clamp((0.9 - magnitude) / 2, 1.5) * 2 : 0;
  return (PLANET_BASE[body] ?? 0) + nearOpposition + marsGrows;
};

export const seenWorth = (marginMag: number): number => clamp(marginMag, 3);
export const heightWorth = (altitudeDeg: number, fromDeg: number): number =>
  2 * clamp((altitudeDeg - fromDeg) / (60 - fromDeg));
