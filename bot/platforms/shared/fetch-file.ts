/** Fetches a member's file from a chat platform's own media hosts: bounded in bytes and seconds, never sent elsewhere. */
import { MOST_FILE_BYTES } from '../../ground/member-file.js';
import { problem, type Problem } from '../../ground/problem.js';

const FETCH_WITHIN_MS = 15_000;

export interface FileAddress {
  readonly url: string;
  /** Hosts (with their port, where it is not the usual one) that are the platform's own. */
  readonly hosts: readonly string[];
  readonly headers?: Readonly<Record<string, string>>;
}

const NOT_FETCHED = problem(
  'file-not-fetched',
  'I could not fetch that file. Send it again, or paste the lines themselves.',
);
const TOO_LARGE = problem(
  'file-too-large',
  'That file is larger than 10 MB. Send only the part that matters, or paste the lines themselves.',
);

const isAllowed = (url: URL, hosts: readonly string[]): boolean =>
  hosts.includes(url.host) &&
  (url.protocol === 'https:' || url.hostname === '127.0.0.1' || url.hostname === 'localhost');

const bounded = async (body: ReadableStream<Uint8Array>): Promise<Uint8Array | Problem> => {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of body) {
    length += part.length;
    // Leaving the loop cancels the rest.
    if (length > MOST_FILE_BYTES) return TOO_LARGE;
    parts.push(part);
  }
  return Buffer.concat(parts);
};

/** Never rejects: file-not-fetched or file-too-large where it cannot be had. */
export const fetchFile = async ({ url, hosts, headers }: FileAddress): Promise<Uint8Array | Problem> => {
  if (!URL.canParse(url) || !isAllowed(new URL(url), hosts)) return NOT_FETCHED;
  try {
    const response = await fetch(url, {
      redirect: 'error',
      signal: AbortSignal.timeout(FETCH_WITHIN_MS),
      ...(headers === undefined ? {} : { headers }),
    });
    if (!response.ok || response.body === null) {
      await response.body?.cancel();
      return NOT_FETCHED;
    }
    if (Number(response.headers.get('content-length') ?? 0) > MOST_FILE_BYTES) {
      await response.body.cancel();
      return TOO_LARGE;
    }
    return await bounded(response.body);
  } catch {
    return NOT_FETCHED;
  }
};
