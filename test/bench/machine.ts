/** What the figures were measured on. */
import { readFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { projectRoot } from '../../bot/ground/project-root.js';

const PACKAGES = [
  'astronomy-engine',
  'discord.js',
  '@resvg/resvg-js',
  're2js',
  '@photostructure/sqlite',
  'kysely',
  'zod',
] as const;

const versionOf = (name: string): string => {
  try {
    return (
      JSON.parse(readFileSync(path.join(projectRoot(), 'node_modules', name, 'package.json'), 'utf8')) as {
        version: string;
      }
    ).version;
  } catch {
    return 'missing';
  }
};

/** Lines for the head of the table; the load says how quiet the machine was. */
export const machineLines = (): readonly string[] => [
  `${os.cpus()[0]?.model ?? 'unknown processor'}, ${os.cpus().length} cores, ${(os.totalmem() / 2 ** 30).toFixed(0)} GiB; ${os.type()} ${os.release()}; load over the last minute ${(os.loadavg()[0] ?? 0).toFixed(1)}`,
  `Node ${process.versions.node}, V8 ${process.versions.v8}; ${PACKAGES.map((name) => `${name} ${versionOf(name)}`).join(', ')}`,
];
