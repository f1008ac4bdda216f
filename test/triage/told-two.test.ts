/** Two answers in one line, and one answer that leaves open which of two: neither of them is lost. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { assess, startWalk, type WalkState } from '../../bot/triage/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const model = deps.triage();
const factOf = (text: string, check: string): readonly string[] => {
  const fact = readText(model.reading, text).facts.find(({ what }) => what === check);
  return fact === undefined ? [] : [fact.answer, ...(fact.or ?? [])].sort();
};

describe('two moments told in one line', () => {
  it.each([
    ['two kind. it drop when slew, other times after long idle', ['motors', 'quiet']],
    ['it cuts out when mount slew. also when i touch the cable', ['motors', 'touched']],
    ['it quits on every slew and then again later when the computer sleeps', ['after-sleep', 'motors']],
    ['it fails when its cold and when it slews', ['motors', 'weather']],
  ])('%s', (text, moments) => {
    expect(factOf(text, 'when-drops')).toEqual(moments);
  });

  it.each([
    ['it drops when i slew, not when it is idle', ['motors']],
    ['it used to drop when idle, now it drops when slewing', ['motors']],
    ['when it slews it is fine, it drops after a long idle', ['quiet']],
  ])('%s: one of them is named to say that it is not so', (text, moments) => {
    expect(factOf(text, 'when-drops')).toEqual(moments);
  });
});

describe('a port that could not be opened', () => {
  it.each([
    'it says could not open COM3',
    'error opening port',
    'opening the port failed',
    'the port wont open it says',
  ])('%s: not found or denied alike', (text) => {
    expect(factOf(text, 'message')).toEqual(['denied', 'not-found']);
    expect(factOf(text, 'port-appears')).toEqual([]);
  });

  it('is the one or the other where the rest of the message says which', () => {
    expect(factOf('could not open COM3: access is denied', 'message')).toEqual(['denied']);
    expect(factOf('could not open port COM3: The system cannot find the file specified', 'message')).toEqual([
      'not-found',
    ]);
  });

  it.each([
    'it could open the port but no answer came',
    'i cannot open device manager',
    'nothing else has the port open',
  ])('%s: no such thing', (text) => {
    expect(factOf(text, 'message')).not.toContain('denied');
  });

  it('is not asked for again: the next look tells the two apart', async () => {
    const who = member('Ottoline');
    const first = await answer(
      deps,
      'triage usb adapter at the hand controller, windows. it could not open com3',
      NOW,
      who,
    );
    expect(stepOf(first).id).not.toBe('message');
    expect(first.notes.join(' ')).toContain('the port could not be opened');
  });
});

const text = (answerId: string, or?: readonly string[]): WalkState['events'][number] => ({
  kind: 'text',
  words: 'told',
  facts: [
    {
      what: 'when-drops',
      answer: answerId,
      ...(or === undefined ? {} : { or: [...or] }),
      sureness: 0.85,
      quote: 'told',
      by: 'words',
    },
  ],
  guesses: [],
  suggests: [],
  by: 'member',
});
const walkWith = (...events: WalkState['events']): WalkState => {
  const walk = startWalk({ member: 'Ansgar', helper: null }, { path: 'built-in-usb', system: 'windows' });
  return { ...walk, events: [...walk.events, ...events] };
};
const probabilityOf = (state: WalkState, id: string): number => {
  const { belief, situation } = assess(model, state);
  return belief.probabilities[situation.faultIndex.get(id) ?? -1] ?? 0;
};

describe('what two answers leave to be believed', () => {
  // Bayes' rule: an observation of "one of two" has the sum of their probabilities.
  it('keeps the causes of both', () => {
    const both = walkWith(text('motors', ['quiet']));
    for (const [cause, other] of [
      ['brown-out-supply', 'quiet'],
      ['usb-port-asleep', 'motors'],
    ] as const)
      expect(probabilityOf(both, cause)).toBeGreaterThan(3 * probabilityOf(walkWith(text(other)), cause));
  });

  it('goes on with the one that is left when the cause of the other is mended', () => {
    const tried = { kind: 'try', fault: 'brown-out-supply', outcome: 'changed', by: 'member' } as const;
    const left = walkWith(text('motors', ['quiet']), tried);
    const { evidence, situation } = assess(model, left);
    const check = situation.checks[situation.checkIndex.get('when-drops') ?? -1];
    const own = evidence.observations.filter((one) => situation.checks[one.check] === check);
    expect(own.map((one) => check?.answers[one.answer])).toEqual(['quiet']);
    expect(own[0]?.or).toBeUndefined();
  });
});

describe('two answers to the question in hand', () => {
  it.each([
    'two kind. one when slew, mount lamp blink. other when long time nothing',
    'slewing and also after idle',
    'when i slew: off. when i wait long: off too.',
  ])('%s: both are taken', async (line) => {
    const who = member(`Isbert${line.length}`);
    const first = await answer(
      deps,
      'triage usb cable goes in the mount itself, win 11 mini pc, it connects then drops',
      NOW,
      who,
    );
    expect(stepOf(first).id).toBe('when-drops');
    const next = await answer(deps, `triage walk:${idOf(first)} text:"${line}"`, NOW, who);
    expect(next.notes.join(' ')).toContain('the motors run or slew; After some quiet minutes');
    expect(stepOf(next).id).not.toBe('when-drops');
  });

  it.each(['only on slews. idle all night is no problem', 'when slewing. never idle'])('%s: one', async (line) => {
    const who = member(`Oswin${line.length}`);
    const first = await answer(
      deps,
      'triage usb cable goes in the mount itself, win 11 mini pc, it connects then drops',
      NOW,
      who,
    );
    const next = await answer(deps, `triage walk:${idOf(first)} text:"${line}"`, NOW, who);
    expect(next.notes.join(' ')).not.toContain('After some quiet minutes');
  });
});
