/** A site's horizon profile as an ECharts option: what stands in the way, all round from north to north. */
import { CHART } from './palette.js';
import type { HorizonChart } from './reply.js';

const COMPASS: Readonly<Record<number, string>> = {
  0: 'N',
  45: 'NE',
  90: 'E',
  135: 'SE',
  180: 'S',
  225: 'SW',
  270: 'W',
  315: 'NW',
  360: 'N',
};

/** The profile closed round the circle: its altitude at 0° and 360° is drawn between its last and first points. */
const closed = (points: HorizonChart['points']): [number, number][] => {
  const sorted = [...points].sort((a, b) => a.azimuthDeg - b.azimuthDeg);
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined)
    return [
      [0, 0],
      [360, 0],
    ];
  const gap = first.azimuthDeg + 360 - last.azimuthDeg;
  const atNorth =
    gap === 0
      ? first.altitudeDeg
      : last.altitudeDeg + (first.altitudeDeg - last.altitudeDeg) * ((360 - last.azimuthDeg) / gap);
  return [
    [0, atNorth],
    ...sorted.map(({ azimuthDeg, altitudeDeg }): [number, number] => [azimuthDeg, altitudeDeg]),
    [360, atNorth],
  ];
};

export const horizonChartOption = (chart: HorizonChart): Record<string, unknown> => {
  const text = (fontSize: number, color: string) => ({ fontFamily: 'DejaVu Sans', fontSize, color });
  const ticks = Object.keys(COMPASS).map(Number);
  const top = Math.max(30, ...chart.points.map(({ altitudeDeg }) => Math.ceil(altitudeDeg / 10) * 10));
  return {
    animation: false,
    backgroundColor: CHART.ground,
    title: {
      text: chart.title,
      left: 24,
      top: 14,
      textStyle: { ...text(28, CHART.ink), fontWeight: 'normal', width: 950, overflow: 'truncate' },
    },
    grid: { left: 76, right: 28, top: 80, bottom: 56 },
    xAxis: {
      type: 'value',
      min: 0,
      max: 360,
      axisTick: { customValues: ticks },
      axisLabel: { customValues: ticks, formatter: (value: number) => COMPASS[value] ?? '', ...text(22, CHART.ink) },
      axisLine: { lineStyle: { color: CHART.faint } },
      splitLine: { show: false },
    },
    yAxis: {
      type: 'value',
      min: 0,
      max: top,
      axisLabel: { formatter: '{value}°', ...text(22, CHART.ink) },
      splitLine: { lineStyle: { color: CHART.grid } },
    },
    series: [
      {
        type: 'line',
        data: closed(chart.points),
        symbol: 'none',
        silent: true,
        lineStyle: { color: CHART.limit, width: 4 },
        areaStyle: { color: CHART.horizon, opacity: 0.9 },
      },
    ],
  };
};
