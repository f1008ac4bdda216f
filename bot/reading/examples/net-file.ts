/** How the net's numbers are laid out in their file, which scripts/reading/net/fit.py writes. */
import type { NetParts } from './net.js';
import { headOf } from './weights.js';

interface Head {
  readonly answers: readonly string[];
  readonly words: readonly string[];
  readonly size: number;
  readonly filters: number;
  readonly slope: number;
}

/**
 * Length of the head, the head as JSON (padded to four bytes); the steps of vectors, taps and speaking, where the latter two start from, and
 * the leans, as 32-bit numbers; then vectors, taps and speaking in those steps, a byte a number.
 * @throws where the bytes are not such a file
 */
export const decodeNet = (bytes: Uint8Array): NetParts => {
  const { head, buffer, from } = headOf(bytes);
  const { answers, words, size, filters, slope } = head as Head;
  let at = from;
  const wide = (length: number): Float32Array => {
    const part = new Float32Array(buffer, at, length);
    at += part.byteLength;
    return part;
  };
  const narrow = (length: number): Int8Array => {
    const part = new Int8Array(buffer, at, length);
    at += part.byteLength;
    return part;
  };
  const vectorSteps = wide(words.length);
  const tapSteps = wide(filters);
  const speakSteps = wide(answers.length);
  const tapStarts = wide(filters);
  const speakStarts = wide(answers.length);
  const leans = wide(answers.length);
  const vectors = narrow(words.length * size);
  const inFull = (part: Int8Array, steps: Float32Array): Float32Array => {
    const length = part.length / steps.length;
    return Float32Array.from(part, (value, i) => value * (steps[Math.floor(i / length)] as number));
  };
  const taps = inFull(narrow(filters * 3 * size), tapSteps);
  const speaks = inFull(narrow(answers.length * (filters + size)), speakSteps);
  return { answers, words, size, filters, vectors, vectorSteps, taps, tapStarts, speaks, speakStarts, slope, leans };
};
