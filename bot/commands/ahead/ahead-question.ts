/** What is asked of the weeks to come, and a section of the answer. */
import type { PointsAt } from '../../reply/points-at.js';
import type { Fact, Json } from '../../reply/reply.js';
import type { TimeSpan } from '../../sky/night.js';
import type { Observer } from '../../sky/types.js';

export const KINDS = ['all', 'phases', 'saturdays', 'eclipses', 'showers', 'planets', 'meetings'] as const;
export type Kind = (typeof KINDS)[number];

export interface Section {
  readonly pointsAt?: readonly PointsAt[];
  readonly facts: readonly Fact[];
  readonly data: readonly Json[];
  readonly notes?: readonly string[];
}

export interface Question {
  readonly observer: Observer;
  readonly zone: string;
  readonly span: TimeSpan;
  readonly kind: Kind;
  /** In lower case; null for everything. */
  readonly about: string | null;
}

/** Whether something of these names was asked about. */
export const isAbout = ({ about }: Question, ...names: readonly string[]): boolean =>
  about === null || names.some((name) => name.toLowerCase().startsWith(about) || about.startsWith(name.toLowerCase()));
