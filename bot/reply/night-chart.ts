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

const BAND_WORD = {
  day: 'day',
  civil: 'civil twilight',
  nautical: 'nautical twilight',
  astronomical: 'astronomical twilight',
  dark: 'dark',
} as const;
/** Above this share of the width a band's word stands level, above the next upright; in what is narrower it has no room. */
const LEVEL_WORD_SHARE = 0.24;
const UPRIGHT_WORD_SHARE = 0.018;

const bandAreas = ({ bands, startUtcMs, endUtcMs }: NightChart): unknown[] =>
  bands.map(({ fromUtcMs, toUtcMs, band }) => {
    const share = (toUtcMs - fromUtcMs) / (endUtcMs - startUtcMs);
    const isShort = band === 'day' || band === 'dark';
    const isLevel = share > (isShort ? LEVEL_WORD_SHARE / 3 : LEVEL_WORD_SHARE);
    return [
      {
        xAxis: fromUtcMs,
        itemStyle: { color: CHART.bands[band], opacity: 1 },
        label: {
          show: isLevel || (share > UPRIGHT_WORD_SHARE && !isShort),
          formatter: BAND_WORD[band],
          position: isLevel ? 'insideTop' : 'inside',
          rotate: isLevel ? 0 : 90,
          ...text(isLevel ? 20 : 15, CHART.faint),
        },
      },
      { xAxis: toUtcMs },
    ];
  });

/** Near its best the word stands over the curve, which a direction under it does not meet; at the edges it turns inward. */
const bestLabelPosition = ({ startUtcMs, endUtcMs }: NightChart, { utcMs, altitudeDeg }: ChartPoint): string => {
  const share = (utcMs - startUtcMs) / (endUtcMs - startUtcMs);
  if (share < 0.14) return 'right';
  if (share > 0.86) return 'left';
  return altitudeDeg > 78 ? 'bottom' : 'top';
};

/** Directions stand under the curve, but for those that would meet the best's own word. */
const BEST_CLEAR_MS = 45 * 60_000;
const compassPoints = ({ compass = [], best }: NightChart): unknown[] =>
  compass
    .filter(({ utcMs }) => best === null || best.altitudeDeg <= 78 || Math.abs(utcMs - best.utcMs) > BEST_CLEAR_MS)
    .map(({ utcMs, altitudeDeg, word }) => ({
      value: [utcMs, altitudeDeg],
      label: { show: true, formatter: word, position: 'bottom', distance: 8, ...text(20, CHART.ink) },
    }));

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
      subtext: `${moonCurve.length === 0 ? '' : 'Dashed: the Moon. '}${horizonCurve === undefined ? '' : 'Green: your horizon. '}Times in ${zone.replace(/_/gu, ' ')}`,
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
                      formatter: `useful from ${minimumAltitudeDeg}°`,
                      position: 'insideStartBottom',
                      ...text(17, CHART.limit),
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
      {
        type: 'scatter',
        data: compassPoints(chart),
        symbol: 'circle',
        symbolSize: 9,
        silent: true,
        itemStyle: { color: CHART.ink },
      },
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
                position: bestLabelPosition(chart, best),
                distance: 12,
              },
            },
          ]),
    ],
  };
};
