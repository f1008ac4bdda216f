/** Folders with a small fault model, for tests of its files. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach } from 'vitest';
import { checkReferences } from '../../bot/triage/model/check-references.js';
import { problemLine } from '../../bot/triage/model/knowledge-problem.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';

const made: string[] = [];
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

export const folderWith = (files: Readonly<Record<string, string>>): string => {
  const folder = mkdtempSync(join(tmpdir(), 'pierhand-knowledge-'));
  made.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(folder, name, '..'), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
};

export const BASE = {
  'stages.yaml': '- { id: power, title: Power }\n- { id: cable, title: Cable }\n',
  'paths.yaml':
    '- { id: wire, title: A wire, description: One., stages: [power, cable], systems: [windows, macos, linux], clients: [direct, platform] }\n',
  'checks/all.yaml': `- id: light
  stage: power
  question: Is the light on?
  how: Look.
  answers: [{ id: "on", label: Lit }, { id: "off", label: Dark }]
  good: "on"
  minutes: 1
  source: invented for a test
`,
  'faults/power.yaml': `- id: unplugged
  stage: power
  title: It is not plugged in
  why: Somebody pulled it.
  weight: 2
  answers: { light: "off" }
  remedy: { steps: [Plug it in.], minutes: 1 }
  verify: { text: The light comes on., check: light, answer: "on" }
  source: invented for a test
- id: loose
  stage: cable
  title: The cable is loose
  why: It wobbles.
  weight: 1
  remedy: { steps: [Push it in.], minutes: 2 }
  verify: { text: It holds. }
  source: invented for a test
`,
  'evidence/words.yaml': `- id: dark-words
  pattern: '(no|without) (light|power)'
  example: there is no light at all
  nonExample: no lightning tonight
  answers: { light: "off" }
  says: There is no power.
  source: invented for a test
`,
};
export const goodEvidence = {
  ...BASE,
  'evidence/words.yaml': BASE['evidence/words.yaml'].replace(
    '(no|without) (light|power)',
    '(no|without) (light|power)\\b',
  ),
};

export const complaints = (files: Readonly<Record<string, string>>, overlay?: string): string[] => {
  const folder = folderWith(files);
  const result = readEntries(folder, overlay);
  return [...result.problems, ...checkReferences(result)].map((problem) =>
    problemLine(problem).replace(`${folder}/`, ''),
  );
};
