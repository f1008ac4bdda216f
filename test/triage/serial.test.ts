/** Serial-line arithmetic against the definition of the asynchronous character, published tables and the settings a direct cable takes. */
import { describe, expect, it } from 'vitest';
import { fillSerial, unfilled } from '../../bot/triage/model/fill-serial.js';
import {
  bitsPerCharacter,
  characterMs,
  exchangeMs,
  longestCableM,
  USUAL_FRAME,
  worstWaitMs,
} from '../../bot/triage/model/serial.js';

describe('a character on the line', () => {
  it('has a start bit, its data bits, a parity bit if any, and its stop bits', () => {
    // Start-stop transmission, ISO 1177:1985 (definition; counts worked by hand).
    expect(bitsPerCharacter(USUAL_FRAME)).toBe(10);
    expect(bitsPerCharacter({ dataBits: 8, parity: 'even', stopBits: 1 })).toBe(11);
    expect(bitsPerCharacter({ dataBits: 7, parity: 'odd', stopBits: 1 })).toBe(10);
    expect(bitsPerCharacter({ dataBits: 7, parity: 'none', stopBits: 2 })).toBe(10);
    expect(bitsPerCharacter({ dataBits: 5, parity: 'none', stopBits: 1.5 })).toBe(7.5);
  });

  it('takes bits over speed', () => {
    // 10 bits at 9,600 bit/s are 1/960 s; 11 bits at 115,200 bit/s are 95.486 µs. Worked by hand.
    expect(characterMs(9600)).toBeCloseTo(1000 / 960, 12);
    expect(characterMs(115_200, { dataBits: 8, parity: 'even', stopBits: 1 })).toBeCloseTo(0.095486, 6);
    expect(exchangeMs(9600, 10, 14, 16)).toBeCloseTo(25 + 16, 12);
  });
});

describe('the worst wait', () => {
  it('is the time-out once for the first try and once for each retry', () => {
    // A direct cable is set to 9,600 baud, 2,000 ms and 2 retries: 6 s before "no reply" (settings: a fact of the trade).
    expect(worstWaitMs(2000, 2)).toBe(6000);
    expect(worstWaitMs(500, 0)).toBe(500);
  });
});

describe('the longest cable', () => {
  it('agrees with a published table for average and low-capacitance cable', () => {
    // Feet by speed, https://savagetaylor.com/TIL/TA33575.html; the source doubles rounded figures, hence 3 %.
    const table: readonly (readonly [number, number, number])[] = [
      [19_200, 50, 83],
      [9600, 100, 163],
      [4800, 200, 326],
      [2400, 400, 652],
      [1200, 800, 1304],
      [600, 1600, 2608],
      [300, 3200, 5216],
    ];
    let worst = 0;
    for (const [speed, averageFeet, specialFeet] of table) {
      for (const [feet, picofaradsPerFoot] of [
        [averageFeet, 50],
        [specialFeet, 30],
      ] as const) {
        const ours = longestCableM(speed, picofaradsPerFoot / 0.3048) / 0.3048;
        worst = Math.max(worst, Math.abs(ours / feet - 1));
      }
    }
    console.log(`longest cable, worst difference from the table: ${(100 * worst).toFixed(1)} %`);
    expect(worst).toBeLessThan(0.03);
  });

  it('goes as one over the speed, as a maker of instruments on long cables publishes', () => {
    // Metres by speed, https://www.seabird.com/faq/what-maximum-cable-length-real-time-rs-232-data (another cable, so ratios).
    const table: readonly (readonly [number, number])[] = [
      [600, 1600],
      [1200, 800],
      [2400, 400],
      [4800, 200],
      [9600, 100],
      [19_200, 50],
      [38_400, 25],
      [57_600, 16],
      [115_200, 8],
    ];
    for (const [speed, metres] of table)
      expect(longestCableM(speed) / longestCableM(19_200)).toBeCloseTo(metres / 50, 1);
  });

  it('is the usual 15 m at 19,200 bit/s', () => {
    // "15 m", TIA-232-F as it is usually read.
    expect(longestCableM(19_200)).toBeGreaterThan(15);
    expect(longestCableM(19_200)).toBeLessThan(15.5);
  });
});

describe('figures in the texts of the model', () => {
  it('are worked out where they stand', () => {
    expect(
      fillSerial(
        'It waits {wait 2000 2}; {exchange 9600 10 14} on the line, {character 9600} each; {cable 9600} of cable.',
      ),
    ).toBe('It waits 6 s; 25 ms on the line, 1.0 ms each; 30 m of cable.');
  });
  it('are reported where they cannot be', () => {
    expect(unfilled('{wait 2000} and {wait 2000 2} and {constructor 1}')).toEqual(['{wait 2000}', '{constructor 1}']);
  });
});
