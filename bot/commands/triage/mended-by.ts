/** What failed, by what was told of it → what the mount must do now for that to be mended. */
import type { Doing } from '../../reading/index.js';

const MOVES: readonly Doing[] = ['moves', 'lands', 'stays'];
const LINKS: readonly Doing[] = ['link', 'found', 'lasts', 'moves', 'lands'];

export const MENDED_BY: ReadonlyMap<string, readonly Doing[]> = new Map([
  ['how-far.no-light', LINKS],
  ['how-far.not-seen', LINKS],
  ['how-far.no-connect', LINKS],
  ['how-far.search-empty', ['found']],
  ['how-far.drops', ['lasts']],
  ['how-far.no-move', MOVES],
  ['how-far.elsewhere', ['lands']],
  ['mount-does.not-connected', LINKS],
  ['mount-does.refuses-all', MOVES],
  ['mount-does.refuses-some', MOVES],
  ['mount-does.nothing', MOVES],
  ['mount-does.wrong-way', ['lands']],
  ['mount-does.elsewhere', ['lands']],
  ['mount-does.nonsense', ['lands']],
  ['mount-does.drifts', ['stays']],
  ['follow.stays', ['stays']],
  ['when-drops.never', ['lasts']],
]);
