/** Draws a Chart as SVG and PNG, off screen, with the font that ships beside this file. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { renderAsync } from '@resvg/resvg-js';
import { CustomChart, LineChart, ScatterChart } from 'echarts/charts';
import { GridComponent, MarkAreaComponent, MarkLineComponent, TitleComponent } from 'echarts/components';
import * as echarts from 'echarts/core';
import { SVGRenderer } from 'echarts/renderers';
import { eveningChartOption } from './evening-chart.js';
import { horizonChartOption } from './horizon-chart.js';
import { nightChartOption } from './night-chart.js';
import type { Chart } from './reply.js';

echarts.use([
  CustomChart,
  LineChart,
  ScatterChart,
  GridComponent,
  MarkAreaComponent,
  MarkLineComponent,
  TitleComponent,
  SVGRenderer,
]);

export const CHART_WIDTH = 1000;
export const CHART_HEIGHT = 640;

// From source the fonts lie beside this file; from dist/ they lie in the source tree it was built from.
const fontFile = (name: string): string => {
  const beside = fileURLToPath(new URL(`fonts/${name}`, import.meta.url));
  return existsSync(beside) ? beside : fileURLToPath(new URL(`../../../bot/reply/fonts/${name}`, import.meta.url));
};
const FONT = { fontFiles: [fontFile('DejaVuSans.ttf')], defaultFontFamily: 'DejaVu Sans', loadSystemFonts: false };

const optionOf = (chart: Chart): Record<string, unknown> => {
  switch (chart.kind) {
    case 'night':
      return nightChartOption(chart);
    case 'evening':
      return eveningChartOption(chart);
    case 'horizon':
      return horizonChartOption(chart);
  }
};

/** The chart as SVG text. Pure but for the library it uses. */
export const chartSvg = (chart: Chart): string => {
  const canvas = echarts.init(null, null, { renderer: 'svg', ssr: true, width: CHART_WIDTH, height: CHART_HEIGHT });
  try {
    canvas.setOption(optionOf(chart));
    return canvas.renderToSVGString();
  } finally {
    canvas.dispose();
  }
};

/** The chart as a PNG, 1000 × 640, legible at a phone's width. Rejects only if the drawing libraries fail. The pixels are made beside the event loop. */
export const renderChart = async (
  chart: Chart,
): Promise<{ readonly png: Buffer; readonly width: number; readonly height: number }> => {
  // Off the main thread: the drawing is half the work, and others are waiting for answers.
  const image = await renderAsync(chartSvg(chart), { font: FONT });
  return { png: image.asPng(), width: image.width, height: image.height };
};
