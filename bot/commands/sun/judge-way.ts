/** How the straight way to a target stands to the Sun, and a safer one where that passes too near. */
import { saferWay, straightWay, type Way, type WayRequest } from '../../pointing/way/way-past-sun.js';
import type { SunLevel, SunLimits, SunSafety } from '../../sky/sun-safety.js';

export interface Judged {
  readonly straight: Way;
  /** How the straight way stands to the Sun; clear with the Sun down. */
  readonly level: SunLevel;
  readonly safer: Way | null;
}

/** While a mount of unknown speed is on its way, the sky turns by up to a degree. */
const SKY_TURNS_DEG = 1;

const levelOf = (leastDeg: number, { dangerDeg, cautionDeg }: Required<SunLimits>): SunLevel => {
  if (!(leastDeg >= dangerDeg)) return 'danger';
  return leastDeg >= cautionDeg ? 'clear' : 'caution';
};

export const judgeWay = (request: WayRequest, sun: SunSafety, limits: Required<SunLimits>): Judged => {
  const straight = straightWay(request);
  const slackDeg = request.motion === null ? SKY_TURNS_DEG : 0;
  const least = straight.minimumSeparationDeg - slackDeg;
  const level = sun.isSunUp ? levelOf(least, limits) : 'clear';
  if (level === 'clear' || sun.separationDeg < limits.dangerDeg) return { straight, level, safer: null };
  // The ends cannot be helped; between them the way need be no worse than the nearer of the two.
  const wishDeg = Math.min(limits.cautionDeg, sun.separationDeg, straight.legs.length === 0 ? least : 180) - 0.5;
  const safer = saferWay(request, limits.dangerDeg + slackDeg, wishDeg);
  // By caution alone nobody is sent round for a degree or two.
  return {
    straight,
    level,
    safer: safer !== null && (level === 'danger' || safer.minimumSeparationDeg > least + 5) ? safer : null,
  };
};
