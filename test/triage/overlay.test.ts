/** Loading the fault model's files: a club's entries over the shipped ones, and complaints that name file, line and entry. */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkReferences } from '../../bot/triage/model/check-references.js';
import { KnowledgeError, loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { checkCoverage } from '../../scripts/knowledge/check-coverage.js';
import { BASE, complaints, folderWith, goodEvidence } from './model-folders.js';

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

  it('finds a system that is left out, a fault that applies nowhere, a figure that is none', () => {
    expect(
      withFaults(
        faultsText.replace(
          '{ steps: [Push it in.], minutes: 2 }',
          '{ steps: { windows: [Push.], linux: [Push.] }, minutes: 2 }',
        ),
      ),
    ).toEqual(['loose: remedy.steps: nothing is said for macos']);
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
