/** Which filter helps what glows in few colours, and what no filter helps. Common practice of observers, no source. */
import type { Target } from '../../catalogue/index.js';
import { tableOf } from '../../ground/table-of.js';

const FILTERS = tableOf({
  'supernova-remnant': 'an O III filter helps much',
  'planetary-nebula': 'an O III filter helps',
});
const H_BETA = /^(?:barnard33|ic434|ngc1499)$/u;

/** Of no use without its filter. */
export const needsHBeta = ({ id }: Target): boolean => H_BETA.test(id);

/** What is bright by its gas; null where no filter helps. */
export const filterFor = (target: Target): string | null => {
  if (needsHBeta(target)) return 'only with an H-beta filter, 250 mm or more and a dark sky';
  if (target.kind === 'nebula') return /reflection|dark/u.test(target.kindText) ? null : 'a nebula filter helps';
  return FILTERS.get(target.kind) ?? null;
};

const OF_MOON = 'No; a grey or polarising filter only makes it easier on the eye near full.';
const OF_PLANET = 'No; a light colour filter brings out a little on the disc, no more.';

/** The answer to whether one is needed. */
export const filterNeeded = (target: Target): string => {
  const { name, kind } = target;
  if (needsHBeta(target)) return `Yes: ${name} shows ${filterFor(target) ?? ''}.`;
  if (kind === 'moon') return OF_MOON;
  if (kind === 'planet') return OF_PLANET;
  const filter = filterFor(target);
  if (filter === null)
    return `No: ${name} shines in all colours, and a filter only dims it. A darker sky is what helps.`;
  return kind === 'supernova-remnant'
    ? `All but needed: ${filter} on ${name}.`
    : `Not needed, but ${filter} on ${name}, most of all under town light or the Moon.`;
};
