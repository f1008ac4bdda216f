/** How much each mark of a clause speaks for each answer: a file of fitted numbers, and how it is laid out. */

/** For mark m, `answers[k]` and `weights[k]` with k from starts[m] up to starts[m + 1] tell how much it speaks for which answer. */
export interface Weights {
  /** "check.answer"; where all are weighed together, the first is nothing at all. */
  readonly answers: readonly string[];
  /** By what each mark is called (marks.ts). */
  readonly marks: readonly string[];
  readonly starts: Uint32Array;
  readonly of: Uint16Array;
  /** In steps of STEP. */
  readonly steps: Int8Array;
}

/** What a run of clauses tells when it tells nothing. */
export const NOTHING = '';
export const STEP = 0.05;
/** Where each check is weighed alone: the log of an answer's odds against nothing, before any mark speaks for it. */
export const LEANING = -10;
export const MOST_STEPS = 127;

interface Head {
  readonly answers: readonly string[];
  readonly marks: readonly string[];
}

const LENGTH_BYTES = 4;
const inFours = (length: number): number => Math.ceil(length / 4) * 4;

/** Length of the head, the head as JSON (padded to four bytes), then starts, answers and steps. */
export const encodeWeights = ({ answers, marks, starts, of, steps }: Weights): Uint8Array => {
  const head = new TextEncoder().encode(JSON.stringify({ answers, marks } satisfies Head));
  const headLength = inFours(head.length);
  const bytes = new Uint8Array(LENGTH_BYTES + headLength + starts.byteLength + of.byteLength + steps.byteLength);
  bytes.fill(0x20, LENGTH_BYTES, LENGTH_BYTES + headLength);
  new DataView(bytes.buffer).setUint32(0, headLength, true);
  bytes.set(head, LENGTH_BYTES);
  let at = LENGTH_BYTES + headLength;
  for (const part of [starts, of, steps]) {
    bytes.set(new Uint8Array(part.buffer, part.byteOffset, part.byteLength), at);
    at += part.byteLength;
  }
  return bytes;
};

/**
 * The head of a file of fitted numbers, and where they begin: a copy of its own, so that the numbers are aligned.
 * @throws where the bytes are not such a file
 */
export const headOf = (
  bytes: Uint8Array,
): { readonly head: unknown; readonly buffer: ArrayBuffer; readonly from: number } => {
  const { buffer } = Uint8Array.from(bytes);
  const headLength = new DataView(buffer).getUint32(0, true);
  const head: unknown = JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, LENGTH_BYTES, headLength)));
  return { head, buffer, from: LENGTH_BYTES + headLength };
};

/** @throws where the bytes are not such a file */
export const decodeWeights = (bytes: Uint8Array): Weights => {
  const { head: told, buffer, from: startsAt } = headOf(bytes);
  const head = told as Head;
  const starts = new Uint32Array(buffer, startsAt, head.marks.length + 1);
  const count = starts.at(-1) ?? 0;
  const ofAt = startsAt + starts.byteLength;
  return {
    answers: head.answers,
    marks: head.marks,
    starts,
    of: new Uint16Array(buffer, ofAt, count),
    steps: new Int8Array(buffer, ofAt + 2 * count, count),
  };
};
