/** Stories as files: what a member writes first, what is there to see, where they slip, and what is really wrong. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import * as z from 'zod';
import { CLIENTS, SYSTEMS } from '../../bot/triage/model/schema.js';
import type { LinkId, PathId, Shows } from '../bench-of-faults/world.js';

const text = z.string().min(1);
const byCheck = z.record(z.string(), text);

const cause = z.strictObject({
  /** Fault ids, any of which is the cause by a right name; an id no list holds yet is passed over. None: no list holds it. */
  any: z.array(text),
  /** The fault put into the bench's set-up; default the first of `any`; null: `shows` at `link` instead. */
  state: text.nullable().optional(),
  shows: z.custom<Shows>((value) => typeof value === 'string').optional(),
  link: z.custom<LinkId>((value) => typeof value === 'string').optional(),
});

const story = z.strictObject({
  id: text,
  member: text,
  at: z.tuple([
    z.custom<PathId>((value) => typeof value === 'string'),
    z.enum(SYSTEMS).exclude(['phone']),
    z.enum(CLIENTS),
  ]),
  opening: text,
  paste: text.optional(),
  causes: z.array(cause).min(1).max(2),
  /** Check id → answer; stands until what the set-up itself would answer changes. A check no knowledge holds is passed over. */
  facts: byCheck,
  /** Check id → what is said at the first asking instead. */
  slips: byCheck.default({}),
  /** Fault id → facts that hold once that cause is gone. */
  after: z.record(text, byCheck).default({}),
  /** Faults whose remedy this member cannot do. */
  cannot: z.array(text).default([]),
  /** Patterns (any case) that the hand-on must hold. */
  handOn: z.array(text).default([]),
});

export type Story = z.infer<typeof story>;
export type Cause = z.infer<typeof cause>;

const FOLDER = path.resolve('test/stories/told');

/** Every story of the folder, in the files' order. */
export const loadStories = (folder = FOLDER): Story[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .flatMap((name) => z.array(story).parse(parse(readFileSync(path.join(folder, name), 'utf8'))));
