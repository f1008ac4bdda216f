/** A reminder is plain text without a level of its own: the word goes before the warning. */
import { LEVEL_WORD } from '../../reply/palette.js';
import type { PointsAt } from '../../reply/reply.js';
import { judgeSun } from '../core/judge-sun.js';
import type { Deps } from '../core/command.js';

const TEXT_LIMIT = 700;

export const withSunSaid = (words: string, points: readonly PointsAt[], limits: Deps['sunLimits']): string => {
  const { level, cautions } = judgeSun(points, limits);
  const word = level === 'danger' ? LEVEL_WORD.danger : LEVEL_WORD.caution;
  return [words, ...cautions.map((caution) => `${word}: ${caution}`)].join(' ').slice(0, TEXT_LIMIT);
};
