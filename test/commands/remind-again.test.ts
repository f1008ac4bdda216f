/** Reminders that come again, wait for what the sky's calendar has, or are of the Sun by what is to be done then. */
import { describe, expect, it } from 'vitest';
import { nextDueAfter, staleUtcMsOf } from '../../bot/reminders/repeats.js';
import { whatToSay } from '../../bot/reminders/what-to-say.js';
import { nextWeekly, readWeekly, type Weekly } from '../../bot/reminders/weekly.js';
import { answer, ODALYS, realDeps, refusal } from './real-deps.js';

// A Friday.
const NOW = Date.UTC(2026, 10, 27, 19, 30);
const HOUR = 3_600_000;
const deps = await realDeps({ clubSiteText: '52.2,-1.1' });
let count = 0;
const asker = () => ({ ...ODALYS, memberId: `console:again-${(count += 1)}` });
const said = async (line: string) => answer(deps, line, NOW, asker());

const THURSDAYS: Weekly = { every: 'week', days: [4], hour: 19, minute: 30, zone: 'Europe/London' };

describe('an hour of some days of the week', () => {
  // By the calendar: 27 November 2026 is a Friday; London's clocks go on to summer time on 28 March 2027 and back on 31 October.
  it('is due on those days by the clocks of the place, in winter and summer', () => {
    expect(nextWeekly(THURSDAYS, NOW)).toBe(Date.UTC(2026, 11, 3, 19, 30));
    expect(nextWeekly(THURSDAYS, Date.UTC(2026, 11, 3, 19, 30))).toBe(Date.UTC(2026, 11, 10, 19, 30));
    expect(nextWeekly(THURSDAYS, Date.UTC(2027, 2, 26))).toBe(Date.UTC(2027, 3, 1, 18, 30));
    expect(nextWeekly({ ...THURSDAYS, days: [5], hour: 20 }, NOW)).toBe(Date.UTC(2026, 10, 27, 20, 30));
    expect(nextWeekly({ ...THURSDAYS, days: [5] }, NOW)).toBe(Date.UTC(2026, 11, 4, 19, 30));
  });

  it('an hour that the clocks leave out comes when they have gone on', () => {
    expect(nextWeekly({ ...THURSDAYS, days: [7], hour: 1 }, Date.UTC(2027, 2, 27))).toBe(Date.UTC(2027, 2, 28, 1, 30));
  });

  it('is of no use an hour later, and comes again all the same', () => {
    const reminder = {
      id: 'a',
      memberId: 'm',
      clubId: 'c',
      platform: 'console',
      channelId: 'c',
      to: 'member' as const,
      kind: 'hour' as const,
      dueUtcMs: NOW,
      staleUtcMs: null,
      repeat: { ...THURSDAYS },
      text: 'Club night.',
    };
    expect(staleUtcMsOf(reminder)).toBe(NOW + HOUR);
    expect(whatToSay(reminder, NOW)).toEqual({ say: 'Club night.', isMissed: false });
    expect(whatToSay(reminder, NOW + 2 * HOUR)).toEqual({ say: null });
    expect(nextDueAfter(reminder.repeat, NOW + 2 * HOUR)).toBe(Date.UTC(2026, 11, 3, 19, 30));
    expect(nextDueAfter(null, NOW)).toBeNull();
    expect(readWeekly({ ...THURSDAYS, days: [] })).toBeNull();
  });

  it.each([
    [
      'remind me every friday at 7 to charge the batteries',
      /^Every Friday at 19:00, to you: Charge the batteries\. Next on Fri 4 Dec/u,
    ],
    ['every thursday 19:30 remind me its club night', /^Every Thursday at 19:30, to you: It's club night\./u],
    ['remind me every night at 11 to cap the tube', /^Every day at 23:00, to you: Cap the tube\. Next on Fri 27 Nov/u],
    ['remind me on mondays and thursdays at 20:00 to check the mail', /^Every Monday and Thursday at 20:00/u],
  ])('%s', async (line, words) => {
    const { summary, data } = await said(line);
    expect(summary).toMatch(words);
    expect(data['repeats']).toBe(true);
  });

  it('asks for what is still to be said, and is never of a target', async () => {
    expect((await refusal(deps, 'remind me each week to back up my logs', NOW, asker())).message).toMatch(
      /^At what hour/u,
    );
    expect((await refusal(deps, 'remind Jupiter at:21:00 nights:fri', NOW, asker())).problem).toBe('bad-option');
  });
});

describe('what the calendar of the sky has', () => {
  // The Geminids' maximum, solar longitude 262.2° (IMO): 14 December 2026; the Perseids' 140°: 13 August 2027.
  it.each([
    [
      'remind me when the Geminids peak',
      /^(?:Sun 13|Mon 14) Dec 2026, 1[67]:\d\d GMT, to you: The Geminids have their best/u,
    ],
    ['let me know when the perseids peak', /^(?:Thu 12|Fri 13) Aug 2027, 2\d:\d\d BST, to you: The Perseids/u],
    ['remind me at 9pm on the night of the geminids', /^(?:Sun 13|Mon 14) Dec 2026, 21:00 GMT/u],
    // The Moon's partial eclipse of 12 January 2028, 04:13 UT (NASA's catalogue, from memory).
    ['remind me when there is a lunar eclipse', /^Wed 12 Jan 2028, 02:4\d GMT, to you: Partial eclipse of the Moon/u],
  ])('%s', async (line, words) => expect((await said(line)).summary).toMatch(words));

  it('waits for no eclipse of the Sun', async () => {
    const { message, choices } = await refusal(deps, 'remind me of the solar eclipse', NOW, asker());
    expect(message).toMatch(/filter/u);
    expect(choices?.map(({ run }) => run)).toContain('ahead eclipses about:Sun');
  });
});

describe('a reminder that sends someone to the Sun by its words', () => {
  it.each([
    'remind me at noon to look at the sun',
    'remind me at noon to look at the sun through my telescope',
    'remind me at 1pm to photograph the sunspots',
    'remind me every day at noon to look at the sun',
    'remind me on saturdays at 11am to do solar imaging',
    'remind at:12:00 say:"show the kids the sun"',
    'remind at:12:00 nights:sat say:"the sun"',
  ])('has its warning, now and when it comes: %s', async (line) => {
    const { level, cautions, data } = await said(line);
    expect(level).toBe('danger');
    expect(cautions.join()).toContain('ISO 12312-2');
    expect(data['text']).toContain('ISO 12312-2');
  });

  it.each(['remind me at 9pm to charge the batteries', 'remind me at 9pm to look at Jupiter after the sun sets'])(
    'and no other: %s',
    async (line) => expect((await said(line)).cautions.join()).not.toContain('This is the Sun'),
  );
});

describe('calling one off by when it comes', () => {
  // By the calendar: 1 December 2026 is a Tuesday.
  it.each([
    ['cancel the tuesday one', /Call Bob/iu],
    ['cancel the 9pm one', /flask/u],
    ['cancel the tomorrow one', /flask/u],
    ['stop the m42 alert', /M 42/u],
  ])('%s', async (line, expected) => {
    const by = asker();
    for (const set of [
      'remind me at 9pm tomorrow to bring the flask',
      'remind me tuesday 8pm to call Bob',
      'remind M 42 above:25',
    ])
      await answer(deps, set, NOW, by);
    expect((await answer(deps, line, NOW, by)).summary).toMatch(expected);
  });

  it('asks which where two come on that day', async () => {
    const by = asker();
    await answer(deps, 'remind me tuesday 8pm to call Bob', NOW, by);
    await answer(deps, 'remind me tuesday 9pm to ring Al', NOW, by);
    expect((await refusal(deps, 'cancel the tuesday one', NOW, by)).problem).toBe('which-reminder');
  });

  it.each(['remind me if its clear tonight', 'let me know when the sky clears', 'tell me when it stops raining'])(
    'the weather is not waited for: %s',
    async (line) => expect((await refusal(deps, line, NOW, asker())).message).toMatch(/cannot wait for it/u),
  );
});
