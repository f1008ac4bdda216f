/** A chart as the image that shows it, locked where the room is encrypted. */
import { renderChart } from '../../../reply/render-chart.js';
import type { Chart } from '../../../reply/reply.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { Content } from './matrix-event.js';
import { chartImage } from './write-reply.js';

/** Rejects where it cannot be drawn or uploaded. */
export const chartContent = async (
  client: PierhandMatrixClient,
  roomId: string,
  chart: Chart,
  extra: Content,
): Promise<Content> => {
  const { png, width, height } = await renderChart(chart);
  const locked = (await client.lockFor(roomId))?.lockFile(png) ?? null;
  // The name would say in the clear what was locked.
  const [type, name] = locked === null ? ['image/png', 'chart.png'] : ['application/octet-stream', 'file'];
  const uri = await client.uploadContent(locked?.bytes ?? png, type, name);
  return chartImage(
    chart.altText,
    locked === null ? { url: uri } : { file: { ...locked.file, url: uri } },
    { width, height, bytes: png.length },
    extra,
  );
};
