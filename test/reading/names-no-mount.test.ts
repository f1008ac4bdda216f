/** A line of the club's talk is told from a trouble that was put in words not understood. */
import { describe, expect, it } from 'vitest';
import { namesNoMount } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

describe('names no mount', () => {
  it.each([
    'Who brings the urn on Thursday? We were thirty and one kettle',
    'clouds. again. I sell everything',
    'did anyone see that green fireball over the coast',
    'the code of the gate has changed, and please close it, sheep',
    'my filter wheel says position unknown after slot 5',
    'Thank you for the warm welcome, my boy cannot stop talking about the rings',
    'stacking 300 frames takes my old laptop four hours, is 32 GB worth it',
  ])('%s', (line) => {
    expect(namesNoMount(reading, line)).toBe(true);
  });

  it.each([
    'it beeps three times and the led is red',
    'sync is off by the same bit each time',
    'press left, six seconds, then it turns',
    'the driver windows took is of 2007',
    'who overwrites my longitude?',
    'my camera is fine, the mount does funny things',
  ])('but one is named: %s', (line) => {
    expect(namesNoMount(reading, line)).toBe(false);
  });
});
