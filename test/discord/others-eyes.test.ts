/**
 * What others in a Discord channel see of a member, and what they can do to one: nothing of what only the member may see is sent where a
 * stranger reads it, and no forged, foreign or late button reaches another's rows.
 */
import { ButtonStyle, ComponentType } from 'discord-api-types/v10';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Message } from '../doubles/discord/world.js';
import type { Member } from '../doubles/discord/members.js';
import type { OptionValue } from '../doubles/discord/people-and-files.js';
import { formId } from '../../bot/platforms/discord/write/write-form.js';
import { start, type Started } from './start-bot.js';

let at: Started;
let tamsin: Member;
let mbali: Member;
let stranger: Member;

/** Alike but for what they keep. */
const KEPT: readonly (readonly (readonly [string, Record<string, OptionValue>])[])[] = [
  [
    ['site', { action: 'add', name: 'Garden', position: '52.71,0.12', horizon: '0:5, 90:20' }],
    ['site', { action: 'add', name: 'Larkfold', position: '51.05,-114.07' }],
    ['remind', { target: 'NGC 7331', above: 30, site: 'Larkfold' }],
    ['gear', { mount: 'fork' }],
    ['triage', { text: 'the port is not in the list' }],
  ],
  [
    ['site', { action: 'add', name: 'Garden', position: '-33.9,18.42' }],
    ['site', { action: 'add', name: 'Meadow', position: '69.65,18.96' }],
    ['remind', { when: 'sunrise', site: 'Meadow' }],
    ['gear', { mount: 'altaz' }],
    ['triage', { text: 'it lands 15 degrees away' }],
  ],
];

beforeAll(async () => {
  at = await start({
    tuning: { perMember: { burst: 1000, perSecond: 1000 }, perChannel: { burst: 1000, perSecond: 1000 } },
  });
  [tamsin, mbali, stranger] = ['Tamsin', 'Mbali', 'Ingo'].map((name) => at.double.member(name)) as [
    Member,
    Member,
    Member,
  ];
  for (const [i, member] of [tamsin, mbali].entries())
    for (const [command, options] of KEPT[i] ?? []) await member.slash(command, options, { in: 'direct' });
});
afterAll(async () => {
  const { violations } = at.double.rest;
  await at.stop();
  expect(violations).toEqual([]);
});

/** All that a stranger reads in the server, in channels and threads, but for who is named and what is drawn by lot. */
const readByStranger = (who: Member): string => {
  const { world } = at.double;
  const shown = [...world.messages.values()].filter(
    (message) =>
      !message.isDeleted && message.onlyFor === null && world.channels.get(message.channelId)?.guildId !== null,
  );
  return JSON.stringify(
    shown.map(({ content, embeds, components, attachments }) => ({
      content,
      embeds,
      components,
      attachments: attachments.map(({ description, bytes }) => [description, bytes.length]),
    })),
  )
    .replaceAll(who.person.id, 'ID')
    .replaceAll(who.person.name, 'NAME')
    .replaceAll(/walk:[a-z0-9]+/gu, 'LOT');
};
const afresh = (): void => at.double.world.messages.clear();

/** A message as a changed client might send it back: any id on its button. */
const forged = (message: Message, customId: string): Message => ({
  ...message,
  components: [
    {
      type: ComponentType.ActionRow,
      components: [{ type: ComponentType.Button, style: ButtonStyle.Secondary, label: 'Forged', custom_id: customId }],
    },
  ],
});

const LOG = { filename: 'kernel.log', contentType: 'text/plain', bytes: Buffer.from('usb 1-1: error -71\n'.repeat(3)) };
type Doing = readonly [string, (who: Member) => Promise<unknown>];
const DOINGS: readonly Doing[] = [
  ['up', (who) => who.slash('up', { target: 'M13' })],
  ['sun', (who) => who.slash('sun', { target: 'Venus', site: '52.7,0.1' })],
  ['a name of theirs', (who) => who.slash('altitude', { target: 'Vega', site: 'Garden' })],
  ['a name of one of them', (who) => who.slash('dark', { site: 'Larkfold' })],
  ['their sites', (who) => who.slash('site')],
  ['a site that is not', (who) => who.slash('site', { action: 'show', name: 'x' })],
  ['a reminder that cannot be', (who) => who.slash('remind', { target: 'M13', above: 89 })],
  ['their reminders', (who) => who.slash('remind', { action: 'list' })],
  ['meridian', (who) => who.slash('meridian', { target: 'M31', site: '52.7,0.1' })],
  ['alignment', (who) => who.slash('alignment', { site: '52.7,0.1' })],
  ['moon', (who) => who.slash('moon')],
  ['moons', (who) => who.slash('moons', { site: '52.7,0.1' })],
  ['ahead', (who) => who.slash('ahead', { kind: 'saturdays' })],
  ['drift', (who) => who.slash('drift', { where: 'meridian', by: 'N 4' })],
  ['causes', (who) => who.slash('causes').catch(() => 'not offered')],
  ['mydata', (who) => who.slash('mydata')],
  ['forget', (who) => who.slash('forget')],
  ['a paste', (who) => who.slash('triage', { text: 'no port' })],
  ['a file', (who) => who.slash('triage', { file: LOG })],
  [
    'a form',
    async (who) => {
      const { message } = await who.slash('help');
      await who.fillIn(forged(message, `0:?${formId('paste', 'triage')}`), 'Forged', { text: 'no port' });
    },
  ],
  ['the menu on a member', (who) => stranger.menu('Help with connection', who)],
  [
    'the menu on a message',
    (who) => stranger.menu('Help with connection', who.write('the port is gone', at.double.channel, [LOG])),
  ],
];

describe('what a stranger reads', () => {
  it.each(DOINGS)('of %s is the same whoever asked, whatever they keep', async (_what, ask) => {
    const read: string[] = [];
    for (const who of [tamsin, mbali]) {
      afresh();
      await ask(who);
      read.push(readByStranger(who));
    }
    expect(read[1]).toBe(read[0]);
    for (const secret of ['Garden', 'Larkfold', 'Meadow', '51.05', '69.65']) expect(read[0]).not.toContain(secret);
  });

  it('in the suggestions while typing is their own alone', async () => {
    const values = async (who: Member, command: string, option: string): Promise<string> =>
      JSON.stringify((await who.complete(command, option, '')).choices);
    for (const [command, option] of [
      ['site', 'name'],
      ['remind', 'id'],
      ['dark', 'site'],
    ] as const) {
      const seen = [await values(tamsin, command, option), await values(mbali, command, option)];
      expect(await values(stranger, command, option)).not.toMatch(/Garden|Larkfold|Meadow|NGC/u);
      expect(seen[0]).not.toContain('Meadow');
      expect(seen[1]).not.toContain('Larkfold');
    }
    expect(await values(tamsin, 'site', 'name')).toContain('Garden');
  });
});

const keptOf = (who: Member): Promise<unknown> => at.store.exportMember(`discord:${who.person.id}`);

describe('a forged button', () => {
  it("reaches nobody else's rows and grants nothing", async () => {
    const { reminders, walks } = (await keptOf(tamsin)) as {
      reminders: readonly { readonly id: string }[];
      walks: readonly { readonly id: string }[];
    };
    const [reminderId, walkId] = [reminders[0]?.id ?? '', walks[0]?.id ?? ''];
    expect(reminderId).not.toBe('');
    expect(walkId).not.toBe('');
    await at.store.sites.put(
      { kind: 'club', id: `discord:${at.double.guild.id}` },
      {
        name: 'Fenwold Common',
        latitudeDeg: 52.7,
        longitudeDeg: 0.1,
        elevationM: 0,
        zone: 'Europe/London',
        horizon: null,
        isDefault: true,
      },
    );
    // What the stranger asked of her before goes with them.
    await stranger.slash('forget', { confirm: true });
    const before = await keptOf(tamsin);
    const { message } = await stranger.slash('help');
    for (const line of [
      `remind cancel id:${reminderId}`,
      `triage walk:${walkId} do:summary`,
      `triage walk:${walkId} do:end`,
      `triage walk:${walkId} do:accept answer:00000000`,
      `triage walk:${walkId} answer:x.y`,
      'site show name:Garden',
      'site remove name:"Fenwold Common" for:club',
      'causes reset:yes',
      'mydata',
      'forget confirm:yes',
      'nonsense',
      `?${formId('nonsense', 'triage')}`,
      `?${formId('paste', 'forget confirm:yes')}`,
      '?',
      '',
    ]) {
      const seen = await stranger
        .press(forged(message, `0:${line}`), 'Forged')
        .catch((error: unknown) => String(error));
      expect(JSON.stringify(seen), line).not.toMatch(/port is not in the list|52\.71|fault of mine/u);
    }
    // A form opens for anyone, and takes nothing for another's walk.
    const filled = await stranger.fillIn(forged(message, `0:?${formId('paste', `triage walk:${walkId}`)}`), 'Forged', {
      text: 'no port',
    });
    expect(filled.message.content + JSON.stringify(filled.message.embeds)).toContain('Only the one whose mount it is');
    expect(await keptOf(tamsin)).toEqual(before);
    expect(await at.store.sites.list({ kind: 'club', id: `discord:${at.double.guild.id}` })).toHaveLength(1);
    expect(at.bot.health().ok).toBe(true);
  });

  it('or an old one, after a member has had all removed, brings nothing of theirs back', async () => {
    const { message } = await tamsin.slash('triage', {}, { in: 'direct' });
    await tamsin.slash('forget', { confirm: true });
    const late = await tamsin.press(message, 'Not sure');
    expect(late.message.content + JSON.stringify(late.message.embeds)).toContain('I know no walk');
    expect(await keptOf(tamsin)).toMatchObject({ sites: [], reminders: [], walks: [], gear: null });
  });
});
