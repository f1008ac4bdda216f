/** A folder of labelled texts, as cases with what they plainly say; two layouts of labels are understood. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export interface Case {
  readonly id: string;
  readonly kind: 'log' | 'localised' | 'words' | 'trap';
  readonly cls: string;
  readonly text: string;
  readonly system: string | null;
  /** Path ids any of which is right; empty: not said. */
  readonly paths: readonly string[];
  /** The path the text belongs to, for the belief's sake. */
  readonly way: string | null;
  readonly says: readonly Label[];
  /** Readings that the text bears out beyond its labels. */
  readonly also: readonly string[];
  readonly not: readonly string[];
}

/** One thing said: read when any of the answers (`check.answer`) or causes (fault ids) is. */
export interface Label {
  readonly name: string;
  readonly group: 'stage' | 'fact';
  readonly answers: readonly string[];
  readonly causes: readonly string[];
}

interface RawCase {
  readonly id: string | number;
  readonly cls?: string;
  readonly text?: string;
  readonly opening?: string;
  readonly os?: string;
  readonly way?: string;
  readonly path?: string;
  readonly stage?: string;
  readonly says?: readonly string[];
  readonly facts?: readonly string[];
  readonly also?: readonly string[];
  readonly not?: readonly string[];
}

interface RawLabels {
  readonly logs: Readonly<Record<string, { readonly answers: readonly string[]; readonly causes: readonly string[] }>>;
  readonly stage: Readonly<Record<string, readonly string[]>>;
  readonly facts: Readonly<Record<string, readonly string[]>>;
}

/** Words for paths in labels → path ids. */
const PATHS: Readonly<Record<string, readonly string[]>> = {
  'hc-adapter': ['controller-serial'],
  'hc-serial': ['controller-serial'],
  'hc-usb': ['controller-usb'],
  'board-cable': ['board-cable'],
  'builtin-usb': ['built-in-usb'],
  bluetooth: ['bluetooth'],
  'mount-wifi': ['bridge-own-network'],
  'house-net': ['bridge-house-network'],
  usb: ['controller-serial', 'controller-usb', 'board-cable', 'built-in-usb'],
  'usb-adapter': ['controller-serial', 'board-cable'],
  wifi: ['bridge-own-network', 'bridge-house-network'],
  wireless: ['bridge-own-network', 'bridge-house-network', 'bluetooth'],
};
const SYSTEMS = ['windows', 'macos', 'linux'];

/** `a.b|c.d|fault-id` names its own answers and causes. */
const plainLabel = (name: string, group: Label['group']): Label => {
  const parts = name.split('|');
  return {
    name,
    group,
    answers: parts.filter((part) => part.includes('.')),
    causes: parts.filter((part) => !part.includes('.')),
  };
};

const labelFor = (name: string, group: Label['group'], labels: RawLabels | null, isLog: boolean): Label => {
  if (labels === null || name.includes('.')) return plainLabel(name, group);
  const log = labels.logs[name];
  if (isLog && log !== undefined) return { name, group, ...log };
  const list = (group === 'stage' ? labels.stage[name] : labels.facts[name]) ?? [];
  return { ...plainLabel(list.join('|'), group), name };
};

const readJson = <T>(file: string): T | null =>
  existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as T) : null;

const FILES = [
  ['logs', 'log'],
  ['localised', 'localised'],
  ['openings', 'words'],
  ['traps', 'trap'],
] as const;

export const loadCorpus = (folder: string): readonly Case[] => {
  const labels = readJson<RawLabels>(join(folder, 'labels.json'));
  return FILES.flatMap(([name, kind]) =>
    (readJson<readonly RawCase[]>(join(folder, `${name}.json`)) ?? []).map((raw): Case => {
      const isLog = kind === 'log' || kind === 'localised';
      return {
        id: `${kind}-${raw.id}`,
        kind,
        cls: raw.cls ?? kind,
        text: raw.text ?? raw.opening ?? '',
        system: SYSTEMS.find((one) => one === raw.os) ?? null,
        paths: PATHS[raw.path ?? ''] ?? [],
        way: raw.way ?? null,
        says: [
          ...(raw.stage === undefined || raw.stage === '' ? [] : [labelFor(raw.stage, 'stage', labels, isLog)]),
          ...[...(raw.says ?? []), ...(raw.facts ?? [])].map((one) => labelFor(one, 'fact', labels, isLog)),
        ].filter(({ answers, causes }) => answers.length + causes.length > 0),
        also: raw.also ?? [],
        not: raw.not ?? [],
      };
    }),
  );
};
