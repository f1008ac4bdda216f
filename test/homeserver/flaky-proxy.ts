/** A proxy between bot and homeserver that can hold a request back, lose an answer, or say that there were too many. */
import { createServer, request, type IncomingMessage, type ServerResponse } from 'node:http';
import { freePort } from './dendrite.js';

/** What happens to a request: `hold`: never reaches the server; `lose`: it does, and the answer is lost; `cut`: the connection breaks at once; a number: refused as too many, with that wait in ms. */
export type Fate = 'pass' | 'hold' | 'lose' | 'cut' | number;

export interface FlakyProxy {
  readonly url: string;
  /** Decides for each request; `pass` by default. */
  decide: (method: string, path: string) => Fate;
  /** Resolves once a request has met a fate other than `pass` (and, where lost, once the server has answered it). */
  readonly met: (fate: Fate) => Promise<string>;
  readonly close: () => Promise<void>;
}

export const flakyProxy = async (target: string): Promise<FlakyProxy> => {
  const port = await freePort();
  const waiting: { fate: Fate; resolve: (path: string) => void }[] = [];
  const met = (fate: Fate, path: string): void => {
    for (const entry of waiting.splice(0)) {
      if (entry.fate === fate) entry.resolve(path);
      else waiting.push(entry);
    }
  };
  const proxy: FlakyProxy = {
    url: `http://127.0.0.1:${port}`,
    decide: () => 'pass',
    met: (fate) => new Promise((resolve) => waiting.push({ fate, resolve })),
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
  const handle = (incoming: IncomingMessage, outgoing: ServerResponse): void => {
    const { method = 'GET', url = '/' } = incoming;
    const fate = proxy.decide(method, url);
    if (fate === 'hold') {
      met(fate, url);
      return;
    }
    if (fate === 'cut') {
      incoming.socket.destroy();
      met(fate, url);
      return;
    }
    if (typeof fate === 'number') {
      incoming.resume();
      outgoing
        .writeHead(429, { 'Content-Type': 'application/json' })
        .end(JSON.stringify({ errcode: 'M_LIMIT_EXCEEDED', error: 'Too many', retry_after_ms: fate }));
      met(fate, url);
      return;
    }
    const upstream = request(target + url, { method, headers: incoming.headers }, (answer) => {
      if (fate === 'lose') {
        answer.resume();
        answer.on('end', () => {
          met(fate, url);
          outgoing.destroy();
        });
        return;
      }
      outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
      answer.pipe(outgoing);
    });
    upstream.on('error', () => outgoing.destroy());
    outgoing.on('close', () => upstream.destroy());
    incoming.pipe(upstream);
  };
  const server = createServer(handle);
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  return proxy;
};
