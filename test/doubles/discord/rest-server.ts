/** The double's HTTP side: reads a request, checks it against the published schema, carries it out or misbehaves as told. */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { Misbehaviour } from './misbehaviour.js';
import { requestFaults } from './request-rules.js';
import type { RestAnswer, RestOptions, RestRequest } from './rest-message.js';
import { carryOut } from './rest-routes.js';
import type { World } from './world.js';

export interface LoggedRequest {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  readonly fileCount: number;
  readonly status: number;
}
export interface RestLog {
  readonly requests: LoggedRequest[];
  /** Bodies that do not fit the published schemas, and routes the bot has no business with; empty when all is well. */
  readonly violations: string[];
  underWay: number;
  lastMs: number;
  total: number;
}

const KEPT_REQUESTS = 5000;
const PREFIX = '/api/v10';

const readBytes = async (message: IncomingMessage): Promise<Buffer> => {
  const parts: Buffer[] = [];
  for await (const part of message) parts.push(part as Buffer);
  return Buffer.concat(parts);
};

const readRequest = async (message: IncomingMessage): Promise<RestRequest> => {
  const url = new URL(message.url ?? '/', 'http://double');
  const base = {
    method: message.method ?? 'GET',
    path: decodeURIComponent(url.pathname.slice(PREFIX.length)),
    query: url.searchParams,
  };
  const bytes = await readBytes(message);
  const contentType = message.headers['content-type'] ?? '';
  if (bytes.length === 0) return { ...base, body: undefined, files: [] };
  if (!contentType.startsWith('multipart/form-data'))
    return { ...base, body: JSON.parse(bytes.toString('utf8')) as unknown, files: [] };
  const form = await new Response(new Uint8Array(bytes), { headers: { 'content-type': contentType } }).formData();
  const json = form.get('payload_json');
  const files: RestRequest['files'][number][] = [];
  for (const [name, value] of form) {
    const index = /^files\[(\d+)\]$/u.exec(name)?.[1];
    if (index === undefined || typeof value === 'string') continue;
    files[Number(index)] = { name: value.name, contentType: value.type, bytes: Buffer.from(await value.arrayBuffer()) };
  }
  return { ...base, body: typeof json === 'string' ? (JSON.parse(json) as unknown) : undefined, files };
};

/** The interaction that a request answers; the double's tokens begin with their interaction's id. */
const interactionIn = (url: string): string | undefined =>
  /^\/api\/v10\/(?:interactions\/|webhooks\/\d+\/)(\d+)/u.exec(url)?.[1];

const needsToken = (path: string): boolean => !path.startsWith('/interactions/') && !path.startsWith('/webhooks/');

export const createRestServer = (
  world: World,
  misbehaviour: Misbehaviour,
  options: RestOptions,
): { readonly server: Server; readonly log: RestLog } => {
  const log: RestLog = { requests: [], violations: [], underWay: 0, lastMs: 0, total: 0 };

  let checked = 0;
  const decide = (request: RestRequest, authorization: string | undefined): RestAnswer => {
    const fault = misbehaviour.hit(request.method, request.path);
    if (fault !== undefined && fault.afterProcessing !== true) return misbehave(fault);
    if (needsToken(request.path) && authorization !== `Bot ${world.token}`)
      return { status: 401, body: { code: 0, message: '401: Unauthorized' } };
    const faults =
      checked++ % options.checkEvery === 0
        ? requestFaults(request.method, request.path, request.body, request.files.length)
        : [];
    if (faults === undefined || faults.length > 0) {
      const told = (faults ?? ['a route the bot has no business with']).map(
        (line) => `${request.method} ${request.path.replace(/[\w-]{30,}/gu, '…')}: ${line}`,
      );
      log.violations.push(...told);
      return {
        status: 400,
        body: {
          code: 50035,
          message: 'Invalid Form Body',
          errors: { _errors: told.map((message) => ({ code: 'INVALID', message })) },
        },
      };
    }
    const answer = carryOut(world, request, options);
    return fault === undefined ? answer : misbehave(fault);
  };

  const misbehave = ({
    status,
    retryAfterSeconds = 0.2,
    code = 0,
  }: {
    status: number;
    retryAfterSeconds?: number;
    code?: number;
  }): RestAnswer =>
    status === 429
      ? { status, body: { message: 'You are being rate limited.', retry_after: retryAfterSeconds, global: false } }
      : { status, body: { code, message: `${status}: told to misbehave` } };

  const respond = (response: ServerResponse, { status, body }: RestAnswer): void => {
    const retryAfter = status === 429 ? (body as { retry_after: number }).retry_after : undefined;
    response.writeHead(status, {
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      'x-ratelimit-limit': '50',
      'x-ratelimit-remaining': status === 429 ? '0' : '49',
      'x-ratelimit-reset-after': String(retryAfter ?? 1),
      'x-ratelimit-bucket': 'double',
      ...(retryAfter === undefined ? {} : { 'retry-after': String(retryAfter), 'x-ratelimit-scope': 'user' }),
    });
    response.end(body === undefined ? undefined : JSON.stringify(body));
  };

  /** Members' files, as Discord's media host hands them out. */
  const serveFile = (response: ServerResponse, id: string): void => {
    const file = world.files.get(id);
    response.writeHead(file === undefined ? 404 : 200, { 'content-type': file?.contentType ?? 'text/plain' });
    response.end(file?.bytes);
  };

  const serve = async (message: IncomingMessage, response: ServerResponse): Promise<void> => {
    const fileId = /^\/attachments\/(\d+)\//u.exec(message.url ?? '')?.[1];
    if (fileId !== undefined) return serveFile(response, fileId);
    log.underWay++;
    try {
      const request = await readRequest(message);
      const answer = decide(request, message.headers.authorization);
      log.total++;
      log.requests.push({
        method: request.method,
        path: request.path,
        body: request.body,
        fileCount: request.files.length,
        status: answer.status,
      });
      if (log.requests.length > KEPT_REQUESTS) log.requests.splice(0, log.requests.length - KEPT_REQUESTS);
      respond(response, answer);
    } catch (error) {
      log.violations.push(`${message.method} ${message.url}: ${error instanceof Error ? error.message : 'unreadable'}`);
      respond(response, { status: 400, body: { code: 50109, message: 'The request body contains invalid JSON.' } });
    } finally {
      log.underWay--;
      log.lastMs = Date.now();
      world.changes.emit('change');
      const id = interactionIn(message.url ?? '');
      if (id !== undefined) world.changes.emit(id);
    }
  };
  return { server: createServer((message, response) => void serve(message, response)), log };
};
