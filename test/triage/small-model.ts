/** Small fault models for tests, written out in code so that a test shows all its numbers. */
import { makeModel, type TriageModel } from '../../bot/triage/model/model.js';
import type { EvidenceEntry } from '../../bot/reading/index.js';
import type { CheckEntry, FaultEntry } from '../../bot/triage/model/schema.js';

const SOURCE = 'invented for a test';

type FaultParts = Pick<FaultEntry, 'id'> & Partial<FaultEntry> & { readonly minutes?: number };
/** A fault at stage "power" with weight 1 and a remedy of 4 minutes unless said otherwise. */
export const fault = ({ minutes = 4, ...parts }: FaultParts): FaultEntry => ({
  stage: 'power',
  title: `The fault ${parts.id}`,
  why: 'It is a test.',
  weight: 1,
  remedy: { steps: [`Mend ${parts.id}.`], minutes },
  verify: { text: 'It runs.' },
  source: SOURCE,
  ...parts,
});

type CheckParts = Pick<CheckEntry, 'id'> & Partial<CheckEntry>;
/** A yes-or-no check at stage "power" whose good answer is "yes"; one minute, never "not sure", unless said otherwise. */
export const check = (parts: CheckParts): CheckEntry => ({
  stage: 'power',
  question: `Is ${parts.id} well?`,
  how: 'Look.',
  answers: [
    { id: 'yes', label: 'Yes' },
    { id: 'no', label: 'No' },
  ],
  good: 'yes',
  scope: 'part',
  minutes: 1,
  unsure: 0,
  source: SOURCE,
  ...parts,
});

export const evidence = (parts: Pick<EvidenceEntry, 'id' | 'pattern'> & Partial<EvidenceEntry>): EvidenceEntry => ({
  example: 'x',
  says: `It says ${parts.id}.`,
  source: SOURCE,
  ...parts,
});

interface Parts {
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckEntry[];
  readonly evidence?: readonly EvidenceEntry[];
}

/** One path "wire" with the stages power, cable, port, program. */
export const smallModel = ({ faults, checks, evidence: texts = [] }: Parts): TriageModel =>
  makeModel({
    paths: [
      {
        id: 'wire',
        title: 'A wire',
        description: 'One wire.',
        stages: ['power', 'cable', 'port', 'program'],
        systems: ['windows', 'macos', 'linux'],
        clients: ['direct', 'platform'],
      },
    ],
    links: [],
    stages: ['power', 'cable', 'port', 'program'].map((id) => ({ id, title: id })),
    faults,
    checks,
    evidence: texts,
    translations: [],
    words: [],
    sayings: [],
    families: [],
    wordedAnswers: [],
    deeds: [],
  });

export const WIRE = { path: 'wire', system: 'linux', client: 'direct' } as const;
