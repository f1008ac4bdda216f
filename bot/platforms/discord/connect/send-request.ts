/**
 * Carries discord.js's requests over Node's own client, on connections that stay open: half the processor time of the client that
 * discord.js brings, and no new connection for each request of a crowd.
 */
import { Agent as PlainAgent, request as plainRequest, STATUS_CODES, type IncomingMessage } from 'node:http';
import { Agent, request } from 'node:https';
import type { RESTOptions } from 'discord.js';

type MakeRequest = RESTOptions['makeRequest'];
type Answered = Awaited<ReturnType<MakeRequest>>;
type Init = Parameters<MakeRequest>[1];

/** Beyond these, requests wait for one another. Not few: where the bot is slow, each round of its event loop brings one answer a connection. */
const CONNECTIONS = 256;
const KEPT_OPEN = { keepAlive: true, maxSockets: CONNECTIONS, maxFreeSockets: CONNECTIONS } as const;
const agent = new Agent(KEPT_OPEN);
const plainAgent = new PlainAgent(KEPT_OPEN);

interface Encoded {
  /** Text goes out with the headers, in one piece. */
  readonly body: string | Buffer;
  readonly headers: Readonly<Record<string, string>>;
}

/** discord.js gives JSON as text, and a form where there are files. */
const encoded = async (body: Init['body']): Promise<Encoded> => {
  if (typeof body === 'string') return { body, headers: {} };
  const form = new Response(body as ConstructorParameters<typeof Response>[0]);
  return {
    body: Buffer.from(await form.arrayBuffer()),
    headers: { 'content-type': form.headers.get('content-type') ?? 'application/octet-stream' },
  };
};

/** As discord.js asks of an answer: a part of the web's Response. */
const answeredWith = ({ statusCode: status = 0, rawHeaders }: IncomingMessage, bytes: Buffer): Answered => {
  const headers = new Headers();
  for (let i = 0; i + 1 < rawHeaders.length; i += 2) headers.append(rawHeaders[i] ?? '', rawHeaders[i + 1] ?? '');
  return {
    status,
    statusText: STATUS_CODES[status] ?? '',
    ok: status >= 200 && status < 300,
    headers: headers,
    body: null,
    bodyUsed: true,
    arrayBuffer: async () => new Uint8Array(bytes).buffer,
    json: async () => JSON.parse(bytes.toString()) as unknown,
    text: async () => bytes.toString(),
  };
};

/** Rejects where the connection breaks before the whole answer is here, or the signal comes first. */
export const sendRequest: MakeRequest = async (url, { method = 'GET', headers, body, signal }) => {
  if (signal?.aborted === true) throw signal.reason as Error;
  const sent = body === null || body === undefined ? null : await encoded(body);
  const isPlain = url.startsWith('http:');
  const options = {
    method,
    agent: isPlain ? plainAgent : agent,
    headers: {
      ...(headers as Readonly<Record<string, string>>),
      ...sent?.headers,
      ...(sent === null ? {} : { 'content-length': Buffer.byteLength(sent.body) }),
    },
  };
  return await new Promise<Answered>((resolve, reject) => {
    const asked = (isPlain ? plainRequest : request)(url, options, (message) => {
      const parts: Buffer[] = [];
      message.on('data', (part: Buffer) => parts.push(part));
      message.once('end', () => resolve(answeredWith(message, Buffer.concat(parts))));
      message.once('error', reject);
    });
    asked.once('error', reject);
    // Node's own watching of a signal costs as much again as the request.
    signal?.addEventListener('abort', () => asked.destroy(signal.reason as Error), { once: true });
    asked.end(sent?.body);
  });
};
