/** What somebody who writes the club's own faults is told: of mistakes, and of where a fault is offered. */
import { describe, expect, it } from 'vitest';
import { loadTriage } from '../../bot/triage/index.js';
import type { FaultEntry } from '../../bot/triage/model/schema.js';
import { makeModel } from '../../bot/triage/model/model.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { commonWords } from '../../scripts/knowledge/common-words.js';
import { notHeard } from '../../scripts/knowledge/not-heard.js';
import { offeredLines } from '../../scripts/knowledge/offered.js';
import { playLines } from '../../scripts/knowledge/play.js';
import { shippedModel } from '../shipped.js';
import { BASE, complaints, folderWith, goodEvidence } from './model-folders.js';

/** Of the port this says nothing outright. */
const PERHAPS = 'my laptop shows nothing new when i plug the cable in';

describe('a check', () => {
  it('whose answers no member’s words are known for is named, with those answers', () => {
    const answers = `- id: light
  said: { "on": [it is lit] }
`;
    expect(notHeard(readEntries(folderWith(goodEvidence)).entries)).toEqual([{ id: 'light', answers: ['on', 'off'] }]);
    const half = readEntries(folderWith({ ...goodEvidence, 'reading/answers/all.yaml': answers }));
    expect(notHeard(half.entries)).toEqual([{ id: 'light', answers: ['off'] }]);
  });
});

describe('a file', () => {
  it.each([
    ['a tab', '  why: It wobbles.', '\twhy: It wobbles.', 13, 'a tab; use spaces'],
    ['a colon in a text', 'why: It wobbles.', 'why: Mode: EQ', 13, 'a colon in the text'],
    ['text behind quotes', 'why: It wobbles.', 'why: "It" wobbles.', 13, 'quotes at its start'],
    ['an apostrophe within', 'why: It wobbles.', "why: 'It's loose.'", 13, 'quotes at its start'],
    ['an open quote', 'why: It wobbles.', 'why: "It wobbles.', 13, 'quotes at its start'],
    ['a bracket first', 'why: It wobbles.', 'why: [It] wobbles.', 13, 'the text starts with ['],
    ['no space behind a colon', 'why: It wobbles.', 'why:It wobbles.', 13, 'a space is wanted after the colon'],
    ['a field twice', 'why: It wobbles.', 'why: It wobbles.\n  why: Again.', 14, 'why stands there twice'],
    ['a line too far in', '  title: The cable', '    title: The cable', 11, 'not as far in as the lines beside it'],
  ])('with %s has one complaint, of that line', (_what, before, after, line, said) => {
    const found = complaints({
      ...goodEvidence,
      'faults/power.yaml': BASE['faults/power.yaml'].replace(before, after),
    });
    expect(found.filter((complaint) => complaint.startsWith('faults/'))).toEqual([
      expect.stringContaining(`faults/power.yaml:${line}: ${said}`),
    ]);
  });

  it('is told of a misspelt field once, with what is meant', () => {
    const withText = (before: string, after: string): string[] =>
      complaints({ ...goodEvidence, 'faults/power.yaml': BASE['faults/power.yaml'].replace(before, after) }).filter(
        (complaint) => complaint.includes('loose'),
      );
    expect(withText('why: It wobbles.', 'wyh: It wobbles.')).toEqual([
      'faults/power.yaml:13: loose: there is no "wyh" here; did you mean "why"?',
    ]);
    expect(withText('{ steps: [Push it in.]', '{ stpes: [Push it in.]')).toEqual([
      'faults/power.yaml:15: loose: remedy: there is no "stpes" here; did you mean "steps"?',
    ]);
    expect(withText('weight: 1\n', 'weight: 2,5\n')).toEqual([
      'faults/power.yaml:14: loose: weight: wants a number, such as 2 or 0.5; it is "2,5"',
    ]);
    expect(withText('  why: It wobbles.\n', '')).toEqual(['faults/power.yaml:10: loose: why: is missing']);
    expect(withText('why: It wobbles.', 'why: # 3 wobbles.')).toEqual([
      expect.stringContaining('faults/power.yaml:13: loose: why: nothing stands there'),
    ]);
  });

  it('is told what shape a field wants', () => {
    const withText = (before: string, after: string): string[] =>
      complaints({ ...goodEvidence, 'faults/power.yaml': BASE['faults/power.yaml'].replace(before, after) }).filter(
        (complaint) => complaint.includes('loose'),
      );
    const remedy = '{ steps: [Push it in.], minutes: 2 }';
    expect(withText(remedy, '{ steps: [Push it in.], minutes: 2, lasting: Tape it. }')).toEqual([
      expect.stringMatching(/^faults\/power\.yaml:15: loose: remedy\.lasting: wants a list: lines further in.*"- "/u),
    ]);
    expect(withText(remedy, '{ steps: [Push it in.] }')).toEqual([
      expect.stringContaining('remedy.minutes: is missing; it wants a number'),
    ]);
    expect(withText('  weight: 1\n', '  weight: 1\n  only: { systems: windows }\n')).toEqual([
      expect.stringContaining('only.systems: wants a list of some of [windows, macos, linux, phone]; it is "windows"'),
    ]);
    expect(withText('  weight: 1\n', '  weight: 0\n')).toEqual([expect.stringContaining('wants more than 0; it is 0')]);
  });

  it('is told of a comma that ends a text between braces', () => {
    expect(
      complaints({
        ...goodEvidence,
        'checks/all.yaml': BASE['checks/all.yaml'].replace('Lit }', 'Lit, or no lamp }'),
      })[0],
    ).toContain("within { } ends the text: put the whole text between quotes, label: 'Lit, or no lamp'");
  });

  it('is told of a comma that parts a step between brackets', () => {
    const [told, ...more] = complaints({
      ...goodEvidence,
      'faults/power.yaml': BASE['faults/power.yaml'].replace('[Push it in.]', '[Push it in, then turn it.]'),
    });
    expect(told).toContain('power.yaml:15: loose: steps: a comma within [ ] parts the text before “then turn it.”');
    expect(more).toEqual([]);
  });

  it('is not told of a name that only looks near, being short', () => {
    const [told] = complaints({
      ...goodEvidence,
      'faults/power.yaml': BASE['faults/power.yaml'].replace('  weight: 1\n', '  weight: 1\n  like: x\n'),
    });
    expect(told).toContain('there is no "like" here; what may stand here:');
  });

  it('is told which check and which answer is meant', () => {
    const withAnswers = (answers: string): string | undefined =>
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('{ light: "off" }', answers),
      })[0];
    expect(withAnswers('{ lihgt: "off" }')).toContain('there is no check "lihgt"; did you mean "light"?');
    expect(withAnswers('{ light: "of" }')).toContain('check "light" has no answer "of"; did you mean "off"?');
  });
});

describe('where a fault of the club is offered', () => {
  const damp = (stage: string, answers: string, minutes: number): string => `- id: damp
  stage: ${stage}
  title: The heaters pull the supply down
  why: Mount and heaters share it.
  weight: 2
  answers: ${answers}
  remedy: { steps: [Give the heaters a battery of their own.], minutes: ${minutes} }
  verify: { text: The light stays steady. }
  source: invented for a test
`;
  const linesFor = (folder: string, overlay?: string): readonly string[] => {
    const model = loadTriage(folder, overlay);
    const fault = model.fault('damp');
    return fault === undefined ? [] : offeredLines(model, fault);
  };
  const overShipped = (answers: string): string =>
    linesFor('knowledge/connection', folderWith({ 'faults.yaml': damp('power', answers, 5) })).join('\n');

  it('is said with its step, and with the answers that were taken for granted', { timeout: 60_000 }, () => {
    const left = overShipped('{ power-light: dips, supply-amps: too-few }');
    expect(left).toMatch(/^offered at step \d/u);
    expect(left).toMatch(/taken for granted, .*how-far → no-light/u);
    expect(overShipped('{ power-light: dips, supply-amps: too-few, how-far: drops }')).not.toContain('how-far');
  });

  it('is said not to be reached where the walk ends without it', () => {
    const faults = `${BASE['faults/power.yaml']}${damp('cable', '{ light: "off" }', 590)}`;
    expect(linesFor(folderWith({ ...goodEvidence, 'faults/power.yaml': faults }))[0]).toBe(
      'not reached on wire, because at once it tries “It is not plugged in”, “The cable is loose”',
    );
  });

  const ours = (remedy: string): string => `- id: grey-box-off
  stage: power
  title: The grey box is off
  why: Somebody turned its key.
  weight: 2
  words: [grey box]
  answers: { light: "off", grey-lamp: dark }
  remedy: ${remedy}
  verify: { text: The lamp is lit. }
  source: invented for a test
`;
  const question = `- id: grey-lamp
  stage: power
  question: Is the lamp of the grey box lit?
  how: It hangs on the pier.
  answers: [{ id: lit, label: Lit }, { id: dark, label: Dark }]
  good: lit
  minutes: 1
  source: invented for a test
`;
  const withOurs = (remedy: string) =>
    loadTriage(folderWith(goodEvidence), folderWith({ 'faults.yaml': ours(remedy), 'checks.yaml': question }));
  const linesOf = (remedy: string): string => {
    const model = withOurs(remedy);
    return offeredLines(model, model.fault('grey-box-off') as FaultEntry).join('\n');
  };

  it('is told of members with other faults whom it is offered to, and no more once its question is asked before', () => {
    expect(linesOf('{ steps: [Turn the key.], minutes: 2 }')).toMatch(
      /LOOK: members with other faults are offered it before their own: unplugged, loose; write `confirm: grey-lamp` under/u,
    );
    expect(linesOf('{ steps: [Turn the key.], minutes: 2, confirm: grey-lamp }')).not.toContain('LOOK');
  });

  it('is played from words: what is read of them, where it stands then, and the steps to it', () => {
    const model = withOurs('{ steps: [Turn the key.], minutes: 2, confirm: grey-lamp }');
    const lines = playLines(model, 'the grey box again', [model.fault('grey-box-off') as FaultEntry]);
    expect(lines).toContain('  grey-box-off 6 times as likely');
    expect(lines.join('\n')).toMatch(/Where that leaves these.*\n {2}grey-box-off: 1st, \d\d %/u);
    expect(lines.join('\n')).toMatch(/\d\. Is the lamp of the grey box lit\? → Dark/u);
    expect(lines.at(-1)).toMatch(/\d\. OFFERED: The grey box is off/u);
    expect(playLines(model, 'good evening', [])).toEqual(['Nothing was read of these words.']);
    // A guess, as the bot shows it to the member.
    expect(playLines(shippedModel(), PERHAPS, []).join('\n')).toMatch(/^ {2}Perhaps: port-appears → nothing/mu);
    // What a member says in other words than the fault's lines have it.
    const loose = playLines(model, 'there is no light at all', [model.fault('loose') as FaultEntry]);
    expect(loose.join('\n')).toContain('AGAINST loose: light → off. If members with it may say either, write light: {');
  });

  it('has words of its own, or the check says in which sayings of other things they are heard', () => {
    const shipped = folderWith({
      ...goodEvidence,
      'sayings.yaml': `- id: dark-light
  phrases: ['light dark', 'light out']
  examples: [light dark, light out]
  answers: { light: "off" }
  source: invented for a test
`,
    });
    const heardWith = (words: string) => {
      const result = readEntries(shipped, folderWith({ 'faults.yaml': `- { id: loose, words: [${words}] }\n` }));
      return commonWords(makeModel(result.entries), result);
    };
    expect(heardWith('wobbly plug')).toEqual([]);
    expect(heardWith('light')).toEqual([{ id: 'loose.words', heardIn: ['light dark', 'light out'] }]);
  });
});
