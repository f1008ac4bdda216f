/** Faces beside words are left out; marks of a log are not. */
import { describe, expect, it } from 'vitest';
import { withoutFaces } from '../../bot/ground/without-faces.js';

describe('faces and thumbs', () => {
  it.each([
    ['connected 👍', 'connected'],
    ['👍🏽 works', 'works'],
    ['no luck :) at all 😭', 'no luck at all'],
    ['👍', 'yes'],
    ['👍🏽 ✅', 'yes'],
    ['😭', '😭'],
    ['', ''],
    ['COM4: 9600, 8N1', 'COM4: 9600, 8N1'],
    ['ok ✅ step 1\nbad ❌ step 2', 'ok ✅ step 1\nbad ❌ step 2'],
  ])('%s', (said, left) => {
    expect(withoutFaces(said)).toBe(left);
  });
});
