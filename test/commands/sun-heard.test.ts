/** Lines of strangers that came near the Sun unheard. The sentences are our own; what each must be told is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { ask, ODALYS, realDeps } from './real-deps.js';

const deps = await realDeps();
const BY_DAY = Date.UTC(2026, 10, 27, 22); // 08:00 at Brisbane, the Sun high
const shown = (outcome: Outcome): string =>
  isProblem(outcome)
    ? outcome.message
    : [outcome.title, outcome.summary, ...outcome.cautions, ...outcome.notes].filter(Boolean).join(' ');

let members = 0;
const said = async (site: string, line: string, nowUtcMs = BY_DAY): Promise<string> => {
  members += 1;
  const who = { ...ODALYS, memberId: `console:sunheard${members}`, channelId: `sunheard${members}` };
  await ask(deps, `my site is ${site}`, nowUtcMs, who);
  return shown(await ask(deps, line, nowUtcMs, who));
};

describe('by day', () => {
  it.each(['take the cap off', 'C11 cap off to cool now', 'can i remove the dust cover'])(
    'a tube stays capped: %s',
    async (line) => {
      expect(await said('Brisbane, Australia', line)).toMatch(/^No: while the Sun is up, cap/u);
    },
  );

  it('is not meant at night', async () => {
    expect(await said('Brisbane, Australia', 'take the cap off tonight to cool')).not.toMatch(/^No: while the Sun/u);
  });
});

describe('the Sun', () => {
  it.each(['sol', 'tengo un filtro de sol que se enrosca en el ocular, sirve?'])(
    'is itself in Spanish, and no nebula: %s',
    async (line) => {
      const told = await said('Seville, Spain', line);
      expect(told).not.toMatch(/Soul/u);
      expect(told).toMatch(/Never a filter at the eyepiece|solar filter/u);
    },
  );

  it.each([
    'mi hijo ha mirado al sol y ve una mancha',
    'what did he see if he sees spots after looking at sun',
    'mein sohn sieht einen fleck, er hat in die sonne geschaut',
  ])('sends to a doctor who sees a spot since: %s', async (line) => {
    expect(await said('Seville, Spain', line)).toMatch(/doctor today/u);
  });

  it.each([
    'puedo ver la puesta de sol con los prismaticos?',
    'can we use the selfie cam to watch the eclipse',
    'white light filter at C2 when off',
    'remove filter at C2?',
  ])('is looked at only with a filter: %s', async (line) => {
    expect(await said('Seville, Spain', line)).toMatch(/filter/u);
  });
});

describe('minutes before sunrise', () => {
  // Sunrise at Leeds on 28 Nov 2026 is at 07:54 to 07:56 by two almanac reckonings; Mercury stands 18° west of the Sun.
  const EVENING = Date.UTC(2026, 10, 27, 22);
  it('a search near the Sun is over', async () => {
    const told = await said('Leeds, England', 'can we see mercury at 7:50 tomorrow with binos', EVENING);
    expect(told).toMatch(/No, too near sunrise/u);
    expect(told).toMatch(/Stop searching by 07:3\d/u);
  });

  it('it was not half an hour before', async () => {
    expect(await said('Leeds, England', 'can we see mercury at 7:20 tomorrow with binos', EVENING)).toMatch(/Yes, 8°/u);
  });
});

describe('a target in quotes', () => {
  it('is the target, and its options after it are no sentence', async () => {
    // "U Hya" is a star; read as a sentence it would be all of a constellation.
    const told = await said('York, England', 'sun "U Hya" site:23.70,-39.90 at:2027-05-04T12:00Z');
    expect(told).toMatch(/^The Sun and U H/u);
  });
});
