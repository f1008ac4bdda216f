/** What came of a remedy, in ways of saying it with filler before and after: so that it is the way that is heard. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { shippedModel } from '../shipped.js';
import { remedyOutcome } from '../reading/outcome-named.js';

const { reading } = shippedModel();

const DONE = [
  '',
  'did that, ',
  'switched it on n ',
  'i have put the other one, ',
  'ok so i chose com7 and ',
  'ooh it was off, turned it on, ',
  'took a while but ',
];
const GLAD = ['', ' yay', '. Thank you.', ' :)', ' at last', '!!', ' cheers mate', ' now'];
const TRIED = ['', 'did that, ', 'ok so i chose com7 and ', 'hm '];
const SAD = ['', ' sorry', '.', ' :('];

const WORKS = [
  'now it found it',
  'now the mount connects',
  'there it goes',
  'it lives',
  'now Vega stands in the middle of the eyepiece',
  'the star is right in the middle now',
  'now it talks to me',
  'the program sees the mount now',
  'we have a connection',
  'and off it goes',
  'the app found the mount',
  'that was the culprit',
  'the stars land in the middle now',
  'it came right up',
  'its in',
  'hurray connected',
];
const SAME = [
  'still dims',
  'it makes no difference',
  'did that already, both say com5',
  'i have it so already',
  'same as before',
  'still nothing',
  'its still the same old story',
  'it was like that already',
  'still will not connect',
  'it not change nothing',
  'the triangle is still there',
  'it still says could not open port',
  'that made no odds',
  'no better',
  'exactly as before',
  'didnt do a thing',
  'the mark is there even with nothing plugged into it',
  'it does the same with the lead out',
];
const COULD_NOT = [
  'i cant find that menu',
  'i dont have another cable',
  'i have no meter',
  'it wont let me',
  'there is no such tab here',
  'need a password i dont have',
  'i am not allowed to',
  'my phone has no such setting',
];
const CHANGED = [
  'now it says something else',
  'now it connects but drops',
  'it is worse now',
  'now the light is out too',
  'now i get another error',
  'it connects but lands in the wrong place',
  'made it worse',
];

const heard = (ways: readonly string[], before: readonly string[], after: readonly string[]) =>
  ways.flatMap((way) => before.flatMap((lead) => after.map((tail) => `${lead}${way}${tail}`)));
const others = (texts: readonly string[], wanted: string): readonly string[] =>
  texts.flatMap((text) => {
    const said = remedyOutcome(reading, text);
    return said === wanted ? [] : [`${text} → ${said ?? 'nothing'}`];
  });

describe('each way of saying what came of a remedy, whatever stands round it', () => {
  it.each([
    ['works', heard(WORKS, DONE, GLAD)],
    ['same', heard(SAME, TRIED, SAD)],
    ['could-not', heard(COULD_NOT, TRIED, SAD)],
    ['changed', heard(CHANGED, TRIED, SAD)],
  ] as const)('%s', (wanted, texts) => expect(others(texts, wanted)).toEqual([]));

  it('that it was done is no cure', () => {
    const done = ['did that', 'i did it', 'did it just now', 'we did that', 'done', 'have done that'];
    expect(done.filter((text) => remedyOutcome(reading, text) === 'works')).toEqual([]);
  });
});

const FRESH: readonly (readonly [string, string])[] = [
  ['oh! the laptop has found the scope now', 'works'],
  ['i ticked the box and now it is connected', 'works'],
  ['jupiter sits right in the eyepiece now, thanks a lot', 'works'],
  ['it was the switch, and now the telescope answers', 'works'],
  ['eureka, we got contact', 'works'],
  ['tightened it, goto is spot on', 'works'],
  ['its a thick one already and it dims all the same', 'same'],
  ['the mark stays even when i pull everything out', 'same'],
  ['nah mate', 'same'],
  ['i checked that yesterday already', 'same'],
  ['no change there', 'same'],
  ['we got no such button', 'could-not'],
  ['i do not own one of those', 'could-not'],
  ['even worse than before', 'changed'],
];

it.each(FRESH)('“%s” is %s', (text, wanted) => expect(remedyOutcome(reading, text)).toBe(wanted));

it.each([
  'there it goes again',
  'the laptop sees it',
  'did that, the lamp is in the middle',
  'we have a connection problem',
  'now it has found another device',
  'it is in the bag',
  'the phone finds it',
  'now the star is in the middle and then drifts off',
  'did that, nothing',
  'the app found the mount but will not connect',
])('“%s” is no cure', (text) => expect(remedyOutcome(reading, text)).not.toBe('works'));
