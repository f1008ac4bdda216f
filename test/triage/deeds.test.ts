/** Whether the phrases that members put a remedy in tell it apart from the others': each is held against all faults, on the ways it can be on. */
import { describe, expect, it } from 'vitest';
import { assess, remediesTold, startWalk } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

const toldFirst = (fault: string, phrase: string): boolean => {
  const { only } = model.fault(fault) ?? {};
  const path = only?.paths?.[0] ?? 'controller-serial';
  const system = only?.systems?.[0] ?? 'windows';
  const at = assess(model, startWalk({ member: 'Tova', helper: null }, { path, system }));
  const told = remediesTold(model, at, `${phrase}, and it works now`);
  const own = told.find((one) => one.fault.id === fault);
  return own !== undefined && own.told >= (told[0]?.told ?? 0);
};

describe('phrases of what was done', () => {
  it('stand for every fault', () => {
    const silent = model.faults.filter(({ id }) => model.reading.deeds(id).length === 0).map(({ id }) => id);
    expect(silent).toEqual([]);
  });

  // The phrases are our own; of two that fit one deed ("another usb cable") only one can be first.
  it('tell their own fault apart', () => {
    const firsts = model.faults.map(({ id }) => ({ id, phrase: model.reading.deeds(id)[0] ?? '' }));
    const missed = firsts
      .filter(({ id, phrase }) => !toldFirst(id, phrase))
      .map(({ id, phrase }) => `${id}: ${phrase}`);
    expect(missed).toEqual([]);
  });
});
