/** Lines a member copies into a terminal, whose output answers many questions at once; from knowledge/connection/collecting.yaml. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { SYSTEMS } from '../../reading/index.js';

const collectingSchema = z.strictObject({
  system: z.enum(SYSTEMS),
  /** Where it is typed: "PowerShell". */
  where: z.string().min(1).max(40),
  /** One line; a Discord field holds 1,024 characters. */
  line: z
    .string()
    .trim()
    .min(1)
    .max(1000)
    .regex(/^[^\r\n]*$/u),
});
export type CollectingLine = z.infer<typeof collectingSchema>;

/** At most one a system; none where the folder has no such file. Throws an Error that names the file and what is wrong. */
export const readCollecting = (folder: string): readonly CollectingLine[] => {
  const file = path.join(folder, 'collecting.yaml');
  if (!existsSync(file)) return [];
  const parsed = z.array(collectingSchema).safeParse(parse(readFileSync(file, 'utf8')));
  if (!parsed.success) throw new Error(`${file}: ${z.prettifyError(parsed.error)}`);
  return parsed.data;
};
