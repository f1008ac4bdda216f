/** The altitude curve through one night as an ECharts option: twilight bands, Moon, minimum altitude, own horizon, now, best. */
import { DateTime } from 'luxon';
import { MS_PER_MINUTE } from '../ground/durations.js';
import type { ChartPoint, NightChart } from './reply.js';
import { CHART } from './palette.js';

const FONT_FAMILY = 'DejaVu Sans';
/** To the nearest minute, as the words beside the chart have it. */
const clock = (utcMs: number, zone: string, form = 'HH:mm'): string =>
  DateTime.fromMillis(Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE, { zone }).toFormat(form);
const pairs = (points: readonly ChartPoint[]): [number, number][] =>
  points.map(({ utcMs, altitudeDeg }) => [utcMs, altitudeDeg]);
const text = (fontSize: number, color: string) => ({ fontFamily: FONT_FAMILY, fontSize, color });

const BAND_WORD = { day: 'Day', civil: '', nautical: '', astronomical: '', dark: 'Dark' } as const;
/** Below this share of the width a band's word would not fit. */
const BAND_WORD_SHARE = 0.09;

const bandAreas = ({ bands, startUtcMs, endUtcMs }: NightChart): unknown[] =>
  bands.map(({ fromUtcMs, toUtcMs, band }) => [
    {
      xAxis: fromUtcMs,
      itemStyle: { color: CHART.bands[band], opacity: 1 },
      label: {
        show: (toUtcMs - fromUtcMs) / (endUtcMs - startUtcMs) > BAND_WORD_SHARE && BAND_WORD[band] !== '',
        formatter: BAND_WORD[band],
        position: 'insideTop',
        ...text(20, CHART.faint),
      },
    },
    { xAxis: toUtcMs },
  ]);

/** Whole local hours inside the chart, every second one, for the time axis. */
const hourTicks = ({ startUtcMs, endUtcMs, zone }: NightChart): number[] => {
  const ticks: number[] = [];
  for (
    let tick = DateTime.fromMillis(startUtcMs, { zone }).startOf('hour').toMillis();
    tick <= endUtcMs;
    tick += 3_600_000
  ) {
    if (tick >= startUtcMs && DateTime.fromMillis(tick, { zone }).hour % 2 === 0) ticks.push(tick);
  }
  return ticks;
};

export const nightChartOption = (chart: NightChart): Record<string, unknown> => {
  const { zone, startUtcMs, endUtcMs, curve, moonCurve, minimumAltitudeDeg, horizonCurve, nowUtcMs, best } = chart;
  const ticks = hourTicks(chart);
  const showNow = nowUtcMs !== null && nowUtcMs > startUtcMs && nowUtcMs < endUtcMs;
  // A curve that leaves the picture is interrupted, not flattened along its edge.
  const above = (points: readonly ChartPoint[]): [number, number | '-'][] =>
    pairs(points).map(([x, y]) => [x, y < -10 ? '-' : y]);
  return {
    animation: false,
    backgroundColor: CHART.ground,
    title: {
      text: chart.title,
      left: 24,
      top: 14,
      textStyle: { ...text(28, CHART.ink), fontWeight: 'normal', width: 950, overflow: 'truncate' },
      subtext: `Solid: target. Dashed: Moon. Times in ${zone.replace(/_/gu, ' ')}`,
      subtextStyle: text(19, CHART.faint),
      itemGap: 6,
    },
    grid: { left: 76, right: 28, top: 112, bottom: 56 },
    xAxis: {
      type: 'value',
      min: startUtcMs,
      max: endUtcMs,
      axisTick: { customValues: ticks },
      axisLabel: {
        customValues: ticks,
        formatter: (value: number) => clock(value, zone, 'HH'),
        ...text(22, CHART.ink),
      },
      axisLine: { lineStyle: { color: CHART.faint } },
      splitLine: { show: false },
    },
    yAxis: {
      type: 'value',
      min: -10,
      max: 90,
      interval: 10,
      axisLabel: {
        formatter: (value: number) => (value >= 0 && value % 30 === 0 ? `${value}°` : ''),
        ...text(22, CHART.ink),
      },
      splitLine: { lineStyle: { color: CHART.grid } },
    },
    series: [
      {
        type: 'line',
        data: [],
        silent: true,
        markArea: { silent: true, data: bandAreas(chart) },
        markLine: {
          silent: true,
          symbol: 'none',
          data: [
            { yAxis: 0, lineStyle: { color: CHART.ink, width: 2, type: 'solid' }, label: { show: false } },
            ...(minimumAltitudeDeg === null || minimumAltitudeDeg <= 0
              ? []
              : [
                  {
                    yAxis: minimumAltitudeDeg,
                    lineStyle: { color: CHART.limit, width: 2, type: 'dotted' },
                    label: {
                      formatter: `least useful ${minimumAltitudeDeg}°`,
                      position: 'insideStartTop',
                      ...text(18, CHART.limit),
                    },
                  },
                ]),
            ...(showNow
              ? [
                  {
                    xAxis: nowUtcMs,
                    lineStyle: { color: CHART.now, width: 3, type: 'solid' },
                    label: { formatter: 'now', position: 'end', ...text(20, CHART.now) },
                  },
                ]
              : []),
          ],
        },
      },
      ...(horizonCurve === undefined
        ? []
        : [
            {
              type: 'line',
              data: pairs(horizonCurve),
              symbol: 'none',
              silent: true,
              lineStyle: { color: CHART.horizon, width: 2 },
              areaStyle: { color: CHART.horizon, opacity: 0.75, origin: 'start' },
            },
          ]),
      {
        type: 'line',
        data: above(moonCurve),
        symbol: 'none',
        silent: true,
        lineStyle: { color: CHART.moon, width: 3, type: 'dashed' },
      },
      { type: 'line', data: above(curve), symbol: 'none', silent: true, lineStyle: { color: CHART.target, width: 5 } },
      ...(best === null
        ? []
        : [
            {
              type: 'scatter',
              data: [[best.utcMs, best.altitudeDeg]],
              symbol: 'diamond',
              symbolSize: 22,
              silent: true,
              itemStyle: { color: CHART.best },
              label: {
                show: true,
                formatter: `best ${clock(best.utcMs, zone)}, ${Math.round(best.altitudeDeg)}°`,
                ...text(22, CHART.best),
                backgroundColor: CHART.ground,
                padding: [3, 6],
                borderRadius: 4,
                position: best.altitudeDeg > 75 ? 'bottom' : 'top',
                distance: 12,
              },
            },
          ]),
    ],
  };
};
