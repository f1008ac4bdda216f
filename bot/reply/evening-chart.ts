/** The evening at a glance as an ECharts option: a bar a target along the hours, the brighter the higher it stands, its best marked. */
import { DateTime } from 'luxon';
import { CHART } from './palette.js';
import type { EveningChart } from './reply.js';

const text = (fontSize: number, color: string) => ({ fontFamily: 'DejaVu Sans', fontSize, color });
const NAME_WIDTH = 330;
const LEAST_SHADE = 0.12;

const clock = (utcMs: number, zone: string): string => DateTime.fromMillis(utcMs, { zone }).toFormat('HH:mm');

/** Whole hours of the site's clocks within the chart. */
const hourTicks = ({ startUtcMs, endUtcMs, zone }: EveningChart): number[] => {
  const ticks: number[] = [];
  for (
    let tick = DateTime.fromMillis(startUtcMs, { zone }).startOf('hour').plus({ hours: 1 }).toMillis();
    tick <= endUtcMs;
    tick += 3_600_000
  )
    ticks.push(tick);
  return ticks;
};

/** 0 below the least useful height, 1 from 60° up. */
const shade = (altitudeDeg: number, leastDeg: number): number =>
  altitudeDeg < leastDeg
    ? 0
    : LEAST_SHADE + (1 - LEAST_SHADE) * Math.min(1, (altitudeDeg - leastDeg) / (60 - leastDeg));

interface DrawApi {
  readonly value: (dimension: number) => number;
  readonly coord: (point: readonly [number, number]) => readonly [number, number];
  readonly size: (extent: readonly [number, number]) => readonly [number, number];
}

const segment = (_params: unknown, api: DrawApi) => {
  const [left, middle] = api.coord([api.value(0), api.value(2)]);
  const [right] = api.coord([api.value(1), api.value(2)]);
  const height = api.size([0, 1])[1] * 0.62;
  return {
    type: 'rect',
    shape: { x: left, y: middle - height / 2, width: Math.max(1, right - left + 0.6), height },
    style: { fill: CHART.target, opacity: api.value(3) },
  };
};

export const eveningChartOption = (chart: EveningChart): Record<string, unknown> => {
  const { rows, startUtcMs, endUtcMs, zone, darkFromUtcMs } = chart;
  const ticks = hourTicks(chart);
  const isDarkInside = darkFromUtcMs !== null && darkFromUtcMs > startUtcMs && darkFromUtcMs < endUtcMs;
  const segments = rows.flatMap(({ curve, leastDeg }, row) =>
    curve.slice(0, -1).flatMap(({ utcMs, altitudeDeg }, i) => {
      const next = curve[i + 1];
      const opacity = shade(altitudeDeg, leastDeg);
      return next === undefined || opacity === 0 ? [] : [[utcMs, next.utcMs, row, opacity]];
    }),
  );
  return {
    animation: false,
    backgroundColor: CHART.ground,
    title: {
      text: chart.title,
      left: 24,
      top: 14,
      textStyle: { ...text(28, CHART.ink), fontWeight: 'normal', width: 950, overflow: 'truncate' },
      subtext: `Brighter: higher. ◆ best.${isDarkInside ? ` Dotted: dark, from ${clock(darkFromUtcMs, zone)}.` : ''} Times in ${zone.replace(/_/gu, ' ')}`,
      subtextStyle: text(19, CHART.faint),
      itemGap: 6,
    },
    grid: { left: NAME_WIDTH + 20, right: 40, top: 104, bottom: 56 },
    xAxis: {
      type: 'value',
      min: startUtcMs,
      max: endUtcMs,
      axisTick: { customValues: ticks },
      axisLabel: {
        customValues: ticks,
        formatter: (value: number) => clock(value, zone).slice(0, 2),
        ...text(22, CHART.ink),
      },
      axisLine: { lineStyle: { color: CHART.faint } },
      splitLine: { show: false },
    },
    yAxis: {
      type: 'category',
      inverse: true,
      data: rows.map(({ name }) => name),
      axisTick: { show: false },
      axisLine: { show: false },
      axisLabel: { ...text(21, CHART.ink), width: NAME_WIDTH, overflow: 'truncate' },
      splitLine: { show: false },
    },
    series: [
      {
        type: 'custom',
        renderItem: segment,
        data: segments,
        silent: true,
        ...(isDarkInside
          ? {
              markLine: {
                silent: true,
                symbol: 'none',
                label: { show: false },
                data: [{ xAxis: darkFromUtcMs, lineStyle: { color: CHART.ink, width: 2, type: 'dotted' } }],
              },
            }
          : {}),
      },
      {
        type: 'scatter',
        data: rows.map(({ bestUtcMs }, row) => [bestUtcMs, row]),
        symbol: 'diamond',
        symbolSize: 20,
        silent: true,
        itemStyle: { color: CHART.best, borderColor: CHART.ground, borderWidth: 2 },
      },
    ],
  };
};
