/** A small web server for one machine: loopback alone, this page's own requests alone, bodies bounded. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { MOST_FILE_BYTES } from '../../ground/member-file.js';
import { StartError } from '../../ground/start-error.js';

export const LOOPBACK = '127.0.0.1';
/** A file, and the words that come with it. */
const MOST_BODY_BYTES = MOST_FILE_BYTES + 256 * 1024;

const HEADERS = {
  'cache-control': 'no-store',
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
} as const;

export interface WebAnswer {
  readonly status: number;
  readonly contentType: string;
  readonly body: string | Buffer;
}

export const plain = (status: number, text: string): WebAnswer => ({
  status,
  contentType: 'text/plain; charset=utf-8',
  body: `${text}\n`,
});

export interface Routes {
  readonly get: (address: URL) => Promise<WebAnswer>;
  readonly post: (address: URL, form: FormData) => Promise<WebAnswer>;
  /** Takes the response over where it answers as events; false where the address is none of its own. */
  readonly events: (address: URL, response: ServerResponse) => boolean;
}

/** The whole body, or null where it is too large. */
const readBody = async (request: IncomingMessage): Promise<Buffer | null> => {
  if (Number(request.headers['content-length'] ?? 0) > MOST_BODY_BYTES) return null;
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > MOST_BODY_BYTES) return null;
    parts.push(part);
  }
  return Buffer.concat(parts);
};

const readForm = async (request: IncomingMessage): Promise<FormData | WebAnswer> => {
  const contentType = request.headers['content-type'] ?? '';
  if (!contentType.startsWith('multipart/form-data')) return plain(415, 'a form is expected');
  const body = await readBody(request);
  if (body === null) return plain(413, 'At most 10 MB at once.');
  try {
    return await new Response(new Uint8Array(body), { headers: { 'content-type': contentType } }).formData();
  } catch {
    return plain(400, 'that form cannot be read');
  }
};

/** Another site's page may send requests here too: its name in Host (a rebound name) or Origin gives it away. */
const refusal = (request: IncomingMessage, port: number): WebAnswer | null => {
  const own = [`${LOOPBACK}:${port}`, `localhost:${port}`];
  if (!own.includes(request.headers.host ?? '')) return plain(421, 'This page is for this machine alone.');
  const { origin } = request.headers;
  const isWrite = request.method === 'POST';
  if (!isWrite && !['GET', 'HEAD'].includes(request.method ?? '')) return plain(405, 'GET and POST only');
  if (origin === undefined ? isWrite : !own.includes(origin.replace(/^http:\/\//u, '')))
    return plain(403, 'Only this page itself may ask.');
  return null;
};

const answerTo = async (
  request: IncomingMessage,
  response: ServerResponse,
  routes: Routes,
  port: number,
): Promise<WebAnswer | 'taken'> => {
  const refused = refusal(request, port);
  if (refused !== null) return refused;
  const address = new URL(request.url ?? '/', `http://${LOOPBACK}`);
  if (request.method === 'POST') {
    const form = await readForm(request);
    return form instanceof FormData ? routes.post(address, form) : form;
  }
  return routes.events(address, response) ? 'taken' : routes.get(address);
};

const listen = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) =>
      reject(
        new StartError(
          `Port ${port} on ${LOOPBACK} cannot be listened on (${error.code ?? error.message}). Give another: npm run try -- 8090`,
        ),
      ),
    );
    server.listen(port, LOOPBACK, resolve);
  });

/**
 * `port` 0: any free one.
 * @throws StartError when the port cannot be had
 */
export const startGuardedServer = async (
  port: number,
  routes: Routes,
  onError: (error: unknown) => void,
): Promise<{ readonly port: number; readonly stop: () => Promise<void> }> => {
  let ownPort = port;
  const handle = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    const answer = await answerTo(request, response, routes, ownPort).catch((error: unknown) => {
      onError(error);
      return plain(500, 'That went wrong here; the log says how.');
    });
    if (answer === 'taken') return;
    // What was not read of a body that was refused is not worth waiting for.
    if (!request.complete) response.setHeader('connection', 'close');
    response.writeHead(answer.status, { 'content-type': answer.contentType });
    response.end(request.method === 'HEAD' ? undefined : answer.body);
  };
  const server = createServer({ requestTimeout: 60_000, headersTimeout: 10_000 }, (request, response) => {
    handle(request, response).catch(onError);
  });
  await listen(server, port);
  ownPort = (server.address() as AddressInfo).port;
  return {
    port: ownPort,
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
};
