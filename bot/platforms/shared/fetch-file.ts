/** Fetches a member's file from where a chat platform keeps them: bounded in bytes and seconds, never sent elsewhere. */
import { MOST_FILE_BYTES } from '../../ground/member-file.js';
import { problem, type Problem } from '../../ground/problem.js';

const FETCH_WITHIN_MS = 15_000;

export interface FileAddress {
  readonly url: string;
  /** The platform's own, such as "https://media.example.org" or "http://dendrite:8008"; nothing else is asked, whatever a member wrote. */
  readonly origins: readonly string[];
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
export const fetchFile = async ({ url, origins, headers }: FileAddress): Promise<Uint8Array | Problem> => {
  if (!URL.canParse(url) || !origins.includes(new URL(url).origin)) return NOT_FETCHED;
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
