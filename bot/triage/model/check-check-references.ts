/** The references of one check: its answers, stages, links, the faults it speaks of and the coarser check it refines. */
import {
  cautionsExist,
  faultExists,
  linkExists,
  needsExist,
  oddsFit,
  onlyExists,
  stageExists,
  type References,
} from './references.js';
import type { CheckEntry } from './schema.js';

const answersOf = ({ answers }: CheckEntry): ReadonlySet<string> => new Set(answers.map(({ id }) => id));

const checkFaultTables = (known: References, check: CheckEntry): void => {
  for (const [fault, odds] of Object.entries(check.under ?? {})) {
    faultExists(known, 'checks', check.id, ['under', fault], fault);
    oddsFit(known, ['checks', check.id], ['under', fault], check.id, odds);
  }
  for (const field of ['leans', 'adds'] as const) {
    for (const [answer, faults] of Object.entries(check[field] ?? {})) {
      oddsFit(known, ['checks', check.id], [field, answer], check.id, answer);
      for (const fault of Object.keys(faults)) faultExists(known, 'checks', check.id, [field, answer, fault], fault);
    }
  }
};

const checkContrast = (known: References, check: CheckEntry): void => {
  const { contrast } = check;
  if (contrast === undefined) return;
  for (const side of ['works', 'fails'] as const) {
    for (const [answer, links] of Object.entries(contrast[side] ?? {})) {
      oddsFit(known, ['checks', check.id], ['contrast', side, answer], check.id, answer);
      for (const link of links) linkExists(known, 'checks', check.id, ['contrast', side, answer], link);
    }
  }
  for (const link of contrast.partly ?? []) linkExists(known, 'checks', check.id, ['contrast', 'partly'], link);
  const spoken = new Set([
    ...Object.keys(contrast.works ?? {}),
    ...Object.keys(contrast.fails ?? {}),
    ...(contrast.silent ?? []),
  ]);
  for (const answer of answersOf(check))
    if (!spoken.has(answer))
      known.complain('checks', check.id, ['contrast'], `it does not say what the answer "${answer}" means`);
};

const checkRefines = (known: References, check: CheckEntry): void => {
  if (check.refines === undefined) return;
  const own = answersOf(check);
  oddsFit(known, ['checks', check.id], ['refines', 'answers'], check.refines.check, {
    ...Object.fromEntries(Object.keys(check.refines.answers).map((answer) => [answer, 0])),
  });
  for (const [answer, finer] of Object.entries(check.refines.answers))
    for (const id of Object.keys(finer))
      if (!own.has(id))
        known.complain('checks', check.id, ['refines', 'answers', answer], `it has no answer "${id}" of its own`);
};

const checkStages = (known: References, check: CheckEntry): void => {
  const own: readonly ['checks', string] = ['checks', check.id];
  stageExists(known, 'checks', check.id, ['stage'], check.stage);
  for (const [stage, odds] of Object.entries(check.byStage ?? {})) {
    stageExists(known, 'checks', check.id, ['byStage', stage], stage);
    oddsFit(known, own, ['byStage', stage], check.id, odds);
  }
  for (const [answer, stage] of Object.entries(check.stops ?? {})) {
    stageExists(known, 'checks', check.id, ['stops', answer], stage);
    oddsFit(known, own, ['stops'], check.id, answer);
  }
  if (check.reach !== undefined) stageExists(known, 'checks', check.id, ['reach'], check.reach);
};

/** The other checks that say whether this one is asked. */
const checkOtherLooks = (known: References, check: CheckEntry): void => {
  const own: readonly ['checks', string] = ['checks', check.id];
  const { after, inUse, secondLook } = check;
  for (const field of ['proved', 'anew'] as const)
    for (const said of inUse?.[field] ?? [])
      for (const answer of said.answers) oddsFit(known, own, ['inUse', field], said.check, answer);
  for (const barred of check.barredBy ?? [])
    for (const answer of barred.answers) oddsFit(known, own, ['barredBy'], barred.check, answer);
  if (secondLook !== undefined)
    for (const [other, answers] of [
      [secondLook.of, secondLook.answers] as const,
      ...Object.entries(secondLook.also ?? {}),
    ])
      for (const answer of answers) oddsFit(known, own, ['secondLook'], other, answer);
  if (after !== undefined) for (const answer of after.answers) oddsFit(known, own, ['after'], after.check, answer);
};

/** Answers that settle other checks: theirs exist, none keeps gear from harm, and no answer settles a check twice. */
const checkSettles = (known: References, check: CheckEntry): void => {
  const own: readonly ['checks', string] = ['checks', check.id];
  const said = new Set<string>();
  for (const [i, { when, then }] of (check.settles ?? []).entries()) {
    for (const answer of when) oddsFit(known, own, ['settles', i, 'when'], check.id, answer);
    for (const [other, answer] of Object.entries(then)) {
      oddsFit(known, own, ['settles', i, 'then', other], other, answer);
      const complain = (what: string): void => known.complain('checks', check.id, ['settles', i, 'then', other], what);
      if (other === check.id) complain('it is this very check');
      if (known.guards.has(other)) complain(`"${other}" keeps gear from harm, and is always looked at`);
      for (const one of when) {
        if (said.has(`${one} ${other}`)) complain(`what "${one}" says of "${other}" stands there twice`);
        said.add(`${one} ${other}`);
      }
    }
  }
};

export const checkCheckReferences = (known: References, check: CheckEntry): void => {
  const own: readonly ['checks', string] = ['checks', check.id];
  onlyExists(known, 'checks', check.id, check.only);
  needsExist(known, 'checks', check.id, check.needs);
  for (const { id, lacks } of check.answers)
    if (lacks !== undefined) needsExist(known, 'checks', check.id, [lacks], ['answers', id, 'lacks']);
  cautionsExist(known, own, ['cautions'], check.cautions);
  oddsFit(known, own, ['good'], check.id, check.good);
  if (check.usual !== undefined) oddsFit(known, own, ['usual'], check.id, check.usual);
  if (check.bad !== undefined) oddsFit(known, own, ['bad'], check.id, check.bad);
  if (check.bad === check.good) known.complain('checks', check.id, ['bad'], 'the bad answer is the good one');
  if (answersOf(check).size < check.answers.length)
    known.complain('checks', check.id, ['answers'], 'two answers have the same id');
  if (answersOf(check).has('unsure'))
    known.complain('checks', check.id, ['answers'], 'the answer "unsure" is added to every check; leave it out');
  checkStages(known, check);
  checkOtherLooks(known, check);
  checkSettles(known, check);
  checkFaultTables(known, check);
  checkContrast(known, check);
  checkRefines(known, check);
};
