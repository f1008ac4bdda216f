/**
 * Pieces of strangers' messages, each as the reply to the question it answers: how many are heard, and how many for another answer. The
 * messages are of people who knew nothing of the reader, and nothing was fitted on them (test/reading/corpus/told.jsonl).
 */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { answerMeant, readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

interface Told {
  readonly facts: readonly { readonly label: string; readonly quote: string }[];
}

/** Longer ones are accounts. */
const LONGEST = 110;

const replies = readFileSync('test/reading/corpus/told.jsonl', 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .flatMap((line) => (JSON.parse(line) as Told).facts)
  .flatMap(({ label, quote }) => {
    const [id = '', wanted = ''] = label.split('.');
    const check = model.check(id);
    return check !== undefined && check.safety !== true && quote.length < LONGEST ? [{ check, wanted, quote }] : [];
  })
  // What tells it outright needs no question.
  .filter(({ check, quote }) => !readText(model.reading, quote).facts.some(({ what }) => what === check.id));

/** Measured on 2026-11-28: of 873 replies 480 taken rightly, 12 wrongly, 202 asked back rightly, 43 wrongly; before what they are like was asked 284, 63, 119, 56. */
it('hears most replies that strangers would give, and hardly one for another answer', () => {
  const heard = replies.map(({ check: { id, answers, good }, wanted, quote }) => {
    const meant = answerMeant(model.reading, quote, { id, answers, good });
    return { isTaken: meant?.isSure === true, isAskedBack: meant?.isSure === false, isRight: meant?.id === wanted };
  });
  const count = (of: (one: (typeof heard)[number]) => boolean): number => heard.filter(of).length;
  const taken = count(({ isTaken, isRight }) => isTaken && isRight);
  const wrong = count(({ isTaken, isRight }) => isTaken && !isRight);
  const askedBack = count(({ isAskedBack, isRight }) => isAskedBack && isRight);
  const amiss = count(({ isAskedBack, isRight }) => isAskedBack && !isRight);
  expect(replies.length).toBeGreaterThan(800);
  expect(taken / replies.length).toBeGreaterThan(0.53);
  expect(wrong / (taken + wrong)).toBeLessThan(0.035);
  expect((taken + askedBack) / replies.length).toBeGreaterThan(0.75);
  expect(amiss / (askedBack + amiss)).toBeLessThan(0.22);
});

/** [check, words, answer, or null for words about the matter that are none]; written by one who knew nothing of the reader; never fitted on. */
const NEAR = JSON.parse(readFileSync('test/reading/corpus/answers/near.json', 'utf8')) as readonly (readonly [
  string,
  string,
  string | null,
])[];

/**
 * Made to mislead: each uses the question's own words. Measured on 2026-11-28: of 246 answers 113 taken rightly and 7 wrongly, 59 asked back
 * rightly; of 984 that are none 103 taken (before what they are like was asked: 85, 8, 26; 200).
 */
it('is misled by one in nine of the lines that use a question’s words and answer nothing', () => {
  const heard = NEAR.map(([id, text, wanted]) => {
    const check = model.check(id);
    const fact = readText(model.reading, text).facts.findLast(({ what }) => what === id);
    const question = { id, answers: check?.answers ?? [], good: check?.good, guards: check?.safety };
    const meant = fact === undefined ? answerMeant(model.reading, text, question) : { id: fact.answer, isSure: true };
    return { wanted, meant: meant?.id, isTaken: meant?.isSure === true };
  });
  const none = heard.filter(({ wanted }) => wanted === null);
  const answers = heard.filter(({ wanted }) => wanted !== null);
  const right = answers.filter(({ wanted, meant }) => meant === wanted);
  expect(none.length).toBeGreaterThan(900);
  expect(none.filter(({ isTaken }) => isTaken).length / none.length).toBeLessThan(0.115);
  expect(right.filter(({ isTaken }) => isTaken).length / answers.length).toBeGreaterThan(0.43);
  expect(right.length / answers.length).toBeGreaterThan(0.66);
  expect(answers.filter(({ wanted, meant, isTaken }) => isTaken && meant !== wanted).length).toBeLessThanOrEqual(9);
});

/** Ours, as members tell what they do just now: about the matter, and no answer (invented; no source). */
const NO_ANSWERS = [
  'i open the program and choose com4 then press connect',
  'i am using the same program as last week',
  'it asks me for a port first',
  'i start my sky program, pick the port',
  'the program is the newest version',
  'i have two programs, one for the camera one for the mount',
];

it('takes an account of what one does for no answer to what the program says', () => {
  const { answers = [], good } = model.check('message') ?? {};
  const taken = NO_ANSWERS.filter((text) => answerMeant(model.reading, text, { id: 'message', answers, good })?.isSure);
  expect(taken).toEqual([]);
});
