/** "Not bluetooth, I am on the wifi": what the words are only like is none of it where it belongs to another way than they name. */
import type { Reading } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';

const PATH = 'path';

export const withoutOtherWays = (model: TriageModel, read: Reading): Reading => {
  const named = read.facts.find(({ what }) => what === PATH);
  if (named === undefined || read.by !== 'words' || read.perhaps.length === 0) return read;
  const ways = model.reading.family(named.answer);
  const isOfIt = (check: string): boolean => {
    const entry = model.check(check);
    if (entry === undefined || ways.length === 0) return true;
    return (entry.only?.paths ?? ways).some((path) => ways.includes(path)) && isOfRadio(entry.needs, ways);
  };
  return { ...read, perhaps: read.perhaps.filter(({ what }) => isOfIt(what)) };
};

const isOfRadio = (needs: readonly string[] | undefined, ways: readonly string[]): boolean =>
  needs?.includes('bluetooth') !== true || ways.includes('bluetooth');
