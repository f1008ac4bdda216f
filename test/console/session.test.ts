import { describe, expect, it } from 'vitest';
import { isProblem, problem } from '../../bot/ground/problem.js';
import { realDeps } from '../commands/real-deps.js';
import { choice, defineCommand, member, optional, text, type Deps } from '../../bot/commands/core/command.js';
import { consoleSession } from '../../bot/platforms/console/session.js';
import { NOWHERE, reply, type Outcome } from '../../bot/reply/reply.js';

const echo = defineCommand({
  name: 'echo',
  summary: 'Says it again',
  examples: ['echo hello'],
  options: { words: text('What'), mood: optional(choice('How', ['glad', 'grave'])) },
  run: async (_deps, { options }): Promise<Outcome> => {
    if (options.words === 'many')
      return problem('which', 'Which?', [
        { label: 'One', run: 'echo one' },
        { label: 'Two', run: 'echo two' },
      ]);
    if (options.words === 'boom') throw new Error('secret detail at /root/place');
    return reply({ pointsAt: NOWHERE, title: 'echo', summary: options.words });
  },
});
const whom = defineCommand({
  name: 'whom',
  summary: 'Says who asks about whom',
  examples: ['whom for:Tamsin'],
  options: { for: member('Whom') },
  run: async (_deps, { options, asker }): Promise<Outcome> =>
    reply({
      pointsAt: NOWHERE,
      title: 'whom',
      summary: `${asker.memberId} (${asker.displayName}) about ${options.for}`,
      choices: [{ label: 'Again', run: 'whom for:ravi' }],
    }),
});
const { catalogue } = await realDeps();
const errors: unknown[] = [];
const session = () =>
  consoleSession(
    { commands: [echo, whom], catalogue, store: {} } as unknown as Deps,
    () => 0,
    (error) => errors.push(error),
  );
const said = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.summary);

describe('a conversation on the console', () => {
  it('lets a number pick from what was last offered, and keeps the offer through a slip', async () => {
    const { answer } = session();
    expect(said(await answer('echo many'))).toBe('Which?');
    expect(said(await answer('7'))).toContain('from 1 to 2');
    expect(said(await answer('ecko x'))).toContain('Did you mean echo?');
    expect(said(await answer(' 2 '))).toBe('two');
    expect(said(await answer('1'))).toContain('nothing to choose from');
  });

  it('lets several members share a machine, each by name, and keeps what was offered for the next to answer', async () => {
    const { answer } = session();
    expect(said(await answer('whom for:@Tamsin'))).toBe('console:local (you) about console:tamsin');
    expect(said(await answer('as Tamsin'))).toContain('Tamsin speaks from now on');
    expect(said(await answer('1'))).toBe('console:tamsin (Tamsin) about console:ravi');
    expect(said(await answer('whom for:me'))).toBe('console:tamsin (Tamsin) about console:tamsin');
    expect(said(await answer('/as me'))).toContain('You speak');
    expect(said(await answer('whom for:Tamsin'))).toBe('console:local (you) about console:tamsin');
    expect(said(await answer('astray'))).toMatch(/no command|do not know/u);
  });

  it('hears a number with words round it, asks which of two, and keeps what was offered', async () => {
    const { answer } = session();
    await answer('echo many');
    expect(said(await answer('1 or 2'))).toBe(
      'Which fits best? 1: One; 2: Two. Type one of the numbers, or tell me what you see.',
    );
    expect(said(await answer('the third'))).not.toContain('from 1 to');
    expect(said(await answer('the second i think'))).toBe('two');
  });

  it('takes a sentence that begins with "as" for no name', async () => {
    const { answer } = session();
    expect(said(await answer('As I said: attached, then gone'))).not.toContain('speaks from now on');
    expect(said(await answer('whom for:me'))).toContain('console:local');
  });

  it('apologises for a fault of its own without showing it', async () => {
    const outcome = await session().answer('echo boom');
    expect(said(outcome)).toMatch(/^Sorry/u);
    expect(said(outcome)).not.toContain('secret');
    expect(errors).toHaveLength(1);
  });

  it('completes commands, option names and option values', async () => {
    const { complete } = session();
    expect(await complete('ec')).toEqual([['echo '], 'ec']);
    expect(await complete('echo hello mo')).toEqual([['mood:'], 'mo']);
    expect(await complete('echo hello mood:g')).toEqual([['glad ', 'grave '], 'g']);
    expect(await complete('nothing x')).toEqual([[], '']);
    const real = consoleSession(
      await realDeps(),
      () => 0,
      () => undefined,
    );
    expect(await real.complete('altitude betelg')).toEqual([['Betelgeuse '], 'betelg']);
    expect(await real.complete('altitude Betelgeuse si')).toEqual([['site:'], 'si']);
    expect((await real.complete('altitude Betelgeuse site:dunedin'))[0]).toContain('"Dunedin, Otago, NZ" ');
  });
});

describe('what was offered to one', () => {
  const offering = defineCommand({
    name: 'gear',
    summary: 'Keeps something of whoever asks',
    examples: ['gear'],
    options: { keep: optional(text('What')) },
    run: async (_deps, { options, asker }): Promise<Outcome> =>
      reply({
        pointsAt: NOWHERE,
        title: 'gear',
        summary: options.keep === undefined ? 'Which?' : `${asker.displayName} keeps ${options.keep}`,
        choices: [
          { label: 'A lamp', run: 'gear keep:lamp' },
          { label: 'Say it', run: 'echo lamp' },
        ],
      }),
  });
  const room = () =>
    consoleSession(
      { commands: [echo, offering], catalogue, store: {} } as unknown as Deps,
      () => 0,
      (error) => errors.push(error),
    );

  it("is not kept of another who types its number, and the one's own number still is", async () => {
    const { answer } = room();
    await answer('as Tamsin');
    await answer('gear');
    await answer('as Ravi');
    const refused = await answer('1');
    expect(isProblem(refused) ? refused.problem : refused.summary).toBe('not-offered-to-you');
    await answer('as Tamsin');
    expect((await answer('1')) as { summary?: string }).toMatchObject({ summary: 'Tamsin keeps lamp' });
  });

  it('may be looked at by another', async () => {
    const { answer } = room();
    await answer('as Tamsin');
    await answer('gear');
    await answer('as Ravi');
    expect((await answer('2')) as { summary?: string }).toMatchObject({ summary: 'lamp' });
  });
});
