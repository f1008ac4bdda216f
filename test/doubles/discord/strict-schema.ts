/** Makes a published schema refuse keys it does not know, all the way down. */
import * as core from 'zod/v4/core';

// Messages that name the limit, not only "Invalid input".
core.config(core.locales.en());

const strictOf = new WeakMap<core.$ZodType, core.$ZodType>();

/** The same schema with every object in it closed; lazy parts are closed when they are reached. */
export const deepStrict = (schema: core.$ZodType): core.$ZodType => {
  const known = strictOf.get(schema);
  if (known !== undefined) return known;
  const made = close(schema);
  strictOf.set(schema, made);
  return made;
};

const close = (schema: core.$ZodType): core.$ZodType => {
  const { def } = (schema as core.$ZodTypes)._zod;
  const remake = (change: object): core.$ZodType => core.clone(schema, { ...def, ...change });
  switch (def.type) {
    case 'object': {
      const shape = Object.fromEntries(Object.entries(def.shape).map(([key, part]) => [key, deepStrict(part)]));
      return remake({ shape, catchall: new core.$ZodNever({ type: 'never' }) });
    }
    case 'lazy':
      return remake({ getter: () => deepStrict(def.getter()) });
    case 'union':
      return remake({ options: def.options.map(deepStrict) });
    case 'array':
      return remake({ element: deepStrict(def.element) });
    case 'nullable':
    case 'optional':
      return remake({ innerType: deepStrict(def.innerType) });
    case 'record':
      return remake({ valueType: deepStrict(def.valueType) });
    default:
      return schema;
  }
};

/** What is wrong with a value, one line each, the deepest cause of a failed union first; empty when it is right. */
export const faultsOf = (schema: core.$ZodType, value: unknown): readonly string[] => {
  const result = core.safeParse(schema, value);
  return result.success ? [] : result.error.issues.flatMap((issue) => linesOf(issue, []));
};

const linesOf = (issue: core.$ZodIssue, prefix: readonly PropertyKey[]): string[] => {
  const path = [...prefix, ...issue.path];
  if (issue.code === 'invalid_union') {
    // The branch that came nearest is the one that failed deepest.
    const branches = issue.errors.map((issues) => issues.flatMap((inner) => linesOf(inner, path)));
    const depth = (lines: readonly string[]): number => Math.max(0, ...lines.map((line) => line.split('.').length));
    const nearest = branches.sort((a, b) => depth(b) - depth(a) || a.length - b.length)[0];
    return nearest === undefined || nearest.length === 0
      ? [`${path.join('.')}: fits none of the published forms`]
      : nearest;
  }
  const extra = issue.code === 'unrecognized_keys' ? ` (${issue.keys.join(', ')})` : '';
  return [`${path.map(String).join('.')}: ${issue.message}${extra}`];
};
