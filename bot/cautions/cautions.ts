/** The safety texts, read once from knowledge/cautions.yaml; nothing else in Pierhand words a hazard. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { projectRoot } from '../ground/project-root.js';

const cautionSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u),
  title: z.string().min(1).max(60),
  text: z.string().trim().min(1).max(300),
  /** Beside another caution so much of it is enough. */
  brief: z.string().trim().min(1).max(80).optional(),
  /** On a walk's card, in place of the whole. */
  onCard: z.string().trim().min(1).max(200).optional(),
});
export type Caution = z.infer<typeof cautionSchema>;

/** Reads a cautions file. Throws an Error that names the file and what is wrong with it. */
export const readCautions = (file: string): ReadonlyMap<string, Caution> => {
  const parsed = z.array(cautionSchema).safeParse(parse(readFileSync(file, 'utf8')));
  if (!parsed.success) throw new Error(`${file}: ${z.prettifyError(parsed.error)}`);
  const cautions = new Map<string, Caution>();
  for (const caution of parsed.data) {
    if (cautions.has(caution.id)) throw new Error(`${file}: the id ${caution.id} stands twice.`);
    cautions.set(caution.id, caution);
  }
  return cautions;
};

let shipped: ReadonlyMap<string, Caution> | undefined;

/** All shipped cautions by id, in the file's order. */
export const cautions = (): ReadonlyMap<string, Caution> =>
  (shipped ??= readCautions(path.join(projectRoot(), 'knowledge', 'cautions.yaml')));

/** The text of one caution. Throws a RangeError on an id that is not in the file: a fault of ours, not of a member. */
export const cautionText = (id: string): string => {
  const caution = cautions().get(id);
  if (caution === undefined) throw new RangeError(`There is no caution "${id}" in knowledge/cautions.yaml.`);
  return caution.text;
};
