/** What newcomers ask that no reckoning answers: a sentence or two from knowledge/topics.yaml, by the words of the thing and not by phrases. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { once } from '../../ground/once.js';
import { projectRoot } from '../../ground/project-root.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';

/** Words as they are looked for in a line with a blank before and after it; a star at its end stands for any ending. */
const words = z
  .array(
    z
      .string()
      .min(2)
      .max(40)
      .transform((word) => (word.endsWith('*') ? ` ${word.slice(0, -1)}` : ` ${word} `)),
  )
  .min(1);

const patterns = z
  .array(
    z
      .string()
      .min(8)
      .transform((text) => new RegExp(text, 'u')),
  )
  .min(1);

const next = z
  .array(z.tuple([z.string().min(1).max(60), z.string().min(1).max(80)]))
  .min(1)
  .max(3);

const topicSchema = z.strictObject({
  id: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u),
  about: words.optional(),
  /** In the place of the words: how such sentences go. */
  like: patterns.optional(),
  and: words.optional(),
  /** One of these as well. */
  only: words.optional(),
  not: words.optional(),
  /** A target that is named has an answer of its own. */
  yields: z.literal(true).optional(),
  says: z.string().trim().min(1).max(400),
  next,
  /** South of the equator; LATITUDE stands for the degrees of it. */
  south: z.strictObject({ says: z.string().trim().min(1).max(400), next }).optional(),
});
export type Topic = z.infer<typeof topicSchema>;

/** Reads a topics file. Throws an Error that names the file and what is wrong with it. */
export const readTopics = (file: string): readonly Topic[] => {
  const parsed = z.array(topicSchema).safeParse(parse(readFileSync(file, 'utf8')));
  if (!parsed.success) throw new Error(`${file}: ${z.prettifyError(parsed.error)}`);
  return parsed.data;
};

/** Those of a file that ships, read when first asked for. */
export const shippedTopics = (name: string): (() => readonly Topic[]) =>
  once(() => readTopics(path.join(projectRoot(), 'knowledge', `${name}.yaml`)));

const topics = shippedTopics('topics');

const isOf = (padded: string, { about = [], like, and, only, not = [] }: Topic): boolean => {
  const hasOne = (list: readonly string[]): boolean => list.some((word) => padded.includes(word));
  if (like === undefined && !hasOne(about)) return false;
  if (hasOne(not)) return false;
  if (like !== undefined) return like.some((pattern) => pattern.test(padded));
  return (and === undefined || hasOne(and)) && (only === undefined || hasOne(only));
};

interface Named {
  /** It is known to be of the Sun, and nobody looks. */
  readonly isTalkOfSun?: boolean;
  readonly isTargetNamed?: boolean;
  /** Of the place that is asked for, in degrees, south negative; null where nobody knows. Asked only where it matters. */
  readonly latitudeDeg?: () => number | null;
}

/** The answer of the first that fits words in lower case; null where they are of none. */
export const topicAmong = (
  among: readonly Topic[],
  plain: string,
  { isTalkOfSun = false, isTargetNamed = false, latitudeDeg = () => null }: Named = {},
): Outcome | null => {
  const padded = ` ${plain.replace(/[^\p{L}\p{N}'-]+/gu, ' ').trim()} `;
  // Of the Sun those speak who warn.
  if (!isTalkOfSun && /\b(?:sun|solar)/u.test(padded)) return null;
  const topic = among.find((one) => !(isTargetNamed && one.yields === true) && isOf(padded, one));
  if (topic === undefined) return null;
  const latitude = topic.south === undefined ? null : latitudeDeg();
  const { says, next: choicesOf } = latitude !== null && latitude < 0 ? (topic.south ?? topic) : topic;
  const choices = choicesOf.map(([label, run]) => ({ label, run }));
  const summary = says.replace('LATITUDE', Math.abs(latitude ?? 0).toFixed(0));
  return reply({ title: 'In short', summary, choices, pointsAt: NOWHERE });
};

/** Of knowledge/topics.yaml. Those that yield answer where no target is named. */
export const topicAnswer = (plain: string, named: Named = {}): Outcome | null => topicAmong(topics(), plain, named);
