/** The optional port for operators: `/health` for supervisors, `/metrics` for Prometheus; nothing personal on either. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { StartError } from '../ground/start-error.js';
import type { HealthPart } from './health-part.js';
import type { Metrics } from './metrics.js';
import { ownVersion } from './version.js';

export interface HealthServer {
  readonly port: number;
  readonly stop: () => Promise<void>;
}

/**
 * Listens until stopped. `/health` answers 200 while every part is well, else 503, with each part's state as JSON.
 * @throws StartError when the port cannot be had
 */
export const startHealthServer = async (
  listen: { readonly host: string; readonly port: number },
  parts: () => readonly HealthPart[],
  metrics: Metrics,
): Promise<HealthServer> => {
  const version = ownVersion();
  const server = createServer((request, response) => {
    const answer = (status: number, contentType: string, body: string): void => {
      response.writeHead(status, { 'content-type': contentType, 'cache-control': 'no-store' });
      response.end(request.method === 'HEAD' ? undefined : body);
    };
    const path = request.url?.split('?')[0];
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      answer(405, 'text/plain', 'GET or HEAD only\n');
    } else if (path === '/health') {
      const states = parts().map(({ name, health }) => ({ name, ...health() }));
      const ok = states.every((state) => state.ok);
      answer(ok ? 200 : 503, 'application/json', `${JSON.stringify({ ok, version, parts: states })}\n`);
    } else if (path === '/metrics') {
      metrics.expose().then(
        ({ contentType, body }) => answer(200, contentType, body),
        () => answer(500, 'text/plain', 'metrics are not available\n'),
      );
    } else {
      answer(404, 'text/plain', 'here are /health and /metrics\n');
    }
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        new StartError(
          `PIERHAND_HTTP_PORT ${listen.port} on ${listen.host} cannot be listened on (${error.code ?? error.message}).`,
        ),
      ),
    );
    server.listen(listen.port, listen.host, resolve);
  });
  return {
    port: (server.address() as AddressInfo).port,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
