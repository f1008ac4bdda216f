/** What is wrong with the fields of one entry, in the words of whoever wrote it: missing, misspelt, or of the wrong kind. */
import type { z } from 'zod';
import { nearestName } from '../../ground/edit-distance.js';

export type FieldPath = readonly (string | number)[];

interface Misfit {
  readonly path: FieldPath;
  /** Begins with the path of the field, where it has one. */
  readonly message: string;
}

const told = (path: FieldPath, message: string): string =>
  path.length === 0 ? message : `${path.join('.')}: ${message}`;

interface SchemaParts {
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
}

/** The names that an object at this path may have; none where it is no object with names of its own. */
const namesAt = (schema: z.core.$ZodType, path: FieldPath): readonly string[] => {
  const { shape, element, innerType, valueType, options } = schema._zod.def as SchemaParts;
  if (innerType !== undefined) return namesAt(innerType, path);
  if (options !== undefined) return options.flatMap((option) => namesAt(option, path));
  const [key, ...rest] = path;
  if (key === undefined) return Object.keys(shape ?? {});
  const inner = shape !== undefined && Object.hasOwn(shape, String(key)) ? shape[String(key)] : (element ?? valueType);
  return inner === undefined ? [] : namesAt(inner, rest);
};

const valueAt = (value: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[String(key)] : undefined),
    value,
  );

const KINDS: ReadonlyMap<string, string> = new Map([
  ['number', 'a number, such as 2 or 0.5'],
  ['string', 'a text'],
  ['array', 'a list, a line each beginning with "- "'],
  ['boolean', 'true or false'],
  ['object', 'lines of its own, further in'],
  ['record', 'lines of its own, further in'],
]);

/** What holds other values is only named: in YAML it may hold itself. */
const shown = (value: unknown): string => {
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'lines of its own' : (JSON.stringify(value)?.slice(0, 60) ?? 'nothing');
};

const fieldMessage = (issue: z.core.$ZodIssue, value: unknown): string => {
  if (value === undefined) return 'is missing';
  if (value === null) return 'nothing stands there (behind # it would be a remark: put such a text between quotes)';
  const kind = issue.code === 'invalid_type' ? KINDS.get(issue.expected) : undefined;
  if (kind !== undefined) return `wants ${kind}; it is ${shown(value)}`;
  if (issue.code === 'too_big' && typeof value === 'string')
    return `at most ${issue.maximum} characters; it has ${value.length}`;
  return issue.message;
};

const unknownName = (schema: z.core.$ZodType, path: FieldPath, name: string): Misfit => {
  const names = namesAt(schema, path);
  const near = nearestName(name, names);
  const instead = near === undefined ? `what may stand here: ${names.join(', ')}` : `did you mean "${near}"?`;
  return { path: [...path, name], message: told(path, `there is no "${name}" here; ${instead}`) };
};

/** One complaint a mistake: what is missing because its name is misspelt is not said again. */
export const entryMisfits = (schema: z.ZodType, value: unknown, error: z.ZodError): readonly Misfit[] => {
  const pathOf = ({ path }: z.core.$ZodIssue): FieldPath =>
    path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const misspelt = error.issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys' ? issue.keys.map((key) => unknownName(schema, pathOf(issue), key)) : [],
  );
  const meant = new Set(
    error.issues.flatMap((issue) =>
      issue.code === 'unrecognized_keys'
        ? issue.keys.map((key) => [...pathOf(issue), nearestName(key, namesAt(schema, pathOf(issue)))].join('.'))
        : [],
    ),
  );
  const others = error.issues.flatMap((issue): readonly Misfit[] => {
    const path = pathOf(issue);
    const found = valueAt(value, path);
    if (issue.code === 'unrecognized_keys' || (found === undefined && meant.has(path.join('.')))) return [];
    return [{ path, message: told(path, fieldMessage(issue, found)) }];
  });
  return [...misspelt, ...others];
};
