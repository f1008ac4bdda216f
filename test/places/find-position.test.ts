/** Positions in the words of a sentence. Each is the same position in another notation: 52°42'36" is 52.71° (ISO 6709 Annex H forms). */
import { describe, expect, it } from 'vitest';
import { withHalfCompleted, withPlainPosition } from '../../bot/places/index.js';

describe('a position in a sentence', () => {
  it.each([
    ['whats up at 53.2 n 1.1 w', 'whats up at 53.2,-1.1'],
    ['site dads farm 53.2 N, 1.1 W and more', 'site dads farm 53.2,-1.1 and more'],
    ['m42 at 52°42\'36"N 0°7\'12"E tonight', 'm42 at 52.71,0.12 tonight'],
    ['lat: 52.71 lon: 0.12', '52.71,0.12'],
    ['from longitude 0.12 e and latitude 52.71 n', 'from 52.71,0.12'],
    ['at W 1.1 N 53.2', 'at 53.2,-1.1'],
    ['vega 33.9 s 151.2 e', 'vega -33.9,151.2'],
    ['m 42 52.7 n 1.1 w', 'm 42 52.7,-1.1'],
    ['52 42 36 n 0 7 12 e', '52.71,0.12'],
    ['24.5 south by 70.4 west', '-24.5,-70.4'],
  ])('%s', (text, plain) => expect(withPlainPosition(text)).toBe(plain));

  it.each([
    'it landed 2 n 3 e of vega',
    'drifts 4 n 2 e',
    'vega at 95 n 10 e',
    'm 31 n 2 stars',
    '2 nights 3 evenings',
    'ngc 253',
  ])('%s holds none', (text) => expect(withPlainPosition(text)).toBe(text));
});

describe('half a position', () => {
  const usual = { latitudeDeg: 52.71, longitudeDeg: 0.12 };
  it.each([
    ['lst at 1.5 W', 'lst at 52.71,-1.5'],
    ['lunar eclipse from 52.71 N in 2028', 'lunar eclipse from 52.71,0.12 in 2028'],
    ['lunar eclipse from 40 N in 2028', 'lunar eclipse from 40 N in 2028'],
    ['whats up at 1.5 W', 'whats up at 1.5 W'],
  ])('%s', (text, whole) => expect(withHalfCompleted(text, usual)).toBe(whole));
});
