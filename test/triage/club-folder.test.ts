/** What a club's folder adds to what ships: words, answers, ways to a mount, and what is told of it. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { loadTriage } from '../../bot/triage/index.js';
import { BASE, complaints, folderWith, goodEvidence } from './model-folders.js';

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
