/** The project's own labelled texts stay as well read as they are held to be, and the reviewers' examples too. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkExamples, readText } from '../../bot/reading/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { loadCorpus } from '../../scripts/reading/corpus.js';
import { measure } from '../../scripts/reading/measure.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const { reading } = model;
/** The project's own texts: by subject, in two halves; many members' sentences with near misses; logs with theirs. */
const FOLDERS = [
  'test/reading/corpus',
  'test/reading/corpus/held',
  'test/reading/corpus/members',
  'test/reading/corpus/pasted',
];

describe('the vocabulary', () => {
  it('is read of every example and of no non-example', () => {
    expect(checkExamples(readEntries('knowledge/connection').entries)).toEqual([]);
  }, 120_000);

  it('falls into none of the traps', () => {
    const traps = FOLDERS.flatMap((folder) => loadCorpus(folder).filter(({ not }) => not.length > 0));
    expect(traps.length).toBeGreaterThanOrEqual(150);
    for (const { text, not } of traps) {
      const { facts, suggested } = readText(reading, text);
      const told = [
        ...facts.map(({ what, answer }) => `${what}.${answer}`),
        ...suggested.flatMap(({ faultId, weight }) => (weight > 1 ? [faultId] : [])),
      ];
      for (const one of not) expect(told, text).not.toContain(one);
    }
  });

  // Each text is labelled with all that it bears out, so that what is read beyond the labels is wrong.
  it.each([
    { texts: 'members’ sentences', folder: 'members', kind: 'words', leastRight: 0.97, leastRead: 0.88 },
    {
      texts: 'sentences of hedges, other people and other mounts',
      folder: 'pasted',
      kind: 'words',
      leastRight: 0.96,
      leastRead: 0.88,
    },
    { texts: 'pasted logs', folder: 'pasted', kind: 'log', leastRight: 0.97, leastRead: 0.95 },
  ])('reads $texts right, and most of what they say', ({ texts, folder, kind, leastRight, leastRead }) => {
    const all = loadCorpus(`test/reading/corpus/${folder}`)
      .filter((own) => own.kind === kind)
      .map((own) => measure(model, own));
    const sum = { said: 0, read: 0, right: 0, wrong: 0 };
    for (const { groups } of all)
      for (const own of groups.values())
        for (const key of ['said', 'read', 'right', 'wrong'] as const) sum[key] += own[key];
    const [right, read] = [sum.right / (sum.right + sum.wrong), sum.read / sum.said];
    console.log(`${texts}: ${(100 * right).toFixed(1)} % right, ${(100 * read).toFixed(1)} % read`);
    expect(right).toBeGreaterThanOrEqual(leastRight);
    expect(read).toBeGreaterThanOrEqual(leastRead);
  });

  it('names, for every language it has, what was written from memory', () => {
    const { translations } = readEntries('knowledge/connection').entries;
    const languages = new Set(translations.flatMap(({ texts }) => Object.keys(texts)));
    expect([...languages].sort()).toEqual(
      expect.arrayContaining(['de', 'es', 'fr', 'it', 'ja', 'nl', 'pl', 'pt', 'zh']),
    );
    for (const { id, texts, fromMemory, source } of translations)
      if (!source.includes('catalogues')) expect([...(fromMemory ?? [])].sort(), id).toEqual(Object.keys(texts).sort());
    expect(readFileSync('knowledge/connection/reading/translations.yaml', 'utf8')).toContain('fromMemory');
  });
});
