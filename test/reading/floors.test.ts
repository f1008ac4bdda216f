/** The project's own labelled texts stay as well read as they are held to be, and the reviewers' examples too. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkExamples, readText } from '../../bot/reading/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { loadCorpus } from '../../scripts/reading/corpus.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

describe('the vocabulary', () => {
  it('is read of every example and of no non-example', () => {
    expect(checkExamples(readEntries('knowledge/connection').entries)).toEqual([]);
  });

  it('falls into none of the traps', () => {
    const traps = ['test/reading/corpus', 'test/reading/corpus/held'].flatMap((folder) =>
      loadCorpus(folder).filter(({ kind }) => kind === 'trap'),
    );
    expect(traps.length).toBeGreaterThanOrEqual(40);
    for (const { text, not } of traps) {
      const { facts, suggested } = readText(reading, text);
      const told = [
        ...facts.map(({ what, answer }) => `${what}.${answer}`),
        ...suggested.flatMap(({ faultId, weight }) => (weight > 1 ? [faultId] : [])),
      ];
      for (const one of not) expect(told, text).not.toContain(one);
    }
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
