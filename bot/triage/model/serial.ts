/**
 * Serial-line arithmetic that checks and remedies quote: how long a character, an exchange, a wait takes; how long a cable may be.
 * Sources: the asynchronous character (start bit, data bits, parity bit, stop bits) as ISO 1177:1985 and every UART data
 * sheet define it; the 2,500 pF limit on a driver's load from TIA/EIA-232-F.
 */

export type Parity = 'none' | 'even' | 'odd';

export interface Frame {
  /** 5 to 9. */
  readonly dataBits: number;
  readonly parity: Parity;
  readonly stopBits: 1 | 1.5 | 2;
}

/** Eight data bits, no parity, one stop bit. */
export const USUAL_FRAME: Frame = { dataBits: 8, parity: 'none', stopBits: 1 };

/** Bits on the line for one character, the start bit included. */
export const bitsPerCharacter = ({ dataBits, parity, stopBits }: Frame): number =>
  1 + dataBits + (parity === 'none' ? 0 : 1) + stopBits;

/** Milliseconds one character takes. `bitsPerSecond` must be above 0. */
export const characterMs = (bitsPerSecond: number, frame: Frame = USUAL_FRAME): number =>
  (1000 * bitsPerCharacter(frame)) / bitsPerSecond;

/**
 * Milliseconds on the line for a command and its reply, back to back; what the mount thinks in between and what an
 * adapter holds back (its latency timer, often 16 ms) come on top as `delayMs`.
 */
export const exchangeMs = (
  bitsPerSecond: number,
  sentCharacters: number,
  receivedCharacters: number,
  delayMs = 0,
  frame: Frame = USUAL_FRAME,
): number => (sentCharacters + receivedCharacters) * characterMs(bitsPerSecond, frame) + delayMs;

/** Milliseconds a program waits at worst before it gives up on one command: the first attempt and every retry time out. */
export const worstWaitMs = (timeOutMs: number, retries: number): number => timeOutMs * (1 + retries);

const LOAD_LIMIT_PF = 2500;
const TABLE_SPEED = 19_200;

/**
 * The usual reading of the standard: the cable's capacitance alone may reach 2,500 pF at 19,200 bit/s, and the length
 * goes as one over the speed. 164 pF/m (50 pF a foot) is an average cable, 98 pF/m (30 pF a foot) a low-capacitance one.
 * Source of the scaling: an archived support article, https://savagetaylor.com/TIL/TA33575.html. A rule of thumb:
 * no more than two figures of it mean anything.
 */
export const longestCableM = (bitsPerSecond: number, picofaradsPerMetre = 164): number =>
  ((LOAD_LIMIT_PF / picofaradsPerMetre) * TABLE_SPEED) / bitsPerSecond;
