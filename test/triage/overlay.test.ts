/** Loading the fault model's files: a club's entries over the shipped ones, and complaints that name file, line and entry. */
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkReferences } from '../../bot/triage/model/check-references.js';
import { readText } from '../../bot/reading/index.js';
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

/** Of the words that ship, those without which no sentence is read. */
const SMALL_WORDS = '- { id: small, words: [the, is, my, it, a] }\n- { id: not, words: [no, not] }\n';

describe("what a club's overlay adds", () => {
  const shippedWith = (files: Readonly<Record<string, string>>): string => folderWith({ ...goodEvidence, ...files });
  const reading = {
    'words.yaml': `${SMALL_WORDS}- id: handset\n  words: [handset, paddle]\n`,
    'sayings.yaml': `- id: handset-dark
  phrases: ['<handset> dark']
  examples: [the paddle is dark]
  answers: { light: "off" }
  source: invented for a test
`,
  };
  const readOf = (shipped: string, overlay: string, text: string): readonly string[] =>
    readText(loadTriage(shipped, overlay).reading, text).facts.map(({ what, answer }) => `${what}=${answer}`);

  it('joins the words that ship, and takes out those it names', () => {
    const shipped = shippedWith(reading);
    const more = folderWith({ 'words.yaml': '- id: handset\n  words: [zapper]\n' });
    expect(readOf(shipped, more, 'the zapper is dark')).toEqual(['light=off']);
    expect(readOf(shipped, more, 'the paddle is dark')).toEqual(['light=off']);
    const fewer = folderWith({ 'words.yaml': '- id: handset\n  without: [paddle]\n' });
    expect(readOf(shipped, fewer, 'the paddle is dark')).toEqual([]);
    expect(readOf(shipped, fewer, 'the handset is dark')).toEqual(['light=off']);
  });

  it('joins answers and cautions, and changes one answer without the others', () => {
    const overlay = folderWith({
      'checks.yaml': '- id: light\n  answers: [{ id: "on", label: Green }, { id: blinks, label: It blinks }]\n',
      'faults.yaml': '- id: loose\n  remedy: { cautions: [laser] }\n',
    });
    const shipped = shippedWith({
      'faults/power.yaml': BASE['faults/power.yaml'].replace('minutes: 2 }', 'minutes: 2, cautions: [mains] }'),
    });
    const model = loadTriage(shipped, overlay);
    expect(model.check('light')?.answers).toEqual([
      { id: 'on', label: 'Green' },
      { id: 'off', label: 'Dark' },
      { id: 'blinks', label: 'It blinks' },
    ]);
    expect(model.fault('loose')?.remedy).toMatchObject({ steps: ['Push it in.'], cautions: ['mains', 'laser'] });
  });

  it('is told of a name to take out that is not there, and of words that nothing reads', () => {
    const overlay = folderWith({
      'words.yaml': '- { id: handset, without: [padel] }\n- { id: our-handset, words: [zapper] }\n',
    });
    expect(complaints({ ...goodEvidence, ...reading }, overlay)).toEqual([
      `${overlay}/words.yaml:1: handset: without: it has no "padel" to take out`,
      expect.stringMatching(
        /words\.yaml:2: our-handset: id: no phrase has <our-handset>, so these words tell nothing/u,
      ),
    ]);
  });

  it('is told of a file that is read from nowhere', () => {
    const overlay = folderWith({ 'fault/ours.yaml': '', 'faults.yaml.txt': '', 'README.md': 'Ours.' });
    expect(complaints(goodEvidence, overlay)).toEqual([
      expect.stringContaining('/fault/ours.yaml:1: nothing is read from this file: did you mean faults/?'),
      expect.stringContaining('/faults.yaml.txt:1: nothing is read from this file: its name must end in .yaml'),
    ]);
  });

  it('does not load with a caution that is none (who needs it would meet the error), nor with words that are not read', () => {
    const heldTo = { cautions: new Set(['mains']) };
    const load = (files: Readonly<Record<string, string>>) => () =>
      loadTriage(shippedWith(reading), folderWith(files), undefined, heldTo);
    expect(load({ 'faults.yaml': '- id: loose\n  remedy: { cautions: [main] }\n' })).toThrow(
      /faults\.yaml:2: loose: remedy\.cautions\.0: there is no caution "main"; did you mean "mains"/u,
    );
    expect(load({ 'sayings.yaml': '- id: handset-dark\n  examples: [the torch is dark]\n' })).toThrow(
      /sayings\.yaml:2: handset-dark: examples\.1: this saying is not read of “the torch is dark”/u,
    );
    expect(load({ 'sayings.yaml': '- id: handset-dark\n  examples: [my handset is dark]\n' })).not.toThrow();
  });
});

describe("a club's way like one that ships", () => {
  const files = {
    ...goodEvidence,
    'paths.yaml': `${BASE['paths.yaml']}- { id: radio, title: By radio, description: Two., stages: [cable, power], systems: [linux], clients: [direct] }\n`,
    'families.yaml': '- { id: any, label: any way, paths: [wire, radio] }\n',
    'faults/power.yaml': BASE['faults/power.yaml'].replace(
      'weight: 1\n',
      'weight: 1\n  only: { paths: [wire] }\n  weightOn: [{ path: wire, factor: 3 }]\n',
    ),
  };
  const two = `- { id: ours-grey, like: wire, title: 'The pier, by the grey lead', words: [the pier, grey lead] }
- { id: ours-blue, like: radio, title: 'The pier, by the blue stick', words: [the pier, blue stick] }
`;
  const model = () => loadTriage(folderWith(files), folderWith({ 'paths.yaml': two }));
  const pathOf = (text: string): string | undefined =>
    readText(model().reading, text).facts.find(({ what }) => what === 'path')?.answer;

  it('has its stages, its faults and the weights that hold there, and a name of its own', () => {
    const { path, fault, reading } = model();
    expect(path('ours-grey')).toMatchObject({ title: 'The pier, by the grey lead', stages: ['power', 'cable'] });
    expect(path('ours-blue')).toMatchObject({ stages: ['cable', 'power'], systems: ['linux'] });
    expect(fault('loose')?.only?.paths).toEqual(['wire', 'ours-grey']);
    expect(fault('loose')?.weightOn).toEqual([
      { path: 'wire', factor: 3 },
      { path: 'ours-grey', factor: 3 },
    ]);
    expect(reading.family('any')).toEqual(['wire', 'ours-grey', 'radio', 'ours-blue']);
  });

  it('is known by its words; what two ways are called leaves both', () => {
    expect(pathOf('it hangs on the grey lead')).toBe('ours-grey');
    expect(pathOf('with the blue stick in')).toBe('ours-blue');
    expect(model().reading.family(pathOf('on the pier nothing works') ?? '')).toEqual(['ours-grey', 'ours-blue']);
    expect(pathOf('the pier by the grey lead is dead')).toBe('ours-grey');
  });

  it('is refused where it is like none, or says no name', () => {
    const told = (text: string): string[] => complaints(files, folderWith({ 'paths.yaml': text }));
    expect(told('- { id: ours, like: wyre, title: Ours }\n')[0]).toContain(
      'ours: like: wants a way that ships: wire, radio; it is "wyre"',
    );
    expect(told('- { id: ours, like: wire }\n')[0]).toContain('ours: title: is missing');
  });
});

describe('words beside a fault or an answer', () => {
  it('lead to it', () => {
    const overlay = folderWith({
      'faults.yaml': '- id: loose\n  words: [wobbly plug]\n',
      'checks.yaml': '- id: light\n  answers: [{ id: "off", words: [black as pitch] }]\n',
    });
    const { reading } = loadTriage(folderWith({ ...goodEvidence, 'words.yaml': SMALL_WORDS }), overlay);
    expect(readText(reading, 'we have a wobbly plug again').suggested).toEqual([{ faultId: 'loose', weight: 6 }]);
    expect(readText(reading, 'no wobbly plug here').suggested).toEqual([]);
    expect(readText(reading, 'it is black as pitch').facts).toEqual([
      expect.objectContaining({ what: 'light', answer: 'off' }),
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
