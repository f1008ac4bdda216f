/** A town told by its bare name, in a walk or after a question that wants a site. Places and their people: GeoNames, as shipped. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { realDeps } from '../commands/real-deps.js';
import { member, NOW } from './console-walk.js';

const said = (deps: Deps, name: string, line: string): Promise<Outcome> =>
  runLine(deps, line, {
    asker: member(name),
    nowUtcMs: NOW,
    onError: (error) => {
      throw error as Error;
    },
  });
const talk = async (name: string, ...lines: readonly string[]): Promise<Outcome> => {
  const deps = await realDeps();
  let last: Outcome | undefined;
  for (const line of lines) last = await said(deps, name, line);
  if (last === undefined) throw new Error('nothing was said');
  return last;
};
const allOf = (outcome: Outcome): string =>
  isProblem(outcome)
    ? outcome.message
    : [outcome.title, outcome.summary, ...outcome.facts.map(({ value }) => value), ...outcome.notes].join(' ');

describe('a town by its bare name', () => {
  it.each([
    ['Hexham', 'where is jupiter', 'hexham'],
    ['Whitby', "what's up tonight", 'whitby'],
    ['Leeds', 'when does saturn set', 'leeds england'],
    ['Mold', 'when is it dark', 'mold'],
  ])('answers the question that waits for a site: %s', async (town, question, told) => {
    const reply = await talk('Hesketh', question, told);
    expect(isProblem(reply) ? reply.problem : 'answered').toBe('answered');
    expect(allOf(reply)).toContain(town);
    expect(allOf(reply)).toMatch(/kept as your site/iu);
  });

  it.each(['york', 'ely'])('is asked which, where several are called so: %s', async (town) => {
    const reply = await talk('Hesketh', 'where is jupiter', town);
    expect(isProblem(reply) ? reply.problem : '').toBe('ambiguous-place');
  });

  it('answers it beside a walk too, which waits on', async () => {
    const reply = await talk(
      'Hesketh',
      'windows, usb adapter at the handset, no connection',
      'where is saturn',
      'leeds',
    );
    expect(allOf(reply)).toMatch(/Saturn.*Leeds.*walk still waits/su);
  });

  it.each(['mars', 'vega', 'tomorrow', 'same', 'no'])('is no town of that name: %s', async (word) => {
    const reply = await talk('Hesketh', 'where is jupiter', word);
    expect(allOf(reply)).not.toMatch(/kept as your site/iu);
  });

  const NUMBERS = 'vega; about 15 degrees east of it; shown 41, 135; lst 18:22';
  it('completes the numbers of a miss that were told without one', async () => {
    const asked = 'all gotos miss by the same amount';
    const waiting = await talk('Hesketh', asked, NUMBERS);
    expect(allOf(waiting)).toContain('No site is known yet');
    const reply = await talk('Hesketh', asked, NUMBERS, 'hexham');
    expect(allOf(reply)).toContain('Kept as your site: Hexham');
    expect(isProblem(reply) ? {} : reply.data['step']).not.toMatchObject({ id: 'numbers' });
  });

  it('is kept where the numbers of a miss are asked for, whose question is not put off for it', async () => {
    const reply = await talk('Hesketh', 'all gotos miss by the same amount', 'ely', 'ely, england');
    expect(allOf(reply)).toContain('Kept as your site: Ely, England');
    expect(isProblem(reply) ? {} : reply.data['step']).toMatchObject({ id: 'numbers' });
  });

  it('is left alone where a site bears on nothing', async () => {
    const reply = await talk('Hesketh', 'windows, usb adapter at the handset, no connection', 'mold');
    expect(allOf(reply)).not.toMatch(/kept as your site/iu);
  });
});
