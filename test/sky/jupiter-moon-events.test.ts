/**
 * What the four bright moons of Jupiter do, against the predictions of the IMCCE (Observatoire de Paris) as printed for the first week of
 * January 2016 ("Satellite Phenomena of Jupiter in 2016": minutes UT, the middle of each passage of the limb or the edge of the shadow).
 */
import { describe, expect, it } from 'vitest';
import { jupiterMoonEvents, type MoonEvent } from '../../bot/sky/jupiter-moons.js';

const PRINTED = `
1 14:12 III.Ec.D, 1 15:39 I.Ec.D, 1 17:39 III.Ec.R, 1 19:06 III.Oc.D, 1 19:06 I.Oc.R, 1 22:19 III.Oc.R,
2 5:35 II.Ec.D, 2 10:41 II.Oc.R, 2 11:32 IV.Ec.D, 2 13:01 I.Sh.I, 2 14:10 I.Tr.I, 2 15:10 IV.Ec.R, 2 15:16 I.Sh.E, 2 16:24 I.Tr.E, 2 23:24 IV.Oc.D,
3 1:42 IV.Oc.R, 3 10:07 I.Ec.D, 3 13:34 I.Oc.R, 3 23:48 II.Sh.I,
4 2:10 II.Tr.I, 4 2:37 II.Sh.E, 4 4:54 II.Tr.E, 4 7:29 I.Sh.I, 4 8:37 I.Tr.I, 4 9:44 I.Sh.E, 4 10:51 I.Tr.E,
5 4:13 III.Sh.I, 5 4:36 I.Ec.D, 5 7:36 III.Sh.E, 5 8:01 I.Oc.R, 5 8:56 III.Tr.I, 5 12:06 III.Tr.E, 5 18:52 II.Ec.D, 5 23:54 II.Oc.R,
6 1:57 I.Sh.I, 6 3:05 I.Tr.I, 6 4:12 I.Sh.E, 6 5:19 I.Tr.E, 6 23:04 I.Ec.D,
7 2:29 I.Oc.R, 7 13:05 II.Sh.I, 7 15:23 II.Tr.I, 7 15:54 II.Sh.E, 7 18:07 II.Tr.E, 7 20:25 I.Sh.I, 7 21:32 I.Tr.I, 7 22:40 I.Sh.E, 7 23:46 I.Tr.E`;

const MOONS = { I: 'Io', II: 'Europa', III: 'Ganymede', IV: 'Callisto' } as const;
const KINDS = { Ec: 'eclipse', Oc: 'occultation', Tr: 'transit', Sh: 'shadow-transit' } as const;

const printed = PRINTED.split(',').map((entry): MoonEvent => {
  const [, day, hour, minute, moon, kind, end] = /(\d) (\d+):(\d+) ([IV]+)\.(\w\w)\.([DRIE])/u.exec(entry) ?? [];
  return {
    name: MOONS[moon as keyof typeof MOONS],
    kind: KINDS[kind as keyof typeof KINDS],
    isBeginning: end === 'D' || end === 'I',
    utcMs: Date.UTC(2016, 0, Number(day), Number(hour), Number(minute)),
  };
});
const keyOf = ({ name, kind, isBeginning }: MoonEvent): string => `${name} ${kind} ${isBeginning ? 'begins' : 'ends'}`;

describe('the passages of the moons of Jupiter', () => {
  const found = jupiterMoonEvents({ startUtcMs: Date.UTC(2016, 0, 1, 13), endUtcMs: Date.UTC(2016, 0, 8) });

  it('are those printed, no more and no fewer', () => {
    expect(found.map(keyOf).sort()).toEqual(printed.map(keyOf).sort());
  });

  it('come within two minutes of the printed times, Callisto within four', () => {
    const off = printed.map((event) => {
      const near = found
        .filter((one) => keyOf(one) === keyOf(event))
        .map(({ utcMs }) => Math.abs(utcMs - event.utcMs) / 60_000);
      return { event: keyOf(event), name: event.name, minutes: Math.min(...near) };
    });
    const worst = [...off].sort((a, b) => b.minutes - a.minutes).slice(0, 5);
    console.log(
      'worst of the moon events:',
      worst.map(({ event, minutes }) => `${event} ${minutes.toFixed(1)}`).join('; '),
    );
    for (const { event, name, minutes } of off) expect(minutes, event).toBeLessThanOrEqual(name === 'Callisto' ? 4 : 2);
  });
});
