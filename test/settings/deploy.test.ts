import { execFile } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PermissionFlagsBits } from 'discord-api-types/v10';
import { parse } from 'yaml';
import { describe, expect, it } from 'vitest';
import { createMetrics } from '../../bot/app/metrics.js';
import { loadTriage } from '../../bot/triage/index.js';
import { settingNames } from '../../bot/app/settings.js';
import { readSources } from '../structure/borders.js';
import { SCHEMA_VERSION } from '../../bot/store/migrate.js';

const secretNames = settingNames.filter((name) => name.endsWith('_FILE')).map((name) => name.replace(/_FILE$/u, ''));
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

  it('has a compose file that takes secrets from files, builds what the guide says, and leaves nothing else open', () => {
    const { services } = parse(read('deploy/compose.yaml')) as { services: { pierhand: Record<string, unknown> } };
    expect(services.pierhand).toMatchObject({
      read_only: true,
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
      build: { context: '..', args: { MATRIX_ENCRYPTION: '${MATRIX_ENCRYPTION:-no}' } },
    });
    // A release of Node.js named in .env stays at the next build; without one the two files mean the same.
    const { args } = services.pierhand['build'] as { args: Record<string, string> };
    const own = /^ARG NODE_VERSION=(.+)$/mu.exec(read('Dockerfile'))?.[1];
    expect(args['NODE_VERSION']).toBe(`\${NODE_VERSION:-${own}}`);
    expect(read('Dockerfile')).toMatch(/^ARG MATRIX_ENCRYPTION=no$/mu);
    expect(services.pierhand).not.toHaveProperty('ports');
    expect(services.pierhand['volumes']).toContain('./secrets:/run/secrets:ro');
    // Each secret's file is named in .env.example where compose puts it.
    for (const name of secretNames)
      expect(read('deploy/.env.example')).toContain(`# ${name}_FILE=/run/secrets/${name.toLowerCase()}\n`);
  });

  it('has a systemd drop-in for each secret, which hands it over by the setting’s own name', () => {
    expect(readdirSync('deploy/systemd').sort()).toEqual(
      secretNames.map((name) => `${name.toLowerCase()}.conf`).sort(),
    );
    for (const name of secretNames) {
      const id = name.toLowerCase();
      expect(read(`deploy/systemd/${id}.conf`).split('\n').slice(1).join('\n')).toBe(
        `[Service]\nLoadCredential=${id}:/etc/pierhand/${id}\nEnvironment=${name}_FILE=%d/${id}\n`,
      );
    }
  });

  it('has units in which the data folder is the unit’s whatever the settings file says (systemd.exec(5): EnvironmentFile= overrides)', () => {
    for (const unit of ['pierhand', 'pierhand-backup']) {
      const text = read(`deploy/${unit}.service`);
      expect(text).toMatch(/^ExecStart=\/usr\/bin\/env PIERHAND_DATA=/mu);
      expect(text).not.toMatch(/^Environment=.*(?:PIERHAND|TOKEN)/mu);
    }
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

describe('the guide’s table of what the log says', () => {
  it('has the program’s own words', () => {
    const sources = [...readSources('.', 'bot').values()].join('\n');
    const rows = read('deploy/README.md').split('| the log says ')[1]?.split('\n\n')[0]?.split('\n').slice(2) ?? [];
    expect(rows.length).toBeGreaterThan(20);
    const said = rows.flatMap((row) =>
      [...(row.split(' | ')[0] ?? '').matchAll(/`([^`]+)`/gu)].map(([, line = '']) => line),
    );
    const unsaid = said
      .flatMap((line) => line.split('…').map((part) => part.trim()))
      .filter((part) => !sources.includes(part));
    expect(unsaid).toEqual([]);
  });
});

describe('the schema’s number', () => {
  it('is the program’s own wherever a guide names one', () => {
    for (const file of ['CHANGELOG.md', 'deploy/README.md', 'README.md', 'DEVELOPERS.md'])
      for (const [line, version] of read(file).matchAll(/\bSchema (\d+)\b|schema \d+ → (\d+)/gu))
        expect(line.match(/\d+$/u)?.[0] ?? version, `${file}: ${line}`).toBe(String(SCHEMA_VERSION));
    expect(read('CHANGELOG.md')).toContain(`Schema ${SCHEMA_VERSION}.`);
  });
});

describe('the container’s daily backup', () => {
  const DAY_S = 86_400;
  /** Runs the script with a stand-in for the engine; the names in the folder afterwards, and the exit code. */
  const run = async (engine: string): Promise<{ readonly names: readonly string[]; readonly code: number | null }> => {
    const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-container-'));
    try {
      mkdirSync(path.join(folder, 'bin'));
      writeFileSync(path.join(folder, 'bin/docker'), `#!/bin/sh\n${engine}\n`);
      chmodSync(path.join(folder, 'bin/docker'), 0o755);
      const kept = path.join(folder, 'kept');
      mkdirSync(kept);
      for (const [name, days] of [
        ['pierhand-2026-10-01.backup', 40],
        ['pierhand-2026-11-20.backup', 5],
      ] as const) {
        writeFileSync(path.join(kept, name), 'older');
        utimesSync(path.join(kept, name), Date.now() / 1000 - days * DAY_S, Date.now() / 1000 - days * DAY_S);
      }
      const child = execFile(path.resolve('deploy/backup-container.sh'), [kept], {
        env: { PATH: `${path.join(folder, 'bin')}:${process.env['PATH'] ?? ''}` },
      });
      const code = await new Promise<number | null>((resolve) => child.once('close', resolve));
      return { names: readdirSync(kept).sort(), code };
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  };

  it('keeps fourteen days, and all that there is where it fails', async () => {
    const good = await run('if [ "$2" = cp ]; then echo new > "$4"; fi');
    expect(good.code).toBe(0);
    expect(good.names).toEqual([
      'pierhand-2026-11-20.backup',
      expect.stringMatching(/^pierhand-\d{4}-\d\d-\d\d\.backup$/u),
    ]);
    for (const failing of ['exit 1', 'if [ "$2" = cp ]; then echo half > "$4"; exit 1; fi']) {
      const bad = await run(failing);
      expect(bad.code).not.toBe(0);
      expect(bad.names.filter((name) => name.endsWith('.backup'))).toEqual([
        'pierhand-2026-10-01.backup',
        'pierhand-2026-11-20.backup',
      ]);
    }
  });
});
