/** From one target to another: whether a German mount changes sides on the way, and which way round an alt-azimuth one turns. */
import { axesFor, oppositeSide, pierSide, type MountKind, type PierSide } from '../../pointing/mount/mount.js';
import type { Fact, Json, Reply } from '../../reply/reply.js';
import { compassWord, degrees, direction, isoUtc } from '../../reply/wording.js';
import { wrapDeg180 } from '../../sky/angles.js';
import { placeOf } from '../../sky/place.js';
import type { Observer, Place, SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';

interface WayEnd {
  readonly name: string;
  readonly body: SkyBody;
}

export interface Across {
  readonly from: WayEnd;
  readonly to: WayEnd;
  readonly observer: Observer;
  readonly zone: string;
  readonly utcMs: UtcMs;
  readonly mount: MountKind;
}

interface WayAcross {
  readonly summary: string;
  readonly facts: readonly Fact[];
  readonly flips: boolean;
  readonly data: Readonly<Record<string, Json>>;
}

const sideWords = (side: PierSide): string => `tube ${side} of the pier, looking ${oppositeSide(side)}`;
/** Before it a target is east of the meridian. */
const halfOf = (place: Place): PierSide => oppositeSide(pierSide(place.hourAngleHours));

const standWords = (place: Place): string =>
  place.apparentAltitudeDeg > 0
    ? `${degrees(place.apparentAltitudeDeg)} high in the ${direction(place.azimuthDeg)}`
    : `${degrees(-place.altitudeDeg)} below the horizon`;

const downWords = (ends: readonly (readonly [WayEnd, Place])[]): string =>
  ends
    .filter(([, place]) => place.apparentAltitudeDeg <= 0)
    .map(([{ name }, place]) => `${name} is ${degrees(-place.altitudeDeg)} below the horizon then. `)
    .join('');

const germanWords = ({ from, to, utcMs, zone }: Across, start: Place, end: Place): string => {
  const at = `at ${formatLocalTime(utcMs, zone)}`;
  const [startHalf, endHalf] = [halfOf(start), halfOf(end)];
  return startHalf === endHalf
    ? `No flip on the way: ${from.name} and ${to.name} are both ${startHalf} of the meridian ${at}, ${sideWords(oppositeSide(startHalf))}.`
    : `It flips on the way: ${at} ${from.name} is ${startHalf} of the meridian and ${to.name} ${endHalf} of it, so the mount changes sides and the tube swings by the pole.`;
};

const turnsWords = (mount: MountKind, start: Place, end: Place, { latitudeDeg }: Observer): string => {
  const south = latitudeDeg < 0 ? -1 : 1;
  const turnDeg = wrapDeg180(end.azimuthDeg - start.azimuthDeg);
  if (mount === 'altaz')
    return `${degrees(Math.abs(turnDeg))} of azimuth the short way, through the ${compassWord((start.azimuthDeg + turnDeg / 2 + 360) % 360)}`;
  const axesOf = ({ hourAngleHours, ofDate }: Place) =>
    axesFor(mount, { longitudeDeg: hourAngleHours * 15, latitudeDeg: south * ofDate.decDeg });
  const [a, b] = [axesOf(start), axesOf(end)];
  return `right-ascension axis ${degrees(Math.abs(b.primaryDeg - a.primaryDeg))}, declination axis ${degrees(Math.abs(b.secondaryDeg - a.secondaryDeg))}`;
};

const wayAcross = (across: Across): WayAcross => {
  const { from, to, observer, utcMs, mount } = across;
  const start = placeOf(from.body, observer, utcMs);
  const end = placeOf(to.body, observer, utcMs);
  const flips = mount === 'german' && halfOf(start) !== halfOf(end);
  const down = downWords([
    [from, start],
    [to, end],
  ]);
  const words =
    mount === 'german'
      ? germanWords(across, start, end)
      : `No flip: ${mount === 'fork' ? 'a fork' : 'an alt-azimuth mount'} only turns from ${from.name} to ${to.name}.`;
  return {
    summary: `${down}${words}`,
    flips,
    facts: [
      { label: 'From', value: `${from.name}, ${standWords(start)}` },
      { label: 'To', value: `${to.name}, ${standWords(end)}` },
      ...(mount === 'german'
        ? [
            {
              label: 'Pier side',
              value: flips
                ? `${sideWords(pierSide(start.hourAngleHours))}; then ${sideWords(pierSide(end.hourAngleHours))}`
                : sideWords(pierSide(end.hourAngleHours)),
            },
          ]
        : []),
      { label: 'Turns', value: turnsWords(mount, start, end, observer) },
    ],
    data: { from: from.name, to: to.name },
  };
};

/** The whole answer, but for what was taken for granted. */
export const acrossReply = (across: Across): Omit<Reply, 'notes' | 'cautions' | 'audience'> => {
  const { from, to, observer, zone, utcMs } = across;
  const { summary, facts, flips, data } = wayAcross(across);
  return {
    title: `From ${from.name} to ${to.name}`,
    level: 'info',
    summary,
    facts,
    pointsAt: [from, to]
      .filter(({ body }) => placeOf(body, observer, utcMs).apparentAltitudeDeg > 0)
      .map(({ name, body }) => ({ what: name, when: { utcMs }, observer, zone, direction: body })),
    data: { utc: isoUtc(utcMs), ...data, flipsOnTheWay: flips },
  };
};
