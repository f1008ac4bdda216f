/** What newcomers ask that no reckoning answers; the readings are common practice, no source. */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { readTopics, topicAnswer } from '../../bot/commands/asking/topics.js';
import { parseLine } from '../../bot/commands/core/grammar.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { isProblem } from '../../bot/ground/problem.js';

const topics = readTopics(path.resolve('knowledge', 'topics.yaml'));
const idOf = (words: string): string | undefined => {
  const answer = topicAnswer(words);
  return answer === null || isProblem(answer) ? undefined : topics.find(({ says }) => says === answer.summary)?.id;
};

describe('a topic', () => {
  it.each([
    ['which telescope should i buy', 'which-telescope'],
    ['what is the best first scope for a beginner', 'which-telescope'],
    ['are you a real person', 'real-person'],
    ['is this a robot', 'real-person'],
    ['i see nothing in the eyepiece only black', 'only-black'],
    ['the eyepiece is all dark', 'only-black'],
    ['how do i see the flag on the moon', 'moon-landing'],
    ['can you see the american flag on the moon with a 10 inch', 'moon-landing'],
    ['the moon is too bright what do i do', 'moon-too-bright'],
    ['when can i see the black hole', 'black-hole'],
    ['what is my horoscope', 'horoscope'],
    ['why does everything look upside down', 'upside-down'],
    ["why can't i see colour in the orion nebula", 'colours'],
    ['is the north star the brightest star', 'brightest-star'],
    ['what does magnitude mean', 'magnitude'],
    ['safe to look at the moon', 'moon-safe'],
    ['will the moon damage my eyes', 'moon-safe'],
    ['where is north', 'where-north'],
    ['which way is south', 'where-north'],
    ['eyepiece fogs up', 'dewed-up'],
    ['dew on the mirror what do i do', 'dewed-up'],
    ['my finder keeps misting over', 'dewed-up'],
    ['batteries', 'batteries'],
    ['how long do batteries last in the cold', 'batteries'],
    ['my telescope says align, what first', 'says-align'],
    ['the screen says alignment what do i do now', 'says-align'],
    ["gotos miss 8' west in the east and 8' east in the west", 'two-sides'],
    ['is it cone error if the miss reverses after the flip', 'two-sides'],
    ['after the meridian flip every goto is off', 'two-sides'],
    ['my red dot finder and the eyepiece do not agree, it is off', 'finder-off'],
    ['how do i align the finder with the telescope', 'finder-off'],
    ['slews end up left in the east and right in the west', 'two-sides'],
    ['saturn keeps sliding out of the eyepiece', 'drifts-away'],
    ['everything in the view drifts to the right', 'drifts-away'],
  ])('%s', (words, id) => expect(idOf(words)).toBe(id));

  it.each([
    'is the moon bright tonight',
    'how far off is the pole star',
    'which star should i align on',
    'the controller screen is black',
    'black eye galaxy tonight',
    'what can i see with my telescope tonight',
    'find polaris in the polar scope',
    'the mount has no power',
    'what magnitude is saturn',
    'brightest star tonight',
    'first quarter moon',
    'is it safe to point at the moon by day',
    'where is north america nebula',
    'which star should i align on first',
    'the battery is dead',
    'when does jupiter go from east to west tonight',
    'the red dot of my finder does not light up',
    'star drifts north 4 arcsec a minute on the meridian',
    'capella landed 20 arcmin west',
    'is saturn low in the east or high in the west at nine',
    'remind me at 9 to check the dew on the lens',
  ])('is not read into: %s', (words) => expect(idOf(words)).toBeUndefined());

  it('offers lines that can be asked, and each topic has its own', () => {
    expect(new Set(topics.map(({ id }) => id)).size).toBe(topics.length);
    for (const { next } of topics)
      for (const [, run] of next) expect(isProblem(parseLine(run, allCommands)), run).toBe(false);
  });
});
