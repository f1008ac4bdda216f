/**
 * Texts of the fault model may ask for a figure instead of carrying one: `{character 9600}`, `{exchange 9600 10 18}`,
 * `{wait 2000 2}`, `{cable 9600}` are worked out when the text is shown (see serial.ts).
 */
import { tableOf } from '../../ground/table-of.js';
import { characterMs, exchangeMs, longestCableM, worstWaitMs } from './serial.js';

const plainMs = (ms: number): string => {
  if (ms >= 1000) return `${Number((ms / 1000).toPrecision(2))} s`;
  return ms >= 10 ? `${Math.round(ms)} ms` : `${ms.toPrecision(2)} ms`;
};

interface Figure {
  readonly arguments: number;
  readonly text: (...values: number[]) => string;
}

const FIGURES = tableOf<Figure>({
  /** bits per second */
  character: { arguments: 1, text: (speed = 0) => plainMs(characterMs(speed)) },
  /** bits per second, characters sent, characters received */
  exchange: { arguments: 3, text: (speed = 0, sent = 0, received = 0) => plainMs(exchangeMs(speed, sent, received)) },
  /** time-out in ms, retries */
  wait: { arguments: 2, text: (timeOut = 0, retries = 0) => plainMs(worstWaitMs(timeOut, retries)) },
  /** bits per second */
  cable: { arguments: 1, text: (speed = 0) => `${Number(longestCableM(speed).toPrecision(2))} m` },
});

const PLACE = /\{([a-z]+)((?: \d+)*)\}/gu;

/** The text with its figures filled in. What is no figure stays as it stands. */
export const fillSerial = (text: string): string =>
  text.replace(PLACE, (whole, name: string, rest: string) => {
    const values = rest.trim() === '' ? [] : rest.trim().split(' ').map(Number);
    const figure = FIGURES.get(name);
    return figure === undefined || figure.arguments !== values.length || values.some((value) => value <= 0)
      ? whole
      : figure.text(...values);
  });

/** What looks like a figure and yet would be left standing. */
export const unfilled = (text: string): readonly string[] =>
  [...fillSerial(text).matchAll(/\{[a-z]+(?: \d+)+\}/gu)].map(([found]) => found);
