import { readFileSync } from 'node:fs';
import { PermissionFlagsBits } from 'discord-api-types/v10';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { createMetrics } from '../../bot/app/metrics.js';
import { loadTriage } from '../../bot/triage/index.js';
import { settingNames } from '../../bot/app/settings.js';

const read = (name: string): string => readFileSync(name, 'utf8');

describe('what an operator is told', () => {
  it('asks Discord for the permissions it lists, no more, and their sum is in the address', () => {
    const guide = read('deploy/README.md');
    // The bits are Discord's own, from the published type package.
    const asked =
      PermissionFlagsBits.ViewChannel |
      PermissionFlagsBits.SendMessages |
      PermissionFlagsBits.EmbedLinks |
      PermissionFlagsBits.AttachFiles |
      PermissionFlagsBits.CreatePublicThreads |
      PermissionFlagsBits.SendMessagesInThreads;
    const listed = [...guide.matchAll(/^\| (?!\*\*)[A-Z][^|]*\| (\d+) +\|/gmu)].map(([, bits]) => BigInt(bits ?? 0));
    expect(listed).toHaveLength(6);
    expect(listed.reduce((sum, bits) => sum | bits, 0n)).toBe(asked);
    expect(guide).toContain(`scope=bot+applications.commands&permissions=${asked}`);
    expect(guide).toContain(`**${asked}**`);
  });

  it('names no setting that does not exist', () => {
    for (const file of ['deploy/README.md', 'deploy/compose.yaml', 'deploy/pierhand.service', 'Dockerfile']) {
      const named = [...read(file).matchAll(/\b(?:DISCORD|MATRIX|PIERHAND|DATABASE)_[A-Z_]+[A-Z]\b/gu)].map(
        ([name]) => name,
      );
      expect(named.filter((name) => !settingNames.includes(name) && !name.startsWith('MATRIX_ENCRYPTION'))).toEqual([]);
    }
  });

  it('has an example of a club’s own gear that fits, alone and by the words a member would read', () => {
    const model = loadTriage('knowledge/connection', 'deploy/club-knowledge');
    expect(model.fault('our-grey-box-off')?.title).toContain('grey box');
    expect(model.fault('mount-switched-off')?.why).toContain('socket strip under the bench');
    expect(model.fault('mount-switched-off')?.title).toBe(
      loadTriage('knowledge/connection').fault('mount-switched-off')?.title,
    );
  });

  it('names no figure in alerts and dashboard that a bot just started does not show, labels and all', async () => {
    const metrics = createMetrics(true, ['discord', 'matrix']);
    metrics.watch(
      () => ['discord', 'matrix', 'store'].map((name) => ({ name, health: () => ({ ok: false, detail: '' }) })),
      () => 0,
    );
    const { body } = await metrics.expose();
    const samples = body.split('\n').filter((line) => !line.startsWith('#'));
    const named = (file: string): readonly RegExpMatchArray[] => [
      ...read(file).matchAll(/\b(?<name>(?:pierhand|process)_[a-z_]+[a-z]\b)(?:\{(?<labels>[^}$]*)\})?/gu),
    ];
    for (const file of ['deploy/prometheus-rules.yaml', 'deploy/dashboard.json']) {
      const found = named(file);
      expect(found.length).toBeGreaterThan(2);
      for (const { groups = {} } of found)
        expect(body).toContain(`# TYPE ${(groups['name'] ?? '').replace(/_bucket$/u, '')} `);
    }
    // A rule over a series that is only born with the event sees no step in it. (A histogram's are: nothing is slow before.)
    const rules = named('deploy/prometheus-rules.yaml').filter(
      ({ groups = {} }) => !groups['name']?.endsWith('_bucket'),
    );
    expect(rules.length).toBeGreaterThan(3);
    for (const { groups = {} } of rules) {
      const labels = (groups['labels'] ?? '').split(',').filter((label) => label !== '');
      const shown = samples.filter(
        (line) => line.startsWith(groups['name'] ?? '-') && labels.every((label) => line.includes(label)),
      );
      expect(
        shown.map((line) => line.split(' ').at(-1)).filter((value) => value !== '0'),
        groups['name'],
      ).toEqual([]);
      expect(shown, groups['name']).not.toEqual([]);
    }
    parse(read('deploy/prometheus-rules.yaml'));
    JSON.parse(read('deploy/dashboard.json'));
  });

  it('has a compose file that hands the token over as a secret and leaves nothing else open', () => {
    const { services } = parse(read('deploy/compose.yaml')) as { services: { pierhand: Record<string, unknown> } };
    expect(services.pierhand).toMatchObject({
      read_only: true,
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
      secrets: ['discord_token'],
    });
    expect(services.pierhand).not.toHaveProperty('ports');
  });

  it('has an image that copies what the program needs at run time, and runs without root', () => {
    const image = read('Dockerfile');
    expect(image).toMatch(/^USER node$/mu);
    expect(image).toMatch(/^HEALTHCHECK/mu);
    for (const needed of ['bot/reply/fonts', 'knowledge', '/app/dist', '/app/node_modules'])
      expect(image).toMatch(new RegExp(`^COPY .*${needed}`, 'mu'));
    const ignored = read('.dockerignore');
    for (const [, sources] of image.matchAll(/^COPY (?!--from)(.*) \S+$/gmu)) {
      for (const source of sources?.split(' ') ?? [])
        expect(
          ignored.split('\n').some((line) => `!${source.replace(/^\.\//u, '')}/`.startsWith(`${line}/`) && line !== ''),
        ).toBe(true);
    }
  });
});
