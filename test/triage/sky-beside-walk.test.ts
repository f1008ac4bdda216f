/** What is plainly of the sky, and words to end or pause a walk, said while one waits: some of strangers, the others ours (common speech, no source). */
import { describe, expect, it } from 'vitest';
import { talkInWalk } from '../../bot/commands/asking/talk-among-people.js';
import { isOfTheSkyAlone } from '../../bot/commands/triage/waiting-words.js';
import { leavesWalk } from '../../bot/reading/index.js';
import { deps } from './console-walk.js';

const NOW = Date.parse('2026-12-12T20:30:00Z');
const { reading } = deps.triage();

describe('while a walk waits', () => {
  it.each([
    'ra and dec of jupiter',
    'coordinates of vega',
    'io transit times',
    'alt of capella',
    'my son wants to see saturn',
    "we'd love to look at M 42",
  ])('%s is answered beside it', (text) => {
    expect(isOfTheSkyAlone(text, deps, NOW)).toBe(true);
  });

  it.each([
    'i want to see the port',
    'the moons of jupiter drift away',
    'i want to see m42 but the mount will not move',
  ])('%s is told of the mount', (text) => {
    expect(isOfTheSkyAlone(text, deps, NOW)).toBe(false);
  });

  it.each(['forget the walk please', "i'm done with this", 'lets stop', 'close the walk', 'enough of this'])(
    '%s ends it',
    (text) => {
      expect(leavesWalk(reading, text)).toBe('end');
    },
  );

  it.each(['lets pause this', 'pause the walk', 'park the walk for now'])('%s lets it wait', (text) => {
    expect(talkInWalk(text)?.kind).toBe('wait');
  });

  it.each(['i am done', 'done with the cable, still nothing', 'park the mount'])(
    '%s neither ends nor pauses it',
    (text) => {
      expect(leavesWalk(reading, text)).toBeNull();
      expect(talkInWalk(text)).toBeNull();
    },
  );
});
