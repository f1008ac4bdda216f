/** Which mornings and evenings to come show the old Moon's dark part in the Earth's own light. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { reply, type Reply } from '../../reply/reply.js';
import { compassWord, degrees, isoUtc } from '../../reply/wording.js';
import { MOON, moonAt } from '../../sky/moon.js';
import { horizontalOf } from '../../sky/place.js';
import { twilights } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, nightAround, zoneName } from '../../times/index.js';
import { dayWords } from '../ahead/ahead-words.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

/** Thinner it drowns in twilight, fatter its own light outshines the dark part; common practice, no source. */
const LIT = { least: 0.01, most: 0.25 } as const;
const LEAST_DEG = 5;
const DAYS_AHEAD = 35;
const MOST = 6;

interface Shine {
  readonly utcMs: UtcMs;
  readonly isMorning: boolean;
  readonly litFraction: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

/** At nautical dusk and dawn, the Sun 12° down, of each night to come. */
const shinesOf = ({ site }: ResolvedSite, fromUtcMs: UtcMs): readonly Shine[] => {
  const { observer } = site;
  return Array.from({ length: DAYS_AHEAD }, (_, day) => nightAround(fromUtcMs + day * MS_PER_DAY, site)).flatMap(
    ({ startUtcMs, endUtcMs }) => {
      const { nautical } = twilights(observer, startUtcMs, endUtcMs);
      const moments = [
        { utcMs: nautical?.duskUtcMs ?? null, isMorning: false },
        { utcMs: nautical?.dawnUtcMs ?? null, isMorning: true },
      ];
      return moments.flatMap(({ utcMs, isMorning }) => {
        if (utcMs === null || utcMs < fromUtcMs) return [];
        const { illuminatedFraction: litFraction, waxing } = moonAt(observer, utcMs);
        const moon = horizontalOf(MOON, observer, utcMs);
        const isThin = litFraction >= LIT.least && litFraction <= LIT.most && waxing !== isMorning;
        return isThin && moon.altitudeDeg >= LEAST_DEG ? [{ utcMs, isMorning, litFraction, ...moon }] : [];
      });
    },
  );
};

const shineWords = (shine: Shine, zone: string, nowUtcMs: UtcMs): string =>
  `${dayWords(shine.utcMs, zone, nowUtcMs)} ${formatClock(shine.utcMs, zone)}, ${Math.round(shine.litFraction * 100)} % lit, ${degrees(shine.altitudeDeg)} high in the ${compassWord(shine.azimuthDeg)}`;

export const earthshineAnswer = (where: ResolvedSite, utcMs: UtcMs, notes: readonly string[]): Reply => {
  const { zone, observer } = where.site;
  const found = shinesOf(where, utcMs);
  const some = (isMorning: boolean): readonly Shine[] =>
    found.filter((shine) => shine.isMorning === isMorning).slice(0, MOST);
  const [mornings, evenings] = [some(true), some(false)];
  const days = (shines: readonly Shine[]): string =>
    `${dayWords(shines[0]?.utcMs ?? utcMs, zone, utcMs)}${shines.length > 1 ? ` to ${dayWords(shines.at(-1)?.utcMs ?? utcMs, zone, utcMs)}` : ''}`;
  const said = [
    ...(mornings.length === 0 ? [] : [{ first: mornings[0]?.utcMs ?? 0, words: `Mornings ${days(mornings)}` }]),
    ...(evenings.length === 0 ? [] : [{ first: evenings[0]?.utcMs ?? 0, words: `evenings ${days(evenings)}` }]),
  ].sort((a, b) => a.first - b.first);
  const words = said.map((part) => part.words).join('; ');
  return reply({
    title: 'Earthshine',
    level: said.length > 0 ? 'good' : 'info',
    summary:
      said.length === 0
        ? `Not seen from here in the next ${DAYS_AHEAD} days.`
        : `${words.charAt(0).toUpperCase()}${words.slice(1)}: the thin Moon with its dark part in the Earth’s light.`,
    facts: [
      ...mornings.map((shine) => ({ label: 'Morning', value: shineWords(shine, zone, utcMs) })),
      ...evenings.map((shine) => ({ label: 'Evening', value: shineWords(shine, zone, utcMs) })),
    ],
    notes: [
      ...notes,
      `With the Sun 12° down, times in ${zoneName(utcMs, zone)}. In the morning stop before the Sun rises.`,
    ],
    pointsAt: found
      .slice(0, 1)
      .map((shine) => ({ what: 'the Moon', when: { utcMs: shine.utcMs }, observer, zone, direction: MOON })),
    data: { earthshine: found.map((shine) => ({ utc: isoUtc(shine.utcMs), isMorning: shine.isMorning })) },
  });
};
