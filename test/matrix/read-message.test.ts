/** Which messages ask something of the bot, and what. Message shapes: Matrix specification 1.11, "Instant messaging", "Rich replies", "Threading", "Intentional mentions". */
import { describe, expect, test } from 'vitest';
import { askedIn, type Me } from '../../bot/platforms/matrix/answer/read-message.js';
import { BOT, event, ODALYS, said } from './events.js';

const me: Me = { userId: BOT, names: ['Pierhand', 'Pier'], prefix: '!pier' };
const line = (body: string, more = {}, isPrivate = false): string | null => {
  const asked = askedIn(said(body, more), me, isPrivate);
  return asked?.kind === 'line' ? asked.line : null;
};
const pill = (id: string, name: string): string => `<a href="https://matrix.to/#/${id}">${name}</a>`;
const html = (formatted: string) => ({ format: 'org.matrix.custom.html', formatted_body: formatted });
const mention = { 'm.mentions': { user_ids: [BOT] } };

describe('a message is for the bot', () => {
  test.each([
    ['!pier up NGC 7331', 'up NGC 7331'],
    ['  !PIER   up NGC 7331', 'up NGC 7331'],
    ['!pier: up NGC 7331', 'up NGC 7331'],
    ['!pier\nup NGC 7331', 'up NGC 7331'],
    ['!pier', 'help'],
    ['Pierhand: dark', 'dark'],
    ['pierhand, dark', 'dark'],
    ['@Pierhand: dark', 'dark'],
    [`${BOT} dark`, 'dark'],
    ['Pier: dark', 'dark'],
  ])('%j asks %j', (body, expected) => {
    expect(line(body)).toBe(expected);
  });

  test.each([
    'up NGC 7331',
    '!pierce up',
    '!pie up',
    'Pier was cold last night',
    'Pierhand is good',
    'I asked !pier up M27',
    'pierhandle: dark',
    '',
    '   ',
  ])('%j is not', (body) => {
    expect(line(body)).toBeNull();
  });

  test('a mention counts without a colon', () => {
    expect(line('Pierhand dark', { ...html(`${pill(BOT, 'Pierhand')} dark`), ...mention })).toBe('dark');
    expect(line('Pierhand dark', html(`${pill(encodeURIComponent(BOT), 'Pierhand')} dark`))).toBe('dark');
    expect(line('Pierhand dark', mention)).toBe('dark');
    // A mention further on is talk about the bot.
    expect(line('I asked Pierhand', { ...html(`I asked ${pill(BOT, 'Pierhand')}`), ...mention })).toBeNull();
  });

  test('mention pills of members become their ids', () => {
    expect(line('!pier triage for:Tamsin', html(`!pier triage for:${pill('@tamsin:example.org', 'Tamsin')}`))).toBe(
      'triage for:@tamsin:example.org',
    );
    expect(
      line('Pierhand: triage for:Tam &amp; co', {
        ...html(`${pill(BOT, 'Pierhand')}: triage for:${pill('@tamsin:example.org', 'Tam &amp;amp; co')}`),
        ...mention,
      }),
    ).toBe('triage for:@tamsin:example.org');
    // A link elsewhere is no member.
    expect(line('!pier up M27', html('!pier up <a href="https://example.org/#/@tamsin:example.org">M27</a>'))).toBe(
      'up M27',
    );
  });

  test('in a direct room everything is', () => {
    expect(line('up NGC 7331', {}, true)).toBe('up NGC 7331');
    expect(line('!pier up NGC 7331', {}, true)).toBe('up NGC 7331');
    expect(line('!pier', {}, true)).toBe('help');
  });

  test("the quote of an older client's reply is no part of it", () => {
    expect(line('> <@tamsin:example.org> !pier dark\n> and more\n\n!pier up M27')).toBe('up M27');
    expect(line('> <@tamsin:example.org> !pier dark\n\nthanks')).toBeNull();
  });
});

describe('never for the bot', () => {
  test.each([
    ['a notice', event('m.room.message', { msgtype: 'm.notice', body: '!pier up M27' })],
    ['an emote', event('m.room.message', { msgtype: 'm.emote', body: '!pier up M27' })],
    ['a video', event('m.room.message', { msgtype: 'm.video', body: '!pier up M27', url: 'mxc://x/y' })],
    ['its own message', event('m.room.message', { msgtype: 'm.text', body: '!pier up M27' }, { sender: BOT })],
    [
      'an edit',
      said('!pier up M27', {
        'm.relates_to': { rel_type: 'm.replace', event_id: '$x' },
        'm.new_content': { msgtype: 'm.text', body: '!pier up M27' },
      }),
    ],
    ['a body that is no text', event('m.room.message', { msgtype: 'm.text', body: 7 })],
    ['a redacted message', event('m.room.message', {})],
    ['a heart', event('m.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: '$x', key: '❤️' } })],
    [
      'its own reaction',
      event('m.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: '$x', key: '1️⃣' } }, { sender: BOT }),
    ],
    ['a membership', event('m.room.member', { membership: 'join' }, { state_key: ODALYS })],
  ])('%s', (_name, given) => {
    expect(askedIn(given, me, true)).toBeNull();
  });
});

describe('a number', () => {
  test.each(['2', ' 2 ', '2.', '#2', '2)'])('%j picks the second', (body) => {
    expect(askedIn(said(body), me, false)).toEqual({
      kind: 'number',
      number: 2,
      words: null,
      addressed: false,
      repliedTo: null,
      threadRoot: null,
    });
  });
  test.each(['2 maybe', 'the second', 'number 2 i think'])('%j picks it where it is said to the bot', (body) => {
    expect(askedIn(said(`!pier ${body}`), me, false)).toMatchObject({
      kind: 'number',
      number: 2,
      words: { text: body },
    });
    expect(askedIn(said(body), me, true)).toMatchObject({ kind: 'number', number: 2 });
    expect(askedIn(said(body), me, false)).toBeNull();
  });
  test.each(['!pier 2', 'Pierhand: 2'])('%j is said to the bot', (body) => {
    expect(askedIn(said(body), me, false)).toMatchObject({ kind: 'number', number: 2, addressed: true });
  });
  test("names what it answers by reply, not by a thread's stand-in", () => {
    const inThread = { rel_type: 'm.thread', event_id: '$root', 'm.in_reply_to': { event_id: '$last' } };
    expect(
      askedIn(said('2', { 'm.relates_to': { 'm.in_reply_to': { event_id: '$offer' } } }), me, false),
    ).toMatchObject({ repliedTo: '$offer', threadRoot: null });
    expect(askedIn(said('2', { 'm.relates_to': { ...inThread, is_falling_back: true } }), me, false)).toMatchObject({
      repliedTo: null,
      threadRoot: '$root',
    });
    expect(askedIn(said('2', { 'm.relates_to': { ...inThread, is_falling_back: false } }), me, false)).toMatchObject({
      repliedTo: '$last',
      threadRoot: '$root',
    });
  });
  test('others are talk', () => {
    for (const body of ['200', '2 of us', '-2', '2.5', 'two']) expect(askedIn(said(body), me, false)).toBeNull();
  });
});

// A pattern that backtracks would take minutes here and run into the test's time limit.
test('content that means harm is read without trouble', () => {
  const long = `<a href="https://matrix.to/#/${'@'.repeat(5000)}`.repeat(50);
  for (const formatted of [long, '<a '.repeat(20_000), `<mx-reply>${'<'.repeat(20_000)}`, '> '.repeat(20_000)]) {
    expect(askedIn(said(`!pier ${'x'.repeat(30_000)}`, html(formatted)), me, false)?.kind).toBe('line');
    expect(askedIn(said(formatted, html(formatted)), me, false)).toBeNull();
  }
});

describe('told rather than asked', () => {
  const thread = { 'm.relates_to': { rel_type: 'm.thread', event_id: '$root', is_falling_back: true } };
  test('a file or picture: by whom and where it was sent decides, not what is in it', () => {
    const picture = (more: Record<string, unknown> = {}) => said('screen.png', { msgtype: 'm.image', ...more });
    expect(askedIn(picture(), me, true)).toEqual({ kind: 'file', addressed: true, threadRoot: null });
    expect(askedIn(picture(thread), me, false)).toEqual({ kind: 'file', addressed: false, threadRoot: '$root' });
  });
  test('words in a thread, to nobody by name; elsewhere they are talk', () => {
    expect(askedIn(said('the port is not there', thread), me, false)).toEqual({
      kind: 'words',
      text: 'the port is not there',
      threadRoot: '$root',
    });
    expect(askedIn(said('the port is not there'), me, false)).toBeNull();
    expect(askedIn(said('the port is not there', thread), me, true)).toMatchObject({ kind: 'line' });
  });
});
