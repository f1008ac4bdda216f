/** Who speaks on the console: a name says so, a sentence that begins with "as" does not. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { speakerNamed } from '../../bot/platforms/console/who-speaks.js';

const NOBODY = new Set<string>();

const SENTENCES = [
  'As I said: attached, then at once disconnected',
  'as i said',
  'As before, nothing',
  'as before',
  'As usual it times out',
  'as you told me',
  'As far as I can see the light is on',
  'as expected',
  'As soon as I slew it drops',
  'as above',
  'As Windows shows, COM5',
  'as it says: could not open port',
  'as my friend said',
  'As told: the light is on',
  'as if it was dead',
  'as always',
  'as Device Manager says',
  'as the picture shows',
  'As said',
  'as good as new',
];
const NAMES = [
  ['as Tamsin', 'Tamsin'],
  ['/as tamsin', 'tamsin'],
  ['as @tamsin', '@tamsin'],
  ['as Tamsin Berg', 'Tamsin Berg'],
  ['/as tamsin berg', 'tamsin berg'],
  ["as O'Dowd", "O'Dowd"],
  ['as me', 'me'],
  ['  AS console:ravi ', 'console:ravi'],
] as const;

describe('who speaks', () => {
  it.each(SENTENCES)('“%s” changes nobody', (line) => expect(speakerNamed(line, NOBODY)).toBeNull());
  it.each(NAMES)('“%s” names %s', (line, name) => expect(speakerNamed(line, NOBODY)).toBe(name));
  it('a name spoken under before counts in small letters too', () => {
    expect(speakerNamed('as tamsin berg', NOBODY)).toBeNull();
    expect(speakerNamed('as tamsin berg', new Set(['tamsin berg']))).toBe('tamsin berg');
  });
});
