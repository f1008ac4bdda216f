/** A Reply is data, not text: a command makes one, each platform's writer renders it once. */
import type { Audience, Choice, Problem } from '../ground/problem.js';
import type { UtcMs } from '../sky/types.js';
import type { PointsAt } from './points-at.js';

export { NOWHERE, type PointsAt } from './points-at.js';

/** How serious an answer is. Always shown as a word too, never by colour alone. */
export type Level = 'info' | 'good' | 'caution' | 'danger';

/** Plain JSON, as `ask --json` prints it. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export interface Fact {
  readonly label: string;
  readonly value: string;
}

export interface ChartPoint {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
}

/** Altitude against time through one night. */
export interface NightChart {
  readonly kind: 'night';
  readonly title: string;
  /** IANA zone for the time axis. */
  readonly zone: string;
  readonly startUtcMs: UtcMs;
  readonly endUtcMs: UtcMs;
  /** Airless altitude of the target, evenly spaced. */
  readonly curve: readonly ChartPoint[];
  readonly moonCurve: readonly ChartPoint[];
  readonly bands: readonly {
    readonly fromUtcMs: UtcMs;
    readonly toUtcMs: UtcMs;
    readonly band: 'day' | 'civil' | 'nautical' | 'astronomical' | 'dark';
  }[];
  readonly minimumAltitudeDeg: number | null;
  /** The member's own horizon along the target's path, where one is known. */
  readonly horizonCurve?: readonly ChartPoint[];
  /** Where along the curve, above the horizon, the target stands in a direction: "E", "SE". */
  readonly compass?: readonly (ChartPoint & { readonly word: string })[];
  readonly nowUtcMs: UtcMs | null;
  readonly best: ChartPoint | null;
  readonly altText: string;
}

/** Several targets through one evening: a bar each, in the order given. */
export interface EveningChart {
  readonly kind: 'evening';
  readonly title: string;
  /** IANA zone for the time axis. */
  readonly zone: string;
  readonly startUtcMs: UtcMs;
  readonly endUtcMs: UtcMs;
  /** When full darkness begins; null where it does not within the chart. */
  readonly darkFromUtcMs: UtcMs | null;
  readonly rows: readonly {
    readonly name: string;
    readonly bestUtcMs: UtcMs;
    /** Under this it is too low to be drawn. */
    readonly leastDeg: number;
    readonly curve: readonly ChartPoint[];
  }[];
  readonly altText: string;
}

/** A horizon profile: obstruction altitude by azimuth. */
export interface HorizonChart {
  readonly kind: 'horizon';
  readonly title: string;
  readonly points: readonly { readonly azimuthDeg: number; readonly altitudeDeg: number }[];
  readonly altText: string;
}

/** Where several stars were missed, and what is left of it once the mount's own errors are taken off: arrows on the sky. */
export interface MissChart {
  readonly kind: 'misses';
  readonly title: string;
  readonly stars: readonly {
    readonly name: string;
    readonly altitudeDeg: number;
    readonly azimuthDeg: number;
    /** On the sky in degrees, towards rising azimuth and up. */
    readonly seen: readonly [number, number];
    readonly left: readonly [number, number];
  }[];
  readonly altText: string;
}

export type Chart = NightChart | EveningChart | HorizonChart | MissChart;

export interface Reply {
  readonly title: string;
  readonly level: Level;
  /** Verdict first, one or two sentences: "Up, best at 23:40 MST, 62° high." */
  readonly summary: string;
  readonly facts: readonly Fact[];
  readonly notes: readonly string[];
  /** What is said for safety. The Sun's is not written here: it follows from `pointsAt`. */
  readonly cautions: readonly string[];
  /**
   * Every direction and instant the reply sends someone to, or says the tube is at; {@link NOWHERE} where there is none.
   * Dispatch judges the Sun for each, raises `level` to the worst and adds the caution.
   */
  readonly pointsAt: readonly PointsAt[];
  readonly chart?: Chart;
  readonly choices?: readonly Choice[];
  /**
   * A command leaves it out: where the request read or wrote a member's own row, dispatch makes it the asker's alone.
   * 'asker' may be given for what is private for another reason.
   */
  readonly audience: Audience;
  /** The machine-readable answer, with the fields that test/commands/computed-answers.test.ts holds to. */
  readonly data: { readonly [key: string]: Json };
}

export type Outcome = Reply | Problem;

const LABEL_LIMIT = 80;
/** Discord's custom id holds 100 characters, the prefix of ours among them. */
const RUN_LIMIT = 90;

/** Choices as every platform can carry them: labels cut, and those left out whose line is too long to be sent back. */
export const fittingChoices = (choices: readonly Choice[]): readonly Choice[] =>
  choices
    .filter(({ run }) => run.length <= RUN_LIMIT)
    .map((choice) => ({ ...choice, label: choice.label.slice(0, LABEL_LIMIT) }));

/** A Reply with everything optional left empty. What it points at is not optional: leaving it out is a type error. */
export const reply = (parts: Pick<Reply, 'title' | 'summary' | 'pointsAt'> & Partial<Reply>): Reply => ({
  level: 'info',
  facts: [],
  notes: [],
  cautions: [],
  audience: 'everyone',
  data: {},
  ...parts,
});
