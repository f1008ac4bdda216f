/** The Moon's quarters to come. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { isoUtc } from '../../reply/wording.js';
import { nextMoonPhase } from '../../sky/moon-phase.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import { MOST_OF_ONE_KIND, toldFrom, type Question, type Section } from './ahead-question.js';
import { phaseFact } from './ahead-words.js';

const PHASES = ['new', 'first quarter', 'full', 'last quarter'] as const;

const phasesIn = ({ startUtcMs, endUtcMs }: TimeSpan): readonly { readonly name: string; readonly utcMs: UtcMs }[] => {
  const found = PHASES.flatMap((name, quarter) => {
    const times: { name: string; utcMs: UtcMs }[] = [];
    let utcMs = nextMoonPhase(quarter * 90, startUtcMs);
    while (utcMs < endUtcMs) {
      times.push({ name, utcMs });
      utcMs = nextMoonPhase(quarter * 90, utcMs + MS_PER_DAY);
    }
    return times;
  });
  return found.sort((a, b) => a.utcMs - b.utcMs).slice(0, MOST_OF_ONE_KIND);
};

export const phases = (question: Question): Section => {
  const { zone, span } = question;
  const found = phasesIn(span);
  return {
    facts: [phaseFact(found, zone, toldFrom(question))],
    data: found.map(({ name, utcMs }) => ({ what: 'phase', name, utc: isoUtc(utcMs) })),
  };
};
