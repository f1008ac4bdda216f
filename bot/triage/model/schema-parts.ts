/** Parts that several kinds of the fault model's entries are made of. */
import * as z from 'zod';
import { CLIENTS, entryParts, SYSTEMS } from '../../reading/index.js';

const { answerId, id, line } = entryParts;

/** How members call it or say it, in plain words or as the phrases of a saying; see own-words.ts. */
export const words = z.array(line(80)).min(1).optional();

/** Leaving a list out means "all of them". */
export const only = z.strictObject({
  paths: z.array(id).min(1).optional(),
  systems: z.array(z.enum(SYSTEMS)).min(1).optional(),
  clients: z.array(z.enum(CLIENTS)).min(1).optional(),
});

/** An answer id (certain but for mistakes), or answer ids with probabilities adding up to at most 1 (the rest is shared by the answers left out). */
export const answerOdds = z.union([
  answerId,
  z
    .record(answerId, z.number().min(0).max(1))
    .refine(
      (odds) => Object.values(odds).reduce((sum, value) => sum + value, 0) <= 1.0001,
      'the probabilities add up to more than 1',
    ),
]);

const bySystem = (limit: number) => ({
  all: line(limit).optional(),
  windows: line(limit).optional(),
  macos: line(limit).optional(),
  linux: line(limit).optional(),
  phone: line(limit).optional(),
});
const atLeastOne = (value: object) => Object.values(value).some((part) => part !== undefined);

/** One text for everyone, or one for each system; `all` comes before the system's own. */
export const systemText = z.union([
  line(600),
  z.strictObject(bySystem(600)).refine(atLeastOne, 'give `all` or at least one system'),
]);

const stepList = z.array(line(240)).min(1).max(8);
export const systemSteps = z.union([
  stepList,
  z
    .strictObject({
      all: stepList.optional(),
      windows: stepList.optional(),
      macos: stepList.optional(),
      linux: stepList.optional(),
      phone: stepList.optional(),
    })
    .refine(atLeastOne, 'give `all` or at least one system'),
]);

/** What a member may say is not there, as the answers of the check `not-here` call it. */
export const needs = z.array(answerId).optional();

/** Answers of other checks. */
export const answersOf = z.array(z.strictObject({ check: id, answers: z.array(answerId).min(1) })).min(1);
