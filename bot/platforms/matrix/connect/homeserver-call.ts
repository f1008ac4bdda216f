/** HTTP to the homeserver: waits as long as a rate limit says, and tries again through outages where repeating does no harm. */
import { setTimeout as sleep } from 'node:timers/promises';
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import { isRecord, textAt } from '../answer/matrix-event.js';
import { MatrixError } from './sdk.js';

export interface Call {
  readonly method: 'GET' | 'PUT' | 'POST' | 'DELETE';
  /** From `/_matrix/…` on, each part already encoded. */
  readonly path: string;
  readonly query?: Readonly<Record<string, string | number | boolean | undefined | null>>;
  readonly body?: unknown;
  /** With a Buffer as body. */
  readonly contentType?: string;
  readonly timeoutMs?: number;
  /** How long to keep trying through limits and outages; 0: once. */
  readonly patienceMs?: number;
}

/** No answer that makes sense came back. `mayHaveArrived`: the server may have acted on the request all the same. */
export class Unreachable extends Error {
  constructor(
    message: string,
    readonly mayHaveArrived: boolean,
    options?: { cause?: unknown },
  ) {
    super(message, options);
  }
}

export interface Homeserver {
  readonly call: (call: Call) => Promise<unknown>;
}

const NEVER_ARRIVED = new Set([
  'ECONNREFUSED',
  'ENOTFOUND',
  'EAI_AGAIN',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'UND_ERR_CONNECT_TIMEOUT',
]);
const DEFAULT_TIMEOUT_MS = 60_000;
const DEFAULT_PATIENCE_MS = 10 * MS_PER_MINUTE;
const LONGEST_PAUSE_MS = 15_000;
export const LONGEST_LIMIT_MS = 120_000;

/** Doubling from a quarter of a second, with jitter, so that many bots do not return in step. */
export const backOffMs = (attempt: number): number =>
  Math.min(LONGEST_PAUSE_MS, 250 * 2 ** Math.min(attempt, 10)) * (0.5 + Math.random() / 2);

/** A message sent twice is seen twice, a room made twice stays; everything else the bot asks for may be repeated. */
const isRepeatable = ({ method, path }: Call): boolean =>
  method === 'GET' || !/\/(send\/[^/]+\/[^/]+|createRoom|login)$/u.test(path);

export const isLimit = (error: unknown): error is MatrixError =>
  error instanceof MatrixError && (error.errcode === 'M_LIMIT_EXCEEDED' || error.statusCode === 429);

const failureCode = (error: unknown): string | null => {
  const cause = error instanceof Error ? error.cause : undefined;
  return isRecord(cause) ? textAt(cause, 'code') : null;
};

const addressOf = (url: string, { path, query = {} }: Call): URL => {
  const address = new URL(url + path);
  for (const [name, value] of Object.entries(query)) {
    if (value !== undefined && value !== null) address.searchParams.set(name, String(value));
  }
  return address;
};

const requestOf = (accessToken: string | null, { method, body, contentType }: Call): RequestInit => {
  const authorization = accessToken === null ? {} : { Authorization: `Bearer ${accessToken}` };
  if (body === undefined || body === null) return { method, headers: authorization };
  return {
    method,
    headers: { ...authorization, 'Content-Type': contentType ?? 'application/json' },
    body: Buffer.isBuffer(body) ? new Uint8Array(body) : JSON.stringify(body),
  };
};

const parsedJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
};

/** What a refusal says, in the specification's words where it says them. */
const refusalIn = ({ status, headers }: Response, said: Readonly<Record<string, unknown>>): MatrixError => {
  const headerSeconds = Number(headers.get('retry-after') ?? Number.NaN);
  const retryAfterMs = said['retry_after_ms'];
  return new MatrixError(
    {
      errcode: textAt(said, 'errcode') ?? 'M_UNKNOWN',
      error: textAt(said, 'error') ?? `HTTP ${status}`,
      retry_after_ms: typeof retryAfterMs === 'number' ? retryAfterMs : headerSeconds * 1000,
    },
    status,
  );
};

/** @throws MatrixError for a refusal, Unreachable for an answer that makes no sense */
const answerIn = async (response: Response): Promise<unknown> => {
  const parsed = parsedJson(await response.text());
  // Some answers are lists.
  if (response.ok && typeof parsed === 'object' && parsed !== null) return parsed;
  const said = isRecord(parsed) ? parsed : {};
  if (response.status >= 500 || response.ok)
    throw new Unreachable(
      response.ok
        ? `what answered ${response.status} is no homeserver`
        : `the homeserver answered ${response.status} ${textAt(said, 'errcode') ?? ''}`.trim(),
      true,
    );
  throw refusalIn(response, said);
};

const once = async (url: string, accessToken: string | null, call: Call, stop: AbortSignal): Promise<unknown> => {
  if (stop.aborted) throw new Unreachable('stopping', false);
  const address = addressOf(url, call);
  const given = new AbortController();
  const giveUp = (): void => {
    given.abort();
  };
  const timer = setTimeout(giveUp, call.timeoutMs ?? DEFAULT_TIMEOUT_MS);
  stop.addEventListener('abort', giveUp, { once: true });
  try {
    return await answerIn(await fetch(address, { ...requestOf(accessToken, call), signal: given.signal }));
  } catch (error) {
    if (error instanceof MatrixError || error instanceof Unreachable) throw error;
    const code = failureCode(error);
    throw new Unreachable(
      code ?? (given.signal.aborted ? 'no answer in time' : 'the connection broke'),
      code === null || !NEVER_ARRIVED.has(code),
      { cause: error },
    );
  } finally {
    clearTimeout(timer);
    stop.removeEventListener('abort', giveUp);
  }
};

/** How long a server that limits asks to wait, within reason; null where it does not say. */
export const askedPauseMs = (error: unknown): number | null => {
  const retryAfterMs = isLimit(error) ? error.retryAfterMs : undefined;
  return retryAfterMs !== undefined && Number.isFinite(retryAfterMs)
    ? Math.min(LONGEST_LIMIT_MS, Math.max(50, retryAfterMs)) + Math.random() * 100
    : null;
};

const mayTryAgain = (error: unknown, call: Call): boolean =>
  isLimit(error) || (error instanceof Unreachable && (!error.mayHaveArrived || isRepeatable(call)));

/**
 * @param accessToken null before login
 * @param stop ends every call and every wait
 * @param onWait told of each pause, for the log
 */
export const homeserverAt = (
  url: string,
  accessToken: string | null,
  stop: AbortSignal,
  onWait: (reason: string, pauseMs: number) => void = () => undefined,
): Homeserver => ({
  call: async (call) => {
    const patienceMs = call.patienceMs ?? DEFAULT_PATIENCE_MS;
    const startedMs = performance.now();
    for (let attempt = 0; ; attempt++) {
      try {
        return await once(url, accessToken, call, stop);
      } catch (error) {
        const pauseMs = askedPauseMs(error) ?? backOffMs(attempt);
        const isTooLate = performance.now() - startedMs + pauseMs > patienceMs;
        if (!mayTryAgain(error, call) || stop.aborted || isTooLate) throw error;
        onWait(error instanceof Unreachable ? error.message : 'rate limit', Math.round(pauseMs));
        await sleep(pauseMs, undefined, { signal: stop }).catch(() => undefined);
      }
    }
  },
});
