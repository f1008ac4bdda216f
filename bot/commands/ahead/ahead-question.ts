/** What is asked of the weeks to come, and a section of the answer. */
import type { PointsAt } from '../../reply/points-at.js';
import type { Fact, Json } from '../../reply/reply.js';
import type { TimeSpan } from '../../sky/night.js';
import type { Observer, UtcMs } from '../../sky/types.js';

export const KINDS = [
  'all',
  'phases',
  'saturdays',
  'eclipses',
  'showers',
  'planets',
  'meetings',
  'seasons',
  'messier',
] as const;
export type Kind = (typeof KINDS)[number];

/** Other words for them. */
export const KIND_NAMES = {
  eclipse: 'eclipses',
  shower: 'showers',
  meteors: 'showers',
  planet: 'planets',
  oppositions: 'planets',
  elongations: 'planets',
  conjunctions: 'meetings',
  moon: 'phases',
  moonless: 'saturdays',
  weekends: 'saturdays',
  season: 'seasons',
} as const satisfies Readonly<Record<string, Kind>>;

export const SHAPES = ['total', 'partial', 'annular'] as const;
export type Shape = (typeof SHAPES)[number];

/** So many of one kind fill a phone's screen. */
export const MOST_OF_ONE_KIND = 12;

export interface Section {
  readonly pointsAt?: readonly PointsAt[];
  readonly facts: readonly Fact[];
  /** When each of the facts is, where they are of one moment each. */
  readonly times?: readonly UtcMs[];
  readonly data: readonly Json[];
  readonly notes?: readonly string[];
  /** What to say first where this kind alone is asked for. */
  readonly headline?: string | null;
}

export interface Question {
  readonly observer: Observer;
  readonly zone: string;
  readonly span: TimeSpan;
  /** Dates of another year than this instant's are told with their year; left out: than that of the span's beginning. */
  readonly nowUtcMs?: UtcMs;
  /** How the span is called where it is a month or a year; null or left out: it is so many weeks. */
  readonly spanSaid?: string | null;
  readonly kind: Kind;
  /** In lower case; null for everything. */
  readonly about: string | null;
  /** Of eclipses: one of this shape is asked for; null or left out: any. */
  readonly shape?: Shape | null;
  /** Of eclipses: one alone is told, or its contacts; null or left out: all that come. */
  readonly first?: 'next' | 'contacts' | null;
  /** So many of them come before the one that is asked for. */
  readonly later?: number;
  /** Of meteor showers: which is the best is to be said first. */
  readonly wantsBest?: boolean;
  /** Of meteor showers: the one night that is asked about; null or left out: all to come. */
  readonly night?: TimeSpan | null;
  /** How it is called where it is not tonight. */
  readonly nightSaid?: string | null;
}

/** From when years are counted in what is told. */
export const toldFrom = ({ nowUtcMs, span }: Question): UtcMs => nowUtcMs ?? span.startUtcMs;

/** "Leonids or Geminids": each of them. */
export const namedIn = (about: string): readonly string[] =>
  about
    .split(/,| or | and | vs\.? /u)
    .map((name) => name.trim())
    .filter((name) => name !== '');

/** Whether something of these names was asked about. */
export const isAbout = ({ about }: Question, ...names: readonly string[]): boolean =>
  about === null ||
  namedIn(about).some((asked) =>
    names.some((name) => name.toLowerCase().startsWith(asked) || asked.startsWith(name.toLowerCase())),
  );
