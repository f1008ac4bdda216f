/** The comets and minor planets of a list as targets: found by any of their names, with the age of what is known. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { NO_CATALOGUE_DATA, type MovingTargets, type Target } from '../catalogue/index.js';
import { foldKey } from '../ground/fold-text.js';
import { orbitMagnitude } from '../sky/orbit.js';
import type { UtcMs } from '../sky/types.js';
import type { SmallBody } from './read-elements.js';

const J2000_UTC_MS = Date.UTC(2000, 0, 1, 12);
/** Beyond this a two-body orbit of a comet can be off by arcminutes; common practice, no source. */
const FRESH_DAYS = 100;
const MOST_FOUND = 25;

export interface ElementsList {
  readonly bodies: readonly SmallBody[];
  readonly readUtcMs: UtcMs;
}

interface Entry {
  readonly body: SmallBody;
  readonly keys: readonly string[];
}

/** Names as keys: whole, each alias, and the parts of discoverers' names ("tsuchinshan"). */
const keysOf = ({ name, aliases, kind }: SmallBody): readonly string[] => {
  const parts = kind === 'comet' ? (aliases[1] ?? '').split(/[-/]/).filter((part) => part.length >= 4) : [];
  return [...new Set([name, ...aliases, ...parts].map(foldKey))];
};

const withoutKindWord = (text: string): string =>
  text.replace(/^(?:the )?(?:comet|asteroid|minor planet|dwarf planet)\s+/i, '');

const magnitudeNow = ({ elements }: SmallBody, utcMs: UtcMs): number | null => {
  const magnitude = orbitMagnitude(elements, utcMs);
  return magnitude === null ? null : Math.round(magnitude * 10) / 10;
};

const targetOf = (body: SmallBody, utcMs: UtcMs): Target => ({
  ...NO_CATALOGUE_DATA,
  id: `orbit:${foldKey(body.name)}`,
  name: body.name,
  aliases: body.aliases,
  kind: body.kind,
  kindText: body.kind === 'comet' ? 'comet' : 'minor planet',
  magnitude: magnitudeNow(body, utcMs),
  body: { kind: 'orbit', elements: body.elements },
});

const agoWords = (ms: number): string => {
  const hours = Math.floor(ms / MS_PER_HOUR);
  if (hours < 1) return 'within the hour';
  if (hours < 48) return `${hours} h ago`;
  return `${Math.floor(hours / 24)} days ago`;
};

const noteOn = (target: Target, readUtcMs: UtcMs, nowUtcMs: UtcMs): string => {
  const epoch = target.body.kind === 'orbit' ? target.body.elements.epochTtDays : null;
  const epochUtcMs = epoch === null ? null : J2000_UTC_MS + epoch * MS_PER_DAY;
  const stale = epochUtcMs !== null && Math.abs(nowUtcMs - epochUtcMs) > FRESH_DAYS * MS_PER_DAY;
  const of = epochUtcMs === null ? '' : ` for ${new Date(epochUtcMs).toISOString().slice(0, 10)}`;
  return [
    `From orbital elements${of}, list read ${agoWords(nowUtcMs - readUtcMs)}.`,
    ...(stale ? ['They are old: the place may be off by arcminutes.'] : []),
    target.kind === 'comet' ? 'Magnitude predicted; comets surprise.' : 'Magnitude predicted.',
  ].join(' ');
};

/** Targets out of a list; `list` and `now` are asked each time, so that a list read anew is used at once. */
export const smallBodies = (list: () => ElementsList | null, isSet: boolean, now: () => UtcMs): MovingTargets => {
  let indexed: { readonly of: ElementsList; readonly entries: readonly Entry[] } | null = null;
  const entriesOf = (): readonly Entry[] => {
    const of = list();
    if (of === null) return [];
    if (indexed?.of !== of) indexed = { of, entries: of.bodies.map((body) => ({ body, keys: keysOf(body) })) };
    return indexed.entries;
  };
  const brightestFirst = (entries: readonly Entry[]): readonly Target[] => {
    const utcMs = now();
    return entries
      .map(({ body }) => targetOf(body, utcMs))
      .sort((a, b) => (a.magnitude ?? 99) - (b.magnitude ?? 99))
      .slice(0, MOST_FOUND);
  };
  return {
    state: () => {
      if (!isSet) return 'not-set';
      return list() === null ? 'not-read' : 'read';
    },
    find: (text) => {
      const key = foldKey(withoutKindWord(text));
      return key === '' ? [] : brightestFirst(entriesOf().filter(({ keys }) => keys.includes(key)));
    },
    comets: (limit) => brightestFirst(entriesOf().filter(({ body }) => body.kind === 'comet')).slice(0, limit),
    noteOn: (target) => noteOn(target, list()?.readUtcMs ?? now(), now()),
    complete: (partial, limit) => {
      const key = foldKey(withoutKindWord(partial));
      if (key.length < 2) return [];
      return brightestFirst(entriesOf().filter(({ keys }) => keys.some((k) => k.startsWith(key))))
        .slice(0, limit)
        .map(({ name, kindText }) => ({ value: name, label: `${name} · ${kindText}`.slice(0, 100) }));
    },
  };
};
