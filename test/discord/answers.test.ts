import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { parseLine } from '../../bot/commands/core/grammar.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { typedOptions } from '../doubles/discord/typed-options.js';
import type { Message } from '../doubles/discord/world.js';
import { labelsOn } from './labels-on.js';
import { start, type Started } from './start-bot.js';

const embedOf = (message: Message) => {
  const [embed] = message.embeds;
  if (embed === undefined) throw new Error(`no embed: ${message.content}`);
  return embed;
};

describe('members ask the real commands on Discord, through the real client', () => {
  let at: Started;
  beforeAll(async () => {
    at = await start({
      tuning: {
        deferAfterMs: 30_000,
        perMember: { burst: 1000, perSecond: 1000 },
        perChannel: { burst: 1000, perSecond: 1000 },
      },
    });
  });
  afterEach(() => {
    expect(at.double.rest.violations).toEqual([]);
    expect(at.double.rest.requests.filter(({ status }) => status >= 400)).toEqual([]);
  });
  afterAll(async () => {
    await at.stop();
  });

  it('/up: verdict, level in words, facts, and the chart with its words', async () => {
    const { message, firstResponseType } = await at.double.member('Odalys').slash('up', { target: 'NGC 7331' });
    const embed = embedOf(message);
    expect(firstResponseType).toBe(4);
    expect(embed.title).toContain('NGC 7331');
    expect(['Good', 'For information', 'Caution', 'Danger']).toContain(embed.author?.name);
    expect(embed.fields?.length).toBeGreaterThan(2);
    expect(embed.image?.url).toBe('attachment://chart.png');
    const [chart] = message.attachments;
    expect(chart?.contentType).toBe('image/png');
    // The eight bytes every PNG file begins with (ISO/IEC 15948, 5.2).
    expect(chart?.bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
    expect(chart?.description).toMatch(/NGC 7331.*°/u);
    expect(message.onlyFor).toBeNull();
  });

  it('completes targets as they are typed', async () => {
    const odalys = at.double.member('Odalys');
    const some = await odalys.complete('up', 'target', 'ngc 73');
    expect(some.choices.map(({ value }) => value)).toContain('NGC 7331');
    expect(some.choices.length).toBeLessThanOrEqual(25);
    const picked = await odalys.slash('up', {
      target: some.choices.find(({ value }) => value === 'NGC 7331')?.value ?? '',
    });
    expect(embedOf(picked.message).title).toContain('NGC 7331');
    expect((await odalys.complete('up', 'target', '')).choices.length).toBeGreaterThan(0);
  });

  it("completes places, and a member's own sites for that member alone", async () => {
    const { member, guild } = at.double;
    await at.store.sites.put(
      { kind: 'member', id: `discord:${member('Tamsin').person.id}` },
      {
        name: 'Quarry Field',
        latitudeDeg: 52.6,
        longitudeDeg: 0.3,
        elevationM: 40,
        zone: 'Europe/London',
        horizon: null,
        isDefault: false,
      },
    );
    await at.store.sites.put(
      { kind: 'club', id: `discord:${guild.id}` },
      {
        name: 'Cold Ridge',
        latitudeDeg: 52.7,
        longitudeDeg: 0.1,
        elevationM: 90,
        zone: 'Europe/London',
        horizon: null,
        isDefault: false,
      },
    );
    const values = async (name: string, partial: string) =>
      (await member(name).complete('up', 'site', partial, { target: 'M13' })).choices.map(({ value }) => value);
    expect(await values('Tamsin', 'quarry')).toContain('Quarry Field');
    expect(await values('Ravi', 'quarry')).not.toContain('Quarry Field');
    expect(await values('Ravi', 'cold')).toContain('Cold Ridge');
    expect((await values('Ravi', 'Calgar')).join()).toContain('Calgary');
  });

  it("shows an answer about a member's own site to that member alone", async () => {
    const { member, channel } = at.double;
    const seen = await member('Tamsin').slash('altitude', { target: 'M13', site: 'Quarry Field' });
    expect(seen.message.onlyFor).toBe(member('Tamsin').person.id);
    expect(member('Tamsin').sees(channel)).toContain(seen.message);
    expect(member('Ravi').sees(channel)).not.toContain(seen.message);
    expect(JSON.stringify(member('Ravi').sees(channel))).not.toMatch(/Quarry|52\.6/u);
    const everyone = await member('Tamsin').slash('altitude', { target: 'M13', site: 'Cold Ridge' });
    expect(member('Ravi').sees(channel)).toContain(everyone.message);
  });

  it('an unknown target is a private, kind error that offers what was meant; pressing it answers', async () => {
    const { member, channel } = at.double;
    const wrong = await member('Ingo').slash('up', { target: 'Androm' });
    expect(wrong.message.onlyFor).toBe(member('Ingo').person.id);
    expect(wrong.message.content.length).toBeGreaterThan(10);
    const [label = ''] = labelsOn(wrong.message);
    const answer = await member('Ingo').press(wrong.message, label);
    expect(embedOf(answer.message).title?.length).toBeGreaterThan(0);
    expect(answer.message.onlyFor).toBeNull();
    expect(member('Mbali').sees(channel)).toContain(answer.message);
  });

  it('what a member types comes back as plain text', async () => {
    const { message } = await at.double
      .member('Ingo')
      .slash('up', { target: '@everyone [x](https://example.org) **b**' });
    expect(message.content).toContain('everyone');
    expect(message.content.replace(/\\[^\p{L}\p{N}\s]/gu, '')).not.toMatch(/@|\*|\[|https?:/u);
  });

  it('answers in direct messages, where nothing needs hiding', async () => {
    const ravi = at.double.member('Ravi');
    const { message } = await ravi.slash('sidereal', {}, { in: 'direct' });
    expect(embedOf(message).description?.length).toBeGreaterThan(10);
    expect(ravi.sees('direct')).toContain(message);
  });

  it('answers a member who has the bot on their own account, in a server that does not have it', async () => {
    const { channel } = at.double.addGuild('A neighbouring club', false);
    // Such a server's events reach the bot through the installing member; the double sends them to the shard of that server all the same.
    const { message } = await at.double.member('Mbali').slash('dark', {}, { in: channel });
    expect(embedOf(message).title?.length).toBeGreaterThan(0);
  });

  it('offers the picks of the night as choices, each of which may be pressed', async () => {
    const mbali = at.double.member('Mbali');
    const night = await mbali.slash('tonight');
    const labels = labelsOn(night.message);
    expect(labels.length).toBeGreaterThan(1);
    const first = await mbali.press(night.message, labels[0] ?? '');
    const second = await at.double.member('Ravi').press(night.message, labels[1] ?? '');
    expect(embedOf(first.message).title).not.toBe(embedOf(second.message).title);
    expect(labelsOn(night.message)).toEqual(labels);
  });

  it('counts what it answered, and logs no site and no words of members', async () => {
    const { body } = await at.metrics.expose();
    expect(body).toMatch(
      /pierhand_answers_total\{platform="discord",command="up",outcome="(good|info|caution)"\} [1-9]/u,
    );
    expect(body).toMatch(/pierhand_answers_total\{platform="discord",command="up",outcome="problem"\} 2/u);
    expect(at.logged()).not.toMatch(/Quarry|Androm|52\.6|everyone \[/u);
  });

  it.each(allCommands.flatMap(({ name, examples }) => examples.map((example): [string, string] => [example, name])))(
    '%s, as a slash command',
    async (example, name) => {
      const parsed = parseLine(example, allCommands);
      if ('problem' in parsed) throw new Error(parsed.message);
      const payload = at.double.world.commands.get('everywhere')?.find((command) => command.name === name);
      const asker = at.double.member('Odalys the manager', { isManager: true });
      // Where text lets a target stand in place of a choice, a slash command has it in the target's own box.
      const raw = new Map(
        [...parsed.raw].map(([option, value]) => {
          const choices = payload?.options?.find((candidate) => candidate.name === option)?.choices;
          return choices === undefined || choices.some((choice) => choice.value === value.toLowerCase())
            ? [option, value]
            : ['target', value];
        }),
      );
      const { message } = await asker.slash(
        name,
        typedOptions(payload, raw, (person) => at.double.member(person).person),
        { until: 'first' },
      );
      expect(message.content + JSON.stringify(message.embeds)).not.toMatch(/undefined|NaN|\[object/u);
      expect(message.content).not.toContain('fault of mine');
      expect(message.content.length + (message.embeds[0]?.description?.length ?? 0)).toBeGreaterThan(10);
    },
  );
});
