/** The numbers of a miss, typed in one line or a form, worked through by `astray` inside the walk. */
import { isProblem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { resolvePlace } from '../../places/index.js';
import type { Reply } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import type { WalkEvent } from '../../triage/index.js';
import { astray } from '../astray/astray.js';
import { plainAlone } from '../asking/plain-alone.js';
import type { Request, Deps } from '../core/command.js';
import { parseLine } from '../core/grammar.js';
import { tableOf } from '../../ground/table-of.js';

export interface TypedNumbers {
  readonly target: string;
  readonly landed?: string;
  readonly shown?: string;
  readonly lst?: string;
  readonly site?: string;
  readonly at?: string;
}

const LABELLED =
  /^(target|landed|shown|shows?|display|lst|sidereal(?: time)?|site|place|at|time|alt(?:itude)?|az(?:imuth)?)\b\s*:?\s*(.+)$/iu;

type Field = keyof TypedNumbers | 'alt' | 'az';

const FIELDS = tableOf<Field>({
  target: 'target',
  landed: 'landed',
  shown: 'shown',
  show: 'shown',
  shows: 'shown',
  display: 'shown',
  lst: 'lst',
  sidereal: 'lst',
  'sidereal time': 'lst',
  site: 'site',
  place: 'site',
  at: 'at',
  time: 'at',
  alt: 'alt',
  altitude: 'alt',
  az: 'az',
  azimuth: 'az',
});

/** `site:"Ely, England" Vega; …`: an option written as in a command is a part by itself. */
const AS_OPTION = /\b(target|landed|shown|lst|site|at):\s*"([^"]*)"/giu;

/** The parts of a line between semicolons: by the field they name, and those that name none. */
const partsOf = (line: string): { readonly named: ReadonlyMap<Field, string>; readonly plain: string[] } => {
  const parts = line
    .replace(AS_OPTION, '; $1 $2;')
    .split(/[;\n]/u)
    .map((part) => part.trim())
    .filter((part) => part !== '' && part !== '-');
  const named = new Map<Field, string>();
  const plain: string[] = [];
  for (const part of parts) {
    const [, label = '', value = ''] = LABELLED.exec(part) ?? [];
    const field = FIELDS.get(label.toLowerCase());
    if (field === undefined) plain.push(part);
    else named.set(field, value);
  }
  return { named, plain };
};

const pairOf = (altitude: string | undefined, azimuth: string | undefined): string | undefined =>
  altitude === undefined || azimuth === undefined ? undefined : `${altitude},${azimuth}`;

/** "Vega; about 15 degrees east of it; shown 41, 135; lst 18:22": the target, where it landed, then what is named. Null: no numbers. */
export const readNumbers = (line: string): TypedNumbers | null => {
  const { named, plain } = partsOf(line);
  const target = named.get('target') ?? plain.shift();
  const landed = named.get('landed') ?? plain.shift();
  const shown = named.get('shown') ?? pairOf(named.get('alt'), named.get('az'));
  const lst = named.get('lst');
  if (target === undefined || (landed ?? shown ?? lst) === undefined) return null;
  const others = Object.entries({ landed, shown, lst, site: named.get('site'), at: named.get('at') });
  return { target, ...Object.fromEntries(others.filter(([, value]) => value !== undefined)) };
};

/** "Sent it to Vega, landed 15 degrees west of it": the same, said in words. */
export const numbersSaid = (
  words: string,
  deps: Pick<Deps, 'catalogue' | 'commands' | 'places'>,
  nowUtcMs: UtcMs,
): TypedNumbers | null => {
  const read = plainAlone(words, deps, nowUtcMs);
  const line = read !== null && 'line' in read ? parseLine(read.line, [astray]) : null;
  if (line === null || isProblem(line)) return null;
  const [target, landed, site] = ['target', 'landed', 'site'].map((name) => line.raw.get(name));
  if (target === undefined || landed === undefined) return null;
  return { target, landed, ...(site === undefined ? {} : { site }) };
};

/**
 * The numbers of the words before, from the place that was asked for behind them; null where those named one already, or this names none.
 * @param place as it was typed, and nothing else: "York, England"
 */
export const placedNumbers = (
  words: string,
  place: string,
  deps: Pick<Deps, 'catalogue' | 'commands' | 'places'>,
  nowUtcMs: UtcMs,
): TypedNumbers | null => {
  const site = place
    .trim()
    .replace(/[.!]+$/u, '')
    .replace(/^(?:in|at|from|near|its|it is) /iu, '');
  if (site.length > LONGEST_PLACE || !/^\p{L}[^;:?\d]+$/u.test(site)) return null;
  const numbers = readNumbers(words) ?? numbersSaid(words, deps, nowUtcMs);
  const asked = numbers?.site === undefined ? null : resolvePlace(deps.places(), numbers.site);
  const isOpen = asked === null ? /\d/u.test(words) : isProblem(asked);
  if (numbers === null || !isOpen || isProblem(resolvePlace(deps.places(), site))) return null;
  return { ...numbers, site };
};
const LONGEST_PLACE = 60;

const NUMBERS_LIMIT = 300;

/** Parts set off by semicolons, a sidereal time, a reading or a landing among them: numbers even where none were asked for. */
export const plainlyNumbers = (line: string): boolean =>
  line.length <= NUMBERS_LIMIT &&
  line.includes(';') &&
  /(?:^|;)\s*(?:lst|sidereal|shown?|landed|alt)\b[^;]*\d|\d\s*(?:°|degrees?)\s+(?:north|south|east|west)/iu.test(line);

interface AstrayCause {
  readonly id?: string;
  readonly ids?: readonly string[];
  readonly probability: number;
  readonly correction?: string;
}

/** Each cause once, likeliest first: alone and in every pair that holds it. */
const causesOf = (found: readonly AstrayCause[]): readonly { readonly id: string; readonly probability: number }[] => {
  const shares = new Map<string, number>();
  for (const { id, ids, probability } of found)
    for (const one of ids ?? (id === undefined ? [] : [id]))
      shares.set(one, Math.min(1, (shares.get(one) ?? 0) + probability));
  return [...shares]
    .map(([id, probability]) => ({ id: id.slice(0, 80), probability }))
    .sort((a, b) => b.probability - a.probability);
};

export interface TakenNumbers {
  readonly event: WalkEvent;
  readonly notes: readonly string[];
  /** What `astray` answered; its cautions and audience hold for the walk's reply too. */
  readonly reply: Reply;
}

/** @returns the event that the walk keeps, or what was wrong with the numbers (to be typed again). */
export const takeNumbers = async (
  deps: Deps,
  request: Omit<Request<unknown>, 'options'>,
  numbers: TypedNumbers,
  by: 'member' | 'helper',
): Promise<TakenNumbers | Problem> => {
  const none = { landed: undefined, shown: undefined, lst: undefined, at: undefined, site: undefined };
  const outcome = await astray.run(deps, {
    options: { ...none, ...numbers, mount: undefined, aligned: undefined, also: undefined, within: undefined },
    ...request,
  });
  if (isProblem(outcome)) return outcome;
  const causes = causesOf(outcome.data['causes'] as unknown as readonly AstrayCause[]);
  const said = tidy(
    [
      numbers.target,
      numbers.landed,
      numbers.shown === undefined ? undefined : `shown ${numbers.shown}`,
      numbers.lst === undefined ? undefined : `lst ${numbers.lst}`,
    ]
      .filter((part) => part !== undefined)
      .join('; '),
    200,
  );
  const [first] = causes;
  return {
    event: { kind: 'found', cause: first?.id ?? 'unknown', causes: causes.slice(0, 8), said, by },
    notes: [`From your numbers: ${outcome.summary}`],
    reply: outcome,
  };
};
