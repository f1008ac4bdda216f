/** Weighs each mistake, and each two made together, by its frequency and by how well it predicts what was seen. */
import type { Circumstances, Observation } from './astray-types.js';
import { rightBelief, type Belief } from './controller-belief.js';
import { fitContinuum } from './fit-continuum.js';
import { logSum } from './log-sum.js';
import { PLAIN, type Mistake, type Part, type Sized } from './mistake-types.js';
import { misfitOf, standardResiduals } from './observation-misfit.js';
import { goTogether, secondRate } from './possible-mistakes.js';

/** How sure a size is. */
export interface Spread {
  readonly beliefAt: (standardised: readonly number[]) => Belief;
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
}

export interface Weighed {
  readonly parts: readonly [Part] | readonly [Part, Part];
  readonly logWeight: number;
  readonly belief: Belief;
  readonly spread: Spread | null;
}

/** What stands entered: all right, or wrong in one way. */
interface Entry {
  readonly part: Part | null;
  readonly mistake: Mistake | null;
  readonly belief: Belief;
  readonly logPrior: number;
  /** How well it fits the display, which no mistake of the mount changes. */
  readonly logShown: number;
}

/** Hypotheses this far (in natural logarithms) under the best are not followed to the landing. */
const HOPELESS = 11;
/** So many of the best wrong entries are tried together with a mount's mistake of any size. */
const ENTRIES_WITH_SIZES = 4;
const DESCENTS_ALONE = 2;
const DESCENTS_BESIDE = 1;
const LANDINGS_FOR_TWO = 2;

interface Scales {
  readonly circumstances: Circumstances;
  readonly right: Belief;
  readonly observations: readonly Observation[];
  readonly clocks: readonly Observation[];
  readonly displays: readonly Observation[];
  readonly landings: readonly Observation[];
  /** Log frequency of a mistake as the first, or as the second beside another. */
  readonly logFirst: (mistake: Mistake, share: number) => number;
  readonly logSecond: (first: Mistake, mistake: Mistake, share: number) => number;
  readonly add: (weighed: Weighed) => void;
  /** Whether something of this weight can no longer count. */
  readonly isHopeless: (logWeight: number) => boolean;
}

const fitTo = ({ circumstances }: Scales, belief: Belief, observations: readonly Observation[]): number =>
  -misfitOf(circumstances, belief, observations);

/** The log weight with the landings; null as soon as they make it hopeless. */
const withLandings = (scales: Scales, belief: Belief, before: number): number | null => {
  let logWeight = before;
  for (const landing of scales.landings) {
    if (scales.isHopeless(logWeight)) return null;
    logWeight += fitTo(scales, belief, [landing]);
  }
  return logWeight;
};

const sizedPart = ({ id }: Mistake, sized: Sized, parameters: readonly number[]): Part => ({
  id,
  slip: PLAIN,
  size: sized.sizeAt(parameters),
});

const besides = ({ part }: Entry, second: Part): Weighed['parts'] => (part === null ? [second] : [part, second]);

/** Every definite wrong entry, weighed by itself too. */
const weighEntries = (scales: Scales, mistakes: readonly Mistake[]): Entry[] =>
  mistakes.flatMap((mistake) =>
    mistake.forms.map(({ share, change, slip }) => {
      const belief = change(scales.right);
      const logPrior = scales.logFirst(mistake, share);
      const logShown = fitTo(scales, belief, scales.displays);
      const part: Part = { id: mistake.id, slip, size: null };
      const logWeight = logPrior + logShown + fitTo(scales, belief, scales.landings);
      scales.add({ parts: [part], logWeight, belief, spread: null });
      return { part, mistake, belief, logPrior, logShown };
    }),
  );

/** Entries wrong by any amount. Settled by the display alone, such a one is an entry like any other beside a mistake of the mount. */
const weighAmounts = (scales: Scales, mistakes: readonly Mistake[]): Entry[] =>
  mistakes.flatMap((mistake) =>
    mistake.sizes.flatMap((sized, i) => {
      const { circumstances, right, observations, displays } = scales;
      const beliefAt = (z: readonly number[]): Belief => sized.change(z)(right);
      const fitted = (to: readonly Observation[]) =>
        fitContinuum(sized, (z) => standardResiduals(circumstances, beliefAt(z), to), DESCENTS_ALONE);
      const { parameters, covariance, logEvidence } = fitted(observations);
      const logPrior = scales.logFirst(mistake, sized.share);
      scales.add({
        parts: [sizedPart(mistake, sized, parameters)],
        logWeight: logPrior + logEvidence,
        belief: beliefAt(parameters),
        spread: { beliefAt, parameters, covariance },
      });
      // Beside a mistake of the mount one range stands for all of as many dimensions.
      const isRepeated = mistake.sizes.findIndex(({ dimensions }) => dimensions === sized.dimensions) < i;
      if (displays.length === 0 || isRepeated) return [];
      const shown = fitted(displays);
      const belief = beliefAt(shown.parameters);
      return [
        { part: sizedPart(mistake, sized, shown.parameters), mistake, belief, logPrior, logShown: shown.logEvidence },
      ];
    }),
  );

/** Two wrong entries at once. */
const weighTwoEntries = (scales: Scales, entries: readonly Entry[], mistakes: readonly Mistake[]): void => {
  for (const { part, mistake: first, belief: before, logPrior: logFirst } of entries) {
    if (part === null || first === null) continue;
    for (const mistake of mistakes.slice(mistakes.indexOf(first) + 1)) {
      if (!goTogether(first, mistake)) continue;
      for (const { share, change, slip } of mistake.forms) {
        const logPrior = logFirst + scales.logSecond(first, mistake, share);
        if (scales.isHopeless(logPrior)) continue;
        const belief = change(before);
        // The sidereal time alone rules most of them out.
        if (scales.isHopeless(logPrior + fitTo(scales, belief, scales.clocks))) continue;
        const shown = logPrior + fitTo(scales, belief, scales.displays);
        if (scales.isHopeless(shown)) continue;
        const logWeight = withLandings(scales, belief, shown);
        if (logWeight === null) continue;
        scales.add({ parts: [part, { id: mistake.id, slip, size: null }], logWeight, belief, spread: null });
      }
    }
  }
};

const logMount = (scales: Scales, entry: Entry, mistake: Mistake, share: number): number =>
  entry.logShown +
  (entry.mistake === null
    ? scales.logFirst(mistake, share)
    : entry.logPrior + scales.logSecond(entry.mistake, mistake, share));

/** A definite mistake of the mount, alone and beside wrong entries. */
const weighMountForms = (scales: Scales, mistake: Mistake, entries: readonly Entry[]): void => {
  for (const { share, change, slip } of mistake.forms) {
    for (const entry of entries) {
      const shown = logMount(scales, entry, mistake, share);
      if (scales.isHopeless(shown)) continue;
      const belief = change(entry.belief);
      const logWeight = withLandings(scales, belief, shown);
      // Alone it is weighed to the end, so that every cause has its place in the list.
      if (logWeight === null && entry.mistake !== null) continue;
      scales.add({
        parts: besides(entry, { id: mistake.id, slip, size: null }),
        logWeight: logWeight ?? shown + fitTo(scales, belief, scales.landings),
        belief,
        spread: null,
      });
    }
  }
};

/** A mistake of the mount of any size, alone and beside the likeliest wrong entries. */
const weighMountSizes = (scales: Scales, mistake: Mistake, entries: readonly Entry[]): void => {
  const wideShare = mistake.sizes.reduce((sum, { share, isNarrower }) => sum + (isNarrower === true ? 0 : share), 0);
  for (const sized of mistake.sizes) {
    for (const entry of entries) {
      const isAlone = entry.mistake === null;
      if (!isAlone && sized.isNarrower === true) continue;
      const shown = logMount(scales, entry, mistake, isAlone ? sized.share : sized.share / wideShare);
      if (scales.isHopeless(shown)) continue;
      weighSize(scales, mistake, sized, { entry, shown });
    }
  }
};

interface Beside {
  readonly entry: Entry;
  /** Log weight before the landings. */
  readonly shown: number;
}

const weighSize = (scales: Scales, mistake: Mistake, sized: Sized, { entry, shown }: Beside): void => {
  const descents = entry.mistake === null ? DESCENTS_ALONE : DESCENTS_BESIDE;
  const beliefAt = (z: readonly number[]): Belief => sized.change(z)(entry.belief);
  const residuals = (z: readonly number[]): number[] =>
    standardResiduals(scales.circumstances, beliefAt(z), scales.landings);
  const fit = fitContinuum(sized, residuals, descents);
  scales.add({
    parts: besides(entry, sizedPart(mistake, sized, fit.parameters)),
    logWeight: shown + fit.logEvidence,
    belief: beliefAt(fit.parameters),
    spread: { beliefAt, parameters: fit.parameters, covariance: fit.covariance },
  });
};

/** Two mistakes of the mount at once, a drive mirrored and a base that stands wrongly, say: one landing would fit almost any two. */
const weighTwoOfMount = (scales: Scales, mistakes: readonly Mistake[], right: Entry): void => {
  if (scales.landings.length < LANDINGS_FOR_TWO) return;
  for (const first of mistakes) {
    if (first.id === 'wrong-star') continue;
    for (const { share, change, slip } of first.forms) {
      const part: Part = { id: first.id, slip, size: null };
      const logPrior = scales.logFirst(first, share);
      const entry: Entry = { ...right, part, mistake: first, belief: change(right.belief), logPrior };
      for (const base of mistakes.filter(({ sizes }) => sizes.length > 0)) weighMountSizes(scales, base, [entry]);
    }
  }
};

/**
 * Log weights, up to one constant for all: each cause at its likeliest form, weighed by all its forms.
 * @param floor the log weight of what stands against every cause
 */
export const weighMistakes = (
  circumstances: Circumstances,
  mistakes: readonly Mistake[],
  observations: readonly Observation[],
  floor: number,
): Weighed[] => {
  const right = rightBelief(circumstances);
  const byCause = new Map<string, Weighed[]>();
  let top = floor;
  const allPrior = mistakes.reduce((sum, { prior }) => sum + prior, 0);
  const scales: Scales = {
    circumstances,
    right,
    observations,
    clocks: observations.filter(({ kind }) => kind === 'lst'),
    displays: observations.filter(({ kind }) => kind !== 'landed'),
    landings: observations.filter(({ kind }) => kind === 'landed'),
    logFirst: ({ prior }, share) => Math.log(prior * share),
    logSecond: (first, mistake, share) => Math.log((secondRate(first, mistake) * mistake.prior * share) / allPrior),
    add: (weighed) => {
      const key = weighed.parts.map(({ id }) => id).join('+');
      const known = byCause.get(key);
      if (known === undefined) byCause.set(key, [weighed]);
      else known.push(weighed);
      top = Math.max(top, weighed.logWeight);
    },
    isHopeless: (logWeight) => logWeight < top - HOPELESS,
  };
  const entryMistakes = mistakes.filter(({ kind }) => kind !== 'mount');
  const allRight: Entry = {
    part: null,
    mistake: null,
    belief: right,
    logPrior: 0,
    logShown: fitTo(scales, right, scales.displays),
  };
  const definite = weighEntries(scales, entryMistakes);
  const amounts = weighAmounts(scales, entryMistakes);
  const mountMistakes = mistakes.filter(({ kind }) => kind === 'mount');
  // One mistake before any two: what explains all alone makes most of those hopeless.
  for (const mistake of mountMistakes) {
    weighMountForms(scales, mistake, [allRight]);
    weighMountSizes(scales, mistake, [allRight]);
  }
  weighTwoEntries(scales, definite, entryMistakes);
  // Nothing but a landing speaks of the mount: without one, a wrong entry needs no mistake of the mount beside it.
  const beside = scales.landings.length === 0 ? [] : [...definite, ...amounts];
  const wrong = beside.sort((a, b) => b.logPrior + b.logShown - a.logPrior - a.logShown);
  for (const mistake of mountMistakes) {
    // Which of many stars was meant is open enough by itself.
    const isOpen = mistake.id === 'wrong-star' && circumstances.alignedOn === null;
    weighMountForms(scales, mistake, isOpen ? [] : wrong);
    weighMountSizes(scales, mistake, wrong.slice(0, ENTRIES_WITH_SIZES));
  }
  weighTwoOfMount(scales, mountMistakes, allRight);
  return [...byCause.values()].map((forms) => ({
    ...forms.reduce((best, form) => (form.logWeight > best.logWeight ? form : best)),
    logWeight: logSum(forms.map(({ logWeight }) => logWeight)),
  }));
};
