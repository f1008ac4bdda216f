/** What is wrong with the fields of one entry, in the words of whoever wrote it: missing, misspelt, or of the wrong kind. */
import type * as z from 'zod';
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
  readonly type: string;
  readonly shape?: Readonly<Record<string, z.core.$ZodType>>;
  readonly element?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
  readonly entries?: Readonly<Record<string, string>>;
}

const partsOf = (schema: z.core.$ZodType): SchemaParts => schema._zod.def;

/** The names that an object at this path may have; none where it is no object with names of its own. */
const namesAt = (schema: z.core.$ZodType, path: FieldPath): readonly string[] => {
  const { shape, element, innerType, valueType, options } = partsOf(schema);
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

/** The schema of the field at this path; none where it holds no such field. Of several that it may be, the first that holds it. */
const schemaAt = (schema: z.core.$ZodType, path: FieldPath): z.core.$ZodType | undefined => {
  const { shape, element, innerType, valueType, options } = partsOf(schema);
  if (innerType !== undefined) return schemaAt(innerType, path);
  const [key, ...rest] = path;
  if (key === undefined) return schema;
  if (options !== undefined)
    return options.map((option) => schemaAt(option, path)).find((found) => found !== undefined);
  const own = shape !== undefined && Object.hasOwn(shape, String(key)) ? shape[String(key)] : undefined;
  const inner = own ?? (typeof key === 'number' ? element : valueType);
  return inner === undefined ? undefined : schemaAt(inner, rest);
};

const LINES = 'lines further in, each beginning with "- "';

/** What may stand in a field, in the words of whoever writes it in a text editor. */
const wantedBy = (schema: z.core.$ZodType): string => {
  const { type, element, innerType, options = [], entries, shape } = partsOf(schema);
  if (innerType !== undefined) return wantedBy(innerType);
  if (type === 'union') return options.map(wantedBy).join(', or ');
  if (type === 'enum') return `one of ${Object.values(entries ?? {}).join(', ')}`;
  if (type === 'array' && element !== undefined) {
    const { type: of, entries: some } = partsOf(element);
    return of === 'enum' ? `a list of some of [${Object.values(some ?? {}).join(', ')}]` : `a list: ${LINES}`;
  }
  if (type === 'object') return `lines of its own, further in, of ${Object.keys(shape ?? {}).join(', ')}`;
  if (type === 'record') return 'lines of its own, further in, each a name, a colon and what belongs to it';
  if (type === 'number') return 'a number, such as 2 or 0.5';
  return type === 'boolean' ? 'true or false' : 'a text';
};

/** What holds other values is only named: in YAML it may hold itself. */
const shown = (value: unknown): string => {
  if (Array.isArray(value)) return 'a list';
  return typeof value === 'object' ? 'lines of its own' : (JSON.stringify(value)?.slice(0, 60) ?? 'nothing');
};

/** What is too large, too small or none of a few. */
const limitMessage = (issue: z.core.$ZodIssue, value: unknown): string | null => {
  if (issue.code === 'invalid_value') return `wants one of ${issue.values.join(', ')}; it is ${shown(value)}`;
  if (issue.code === 'too_small' && typeof value === 'string') return 'nothing stands between the quotes; write a text';
  if (issue.code !== 'too_big' && issue.code !== 'too_small') return null;
  const limit = `at ${issue.code === 'too_big' ? 'most' : 'least'} ${
    issue.code === 'too_big' ? issue.maximum : issue.minimum
  }`;
  if (typeof value === 'string') return `${limit} characters; it has ${value.length}`;
  if (Array.isArray(value)) return `${limit} in the list; it has ${value.length}`;
  return `wants ${issue.inclusive === false ? 'more than 0' : limit}; it is ${shown(value)}`;
};

const fieldMessage = (schema: z.ZodType, issue: z.core.$ZodIssue, path: FieldPath, value: unknown): string => {
  const field = schemaAt(schema, path);
  const wanted = field === undefined ? 'a text' : wantedBy(field);
  if (value === undefined) return wanted === 'a text' ? 'is missing' : `is missing; it wants ${wanted}`;
  if (value === null) return 'nothing stands there (behind # it would be a remark: put such a text between quotes)';
  if (issue.code === 'invalid_type' || issue.code === 'invalid_union') return `wants ${wanted}; it is ${shown(value)}`;
  return limitMessage(issue, value) ?? issue.message;
};

/** Between braces a comma ends a text, and what stands behind it looks like a field with nothing in it. */
const partedByComma = (holder: unknown, name: string): string | null => {
  if (typeof holder !== 'object' || holder === null || !/\s|[^\w-]/u.test(name)) return null;
  const entries = Object.entries(holder);
  const at = entries.findIndex(([key]) => key === name);
  const [before, text] = entries[at - 1] ?? [];
  if (entries[at]?.[1] !== null || typeof text !== 'string') return null;
  return `a comma within { } ends the text: put the whole text between quotes, ${before}: '${`${text}, ${name}`.replaceAll("'", "''")}'`;
};

const unknownName = (schema: z.core.$ZodType, path: FieldPath, name: string, value: unknown): Misfit => {
  const names = namesAt(schema, path);
  const near = nearestName(name, names);
  const instead = near === undefined ? `what may stand here: ${names.join(', ')}` : `did you mean "${near}"?`;
  const comma = partedByComma(valueAt(value, path), name);
  return { path: [...path, name], message: told(path, comma ?? `there is no "${name}" here; ${instead}`) };
};

/** One complaint a mistake: what is missing because its name is misspelt is not said again. */
export const entryMisfits = (schema: z.ZodType, value: unknown, error: z.ZodError): readonly Misfit[] => {
  const pathOf = ({ path }: z.core.$ZodIssue): FieldPath =>
    path.map((key) => (typeof key === 'symbol' ? String(key) : key));
  const misspelt = error.issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys' ? issue.keys.map((key) => unknownName(schema, pathOf(issue), key, value)) : [],
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
    return [{ path, message: told(path, fieldMessage(schema, issue, path, found)) }];
  });
  return [...misspelt, ...others];
};
