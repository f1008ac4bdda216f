/** The eclipse that comes within a day, of the Moon or of the Sun, for who asks about the Moon. */
import { MS_PER_DAY } from '../../ground/durations.js';
import type { UtcMs, Observer } from '../../sky/types.js';
import type { Question, Section } from './ahead-question.js';
import { eclipsesSeen } from './eclipse-chosen.js';
import { eclipses } from './eclipse-section.js';

/** Nothing where none is seen from there; one under way is told until it is over. */
export const eclipseSoon = (
  observer: Observer,
  utcMs: UtcMs,
  zone: string,
): Pick<Section, 'facts'> & { readonly pointsAt: NonNullable<Section['pointsAt']> } => {
  const span = { startUtcMs: utcMs - MS_PER_DAY / 4, endUtcMs: utcMs + MS_PER_DAY };
  const question: Question = { observer, zone, kind: 'all', about: null, span };
  const coming = eclipsesSeen(question).filter(({ span: whole }) => whole.endUtcMs > utcMs);
  const { facts, pointsAt } = eclipses(coming, question);
  return { facts, pointsAt: pointsAt ?? [] };
};
