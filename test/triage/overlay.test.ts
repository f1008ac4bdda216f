/** Loading the fault model's files: a club's entries over the shipped ones, and complaints that name file, line and entry. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { checkReferences } from '../../bot/triage/model/check-references.js';
import { KnowledgeError, loadTriage } from '../../bot/triage/index.js';
import { problemLine } from '../../bot/triage/model/knowledge-problem.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { offeredLines } from '../../scripts/knowledge/offered.js';
import { checkCoverage } from '../../scripts/knowledge/check-coverage.js';

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

const folderWith = (files: Readonly<Record<string, string>>): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pierhand-knowledge-'));
  made.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
};

const BASE = {
  'stages.yaml': '- { id: power, title: Power }\n- { id: cable, title: Cable }\n',
  'paths.yaml':
    '- { id: wire, title: A wire, description: One., stages: [power, cable], systems: [windows, macos, linux], clients: [direct, platform] }\n',
  'checks/all.yaml': `- id: light
  stage: power
  question: Is the light on?
  how: Look.
  answers: [{ id: "on", label: Lit }, { id: "off", label: Dark }]
  good: "on"
  minutes: 1
  source: invented for a test
`,
  'faults/power.yaml': `- id: unplugged
  stage: power
  title: It is not plugged in
  why: Somebody pulled it.
  weight: 2
  answers: { light: "off" }
  remedy: { steps: [Plug it in.], minutes: 1 }
  verify: { text: The light comes on., check: light, answer: "on" }
  source: invented for a test
- id: loose
  stage: cable
  title: The cable is loose
  why: It wobbles.
  weight: 1
  remedy: { steps: [Push it in.], minutes: 2 }
  verify: { text: It holds. }
  source: invented for a test
`,
  'evidence/words.yaml': `- id: dark-words
  pattern: '(no|without) (light|power)'
  example: there is no light at all
  nonExample: no lightning tonight
  answers: { light: "off" }
  says: There is no power.
  source: invented for a test
`,
};
const goodEvidence = {
  ...BASE,
  'evidence/words.yaml': BASE['evidence/words.yaml'].replace(
    '(no|without) (light|power)',
    '(no|without) (light|power)\\b',
  ),
};

const complaints = (files: Readonly<Record<string, string>>, overlay?: string): string[] => {
  const folder = folderWith(files);
  const result = readEntries(folder, overlay);
  return [...result.problems, ...checkReferences(result)].map((problem) =>
    problemLine(problem).replace(`${folder}/`, ''),
  );
};

describe('a model with mistakes', () => {
  it('is told file, line and entry', () => {
    expect(complaints(BASE)).toEqual(['evidence/words.yaml:4: dark-words: nonExample: the pattern matches it']);
    expect(
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('weight: 2', 'weight: heavy'),
      })[0],
    ).toMatch(/^faults\/power\.yaml:5: unplugged: weight: /u);
    expect(
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('stage: cable', 'stage: cabel'),
      }),
    ).toEqual(['faults/power.yaml:11: loose: stage: there is no stage "cabel"; did you mean "cable"?']);
    expect(
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('{ light: "off" }', '{ light: green }'),
      }),
    ).toEqual(['faults/power.yaml:6: unplugged: answers.light: check "light" has no answer "green"; it has on, off']);
    expect(
      complaints({
        ...goodEvidence,
        'faults/power.yaml': `${BASE['faults/power.yaml']}- id: loose\n  stage: cable\n`,
      })[0],
    ).toMatch(/^faults\/power\.yaml:18: loose: there is another of the faults/u);
    expect(complaints({ ...goodEvidence, 'faults/power.yaml': '- id: [broken\n' })[0]).toMatch(
      /^faults\/power\.yaml:\d+: /u,
    );
    expect(
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('why: It wobbles.', 'why: It wobbles.\n  colour: red'),
      })[0],
    ).toMatch(/^faults\/power\.yaml:14: loose: .*colour/u);
  });

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

  it('is told which check and which answer is meant', () => {
    const withAnswers = (answers: string): string | undefined =>
      complaints({
        ...goodEvidence,
        'faults/power.yaml': BASE['faults/power.yaml'].replace('{ light: "off" }', answers),
      })[0];
    expect(withAnswers('{ lihgt: "off" }')).toContain('there is no check "lihgt"; did you mean "light"?');
    expect(withAnswers('{ light: "of" }')).toContain('check "light" has no answer "of"; did you mean "off"?');
  });

  it('may not use patterns that backtrack', () => {
    expect(
      complaints({
        ...goodEvidence,
        'evidence/words.yaml': goodEvidence['evidence/words.yaml'].replace(
          "'(no|without) (light|power)\\b'",
          "'(?=no )(no) \\1'",
        ),
      })[0],
    ).toMatch(/^evidence\/words\.yaml:2: dark-words: pattern: not RE2 syntax/u);
  });

  it('does not load', () => {
    const folder = folderWith(BASE);
    expect(() => loadTriage(folder)).toThrow(KnowledgeError);
    expect(() => loadTriage(folder)).toThrow(/words\.yaml:4: dark-words/u);
    expect(() => loadTriage(join(folder, 'nowhere'))).toThrow(/no such folder/u);
  });
});

describe("a club's overlay", () => {
  it('adds, changes and removes entries and leaves the rest', () => {
    const shipped = folderWith(goodEvidence);
    const overlay = folderWith({
      'faults.yaml': `- id: unplugged
  title: The grey box on the club pier is off
  answers: { light: { "off": 0.9, "on": 0.1 } }
- { id: loose, remove: true }
- id: mouse
  stage: cable
  title: A mouse ate the cable
  why: Fenwold has mice.
  weight: 0.5
  remedy: { steps: [Change it.], minutes: 20 }
  verify: { text: No teeth marks. }
  source: the club
`,
    });
    const model = loadTriage(shipped, overlay);
    expect(model.faults.map(({ id }) => id).sort()).toEqual(['mouse', 'unplugged']);
    expect(model.fault('unplugged')).toMatchObject({
      title: 'The grey box on the club pier is off',
      weight: 2,
      answers: { light: { off: 0.9, on: 0.1 } },
    });
    expect(loadTriage(shipped).faults).toHaveLength(2);
  });

  it("is held to the same rules, and the complaint names the club's file", () => {
    const overlay = folderWith({
      'faults.yaml': '- id: unplugged\n  answers: { lamp: "off" }\n- { id: ghost, remove: true }\n',
    });
    const found = complaints(goodEvidence, overlay);
    expect(found).toEqual([
      `${overlay}/faults.yaml:3: ghost: nothing to remove: none of the faults has this id`,
      `${overlay}/faults.yaml:2: unplugged: answers.lamp: there is no check "lamp"; there are light`,
    ]);
  });
});

describe('what reviewers hold a model to', () => {
  const coverage = (files: Readonly<Record<string, string>>): string[] => {
    const result = readEntries(folderWith(files));
    expect([...result.problems, ...checkReferences(result)]).toEqual([]);
    return checkCoverage(result, { shipped: false }).map(({ entry, message }) => `${entry}: ${message}`);
  };
  const faultsText = BASE['faults/power.yaml'];
  const withFaults = (text: string) => coverage({ ...goodEvidence, 'faults/power.yaml': text });

  it('passes a small sound one', () => {
    expect(coverage(goodEvidence)).toEqual([]);
  });

  it('finds two faults that no check tells apart, unless they are marked', () => {
    const twin = faultsText.replace('id: loose', 'id: looser').slice(faultsText.indexOf('- id: loose'));
    expect(withFaults(faultsText + twin)).toEqual([
      expect.stringContaining('loose: answers: no check tells it apart from "looser"'),
    ]);
    expect(withFaults(faultsText + twin.replace('  weight: 1', '  weight: 1\n  sameAs: [loose]'))).toEqual([]);
  });

  it('finds a mark that is not true', () => {
    expect(withFaults(faultsText.replace('weight: 1', 'weight: 1\n  sameAs: [unplugged]'))).toEqual([
      'loose: sameAs.0: check "light" tells it apart from "unplugged" everywhere; take the mark off',
    ]);
  });

  it('finds a remedy that cannot be verified by the check it names', () => {
    expect(withFaults(faultsText.replace('answer: "on" }', 'answer: "off" }'))[0]).toContain(
      'unplugged: verify.answer: "light" answers "off" before the remedy too',
    );
  });

  it('finds a system that is left out, a caution that is none, a fault that applies nowhere, a figure that is none', () => {
    expect(
      withFaults(
        faultsText.replace(
          '{ steps: [Push it in.], minutes: 2 }',
          '{ steps: { windows: [Push.], linux: [Push.] }, minutes: 2 }',
        ),
      ),
    ).toEqual(['loose: remedy.steps: nothing is said for macos']);
    expect(withFaults(faultsText.replace('minutes: 2 }', 'minutes: 2, cautions: [dragons] }'))[0]).toContain(
      'there is no caution "dragons"',
    );
    const nowhere = coverage({
      ...goodEvidence,
      'paths.yaml': BASE['paths.yaml'].replace('[power, cable]', '[power, power]'),
    });
    expect(nowhere).toContain('loose: only: it applies nowhere: no path has this stage under these conditions');
    expect(withFaults(faultsText.replace('[Push it in.]', '["Wait {wait 2000}."]'))).toEqual([
      expect.stringContaining('{wait 2000} is no figure'),
    ]);
  });

  it('finds a fault the walk never comes to', () => {
    // So rare and so dear that handing on is always cheaper.
    expect(
      withFaults(faultsText.replace('minutes: 2 }', 'minutes: 590 }').replace('weight: 1', 'weight: 0.01')),
    ).toEqual([expect.stringContaining('loose: answers: the walk never comes to its remedy')]);
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
});
