/** The structured log, to standard error: secrets never, and nothing personal (no sites, no message text). */
import { pino, type DestinationStream, type Logger } from 'pino';
import type { LogLevel } from './settings.js';

/** Interaction and webhook addresses carry a token that lets anyone answer in our name for a quarter of an hour. */
const TOKEN_IN_PATH = /\/(interactions|webhooks)\/(\d+)\/[^/?\s"']+/gu;

interface ErrorLike {
  readonly name?: unknown;
  readonly message?: unknown;
  readonly code?: unknown;
  readonly status?: unknown;
  readonly stack?: unknown;
  readonly cause?: unknown;
}

const isPlain = (value: unknown): value is string | number => typeof value === 'string' || typeof value === 'number';
const plainOf = (parts: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(parts).filter(([, value]) => isPlain(value)));
const CAUSES_TOLD = 3;
const stackOf = (stack: unknown): { readonly stack?: string } =>
  typeof stack === 'string' ? { stack: stack.slice(0, 4000) } : {};

/** What of an error is logged. Request bodies that client libraries hang on their errors hold what members wrote, so they stay out. */
export const loggedError = (error: unknown, withStack = true, depth = 0): unknown => {
  if (typeof error !== 'object' || error === null) return String(error);
  const { name, message, code, status, stack, cause } = error as ErrorLike;
  // The store's own message is for members; the operator wants what the system said.
  if (typeof code === 'string' && code.startsWith('store-'))
    return { type: 'StoreError', code, because: loggedError(cause ?? message, withStack, depth + 1) };
  const hasCause = cause !== undefined && depth < CAUSES_TOLD;
  return {
    type: isPlain(name) ? name : 'Error',
    message: typeof message === 'string' ? message.slice(0, 1000) : '',
    ...plainOf({ code, status }),
    ...(withStack || depth === 0 ? stackOf(stack) : {}),
    ...(hasCause ? { cause: loggedError(cause, withStack, depth + 1) } : {}),
  };
};

const SECRET_KEYS = ['token', 'password', 'accessToken', 'access_token', 'authorization', 'databaseUrl'];

/** As a secret looks inside a JSON string. */
const inJson = (secret: string): string => JSON.stringify(secret).slice(1, -1);

/**
 * @param secrets values that must not appear in any line, wherever they come from
 * @param destination tests give their own; standard error otherwise
 */
export const createLog = (level: LogLevel, secrets: readonly string[], destination?: DestinationStream): Logger => {
  const hidden = secrets.filter((secret) => secret.length >= 6).map(inJson);
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
      serializers: { err: (error) => loggedError(error, ['debug', 'trace'].includes(level)) },
      redact: { paths: SECRET_KEYS.flatMap((key) => [key, `*.${key}`, `*.*.${key}`]), censor: '[secret]' },
      hooks: {
        streamWrite: (line) =>
          hidden
            .reduce((text, secret) => text.replaceAll(secret, '[secret]'), line)
            .replace(TOKEN_IN_PATH, '/$1/$2/[secret]'),
      },
    },
    destination ?? pino.destination({ fd: 2, sync: true }),
  );
};
