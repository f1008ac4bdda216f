/** For reviewers of the fault model: `npm run knowledge -- check | play WORDS | questions | words | tree PATH | simulate | learned`. */
import path from 'node:path';
import { parseArgs } from 'node:util';
import { leaveWithReader } from '../../bot/app/leave-with-reader.js';
import { cautions } from '../../bot/cautions/cautions.js';
import { loadTriage } from '../../bot/triage/index.js';
import { mistakesIn } from '../../bot/triage/model/load-triage.js';
import { KnowledgeError, problemLine } from '../../bot/triage/model/knowledge-problem.js';
import { makeModel } from '../../bot/triage/model/model.js';
import { readEntries, type ReadResult } from '../../bot/triage/model/read-entries.js';
import { CLIENTS, SYSTEMS } from '../../bot/triage/model/schema.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { commonWords } from './common-words.js';
import { checkCoverage } from './check-coverage.js';
import { printLearned } from './learned.js';
import { notHeardLines } from './not-heard.js';
import { changedLines, LOOK, offeredLines } from './offered.js';
import { likeliestAfter, playLines } from './play.js';
import { DEEP } from './policies.js';
import { figuresFrom, jobsFor, meanOf, simulate, type Narrowing, type WalkRecord } from './simulate.js';
import { treeLines } from './tree.js';

const USAGE = `Review the fault model in knowledge/connection:
  npm run -s knowledge -- check                  every problem, with file, line and entry
  npm run -s knowledge -- play 'WORDS'           what is read of a member's words, and where they lead; counts nothing
       [--fault ID]                              … for one who has this fault
  npm run knowledge -- tree PATH                 the walk of one path as a Mermaid flow chart
       [--system windows|macos|linux] [--client direct|platform] [--depth 6]
  npm run -s knowledge -- questions [WORDS]      the questions, with their answers, that have the words
  npm run -s knowledge -- words [WORD]           the lists of words that mean the same, by what they name
  npm run -s knowledge -- simulate [--json]      steps and minutes to cure, worst first
       [--path PATH] [--system …] [--client …]   of these alone: seconds in place of minutes
       [--alone]                                 without the searches that it is compared with: a quarter of the time
  npm run -s knowledge -- learned --club CLUB    what cured in a club beside what the weights expect
       [--data FOLDER]
Any of them with --overlay FOLDER lays a club's own entries over the shipped ones.
`;

const FOLDER = 'knowledge/connection';
const HELD_TO = { cautions: new Set(cautions().keys()) };

const count = (problems: number): string => (problems === 1 ? '1 problem' : `${problems} problems`);

const at = ({ file, line }: { readonly file: string; readonly line: number }): string => `${file}:${line}`;

const SHOWN_HEARD = 3;

/** What becomes of the club's own faults and words, for whoever wrote them; returns how many of them are to be looked at. */
const printOffered = (result: ReadResult): number => {
  const { entries, locate, from } = result;
  let looks = 0;
  const model = makeModel(entries);
  for (const fault of model.faults) {
    const origin = from('faults', fault.id);
    if (origin === 'shipped') continue;
    const lines = origin === 'club' ? offeredLines(model, fault) : changedLines(model, fault);
    if (lines.some((one) => one.startsWith(LOOK))) looks += 1;
    console.log(`${at(locate('faults', fault.id, []))}: ${fault.id}:\n  ${lines.join('\n  ')}`);
  }
  for (const { id, heardIn } of commonWords(model, result)) {
    looks += 1;
    const some = heardIn.slice(0, SHOWN_HEARD).join('”, “');
    const more = heardIn.length > SHOWN_HEARD ? ` and ${heardIn.length - SHOWN_HEARD} more` : '';
    console.log(
      `${at(locate('sayings', id, []))}: ${id.split('.')[0]}:\n  ${LOOK} its words are heard in what is said of other things too: “${some}”${more}; take words that only your members use for it`,
    );
  }
  return looks;
};

/** Where files that ship are named, it is for what the club's folder makes of them. */
const SHIPPED_NAMED =
  'What stands in knowledge/ ships, and something in your folder changes how it is read or weighed. Take your words and faults out one at a time to see which.';

const check = (overlay: string | undefined): number => {
  const result = readEntries(FOLDER, overlay);
  const broken = mistakesIn(result, HELD_TO);
  // Coverage means nothing while entries are missing.
  const problems = broken.length > 0 ? broken : checkCoverage(result, { shipped: true });
  for (const problem of problems) console.error(problemLine(problem));
  if (overlay !== undefined && problems.some(({ file }) => !path.relative(FOLDER, file).startsWith('..')))
    console.error(SHIPPED_NAMED);
  const { faults, checks, evidence, paths } = result.entries;
  const counted = `${paths.length} paths, ${faults.length} faults, ${checks.length} checks, ${evidence.length} evidence patterns`;
  // What is counted of entries that could not be read would be wrong.
  if (problems.length > 0) console.log(`${count(problems.length)}; none of it is taken until they are mended`);
  else {
    const unheard = overlay === undefined ? notHeardLines(result) : [];
    for (const line of unheard) console.log(line);
    const looks = unheard.length + (overlay === undefined ? 0 : printOffered(result));
    console.log(`${counted}; no problems${looks > 0 ? `, and ${looks} to LOOK at` : ''}`);
  }
  return problems.length === 0 ? 0 : 1;
};

const tree = (
  overlay: string | undefined,
  pathId: string | undefined,
  system: string,
  client: string,
  depth: number,
): number => {
  const model = loadTriage(FOLDER, overlay);
  const walked = model.path(pathId ?? '');
  const [knownSystem, knownClient] = [
    SYSTEMS.find((known) => known === system),
    CLIENTS.find((known) => known === client),
  ];
  if (walked === undefined || knownSystem === undefined || knownClient === undefined || !(depth >= 1 && depth <= 30)) {
    console.error(
      `tree needs a path (${model.paths.map(({ id }) => id).join(', ')}), a system (${SYSTEMS.join(', ')}), a client (${CLIENTS.join(', ')}) and a depth of 1 to 30.`,
    );
    return 2;
  }
  console.log(`%% ${walked.title}, ${knownSystem}, ${knownClient}: what the walk does, to ${depth} steps`);
  for (const line of treeLines(situationFor(model, { path: walked.id, system: knownSystem, client: knownClient }), {
    depth,
    leastShare: 0.004,
  }))
    console.log(line);
  return 0;
};

const bar = (done: number, total: number): void => {
  if (!process.stderr.isTTY) return;
  const width = 40;
  const filled = Math.round((width * done) / total);
  process.stderr.write(
    `\r[${'#'.repeat(filled)}${'.'.repeat(width - filled)}] ${done}/${total}${done === total ? '\n' : ''}`,
  );
};

const table = (records: readonly WalkRecord[], groupOf: (record: WalkRecord) => string, limit: number): void => {
  const groups = new Map<string, WalkRecord[]>();
  for (const record of records) groups.set(groupOf(record), [...(groups.get(groupOf(record)) ?? []), record]);
  const rows = [...groups]
    .map(([name, own]) => ({
      name,
      steps: meanOf(own, ({ steps }) => steps),
      minutes: meanOf(own, ({ minutes }) => minutes),
      cured: meanOf(own, ({ end }) => (end === 'cured' ? 1 : 0)),
    }))
    .sort((a, b) => b.steps - a.steps || (a.name < b.name ? -1 : 1));
  console.log(`${''.padEnd(44)} steps  minutes  cured`);
  for (const { name, steps, minutes, cured } of rows.slice(0, limit)) {
    console.log(
      `${name.padEnd(44)} ${steps.toFixed(1).padStart(5)}  ${minutes.toFixed(0).padStart(7)}  ${(cured * 100).toFixed(0).padStart(4)} %`,
    );
  }
  if (rows.length > limit) console.log(`… and ${rows.length - limit} more, all quicker`);
};

/** Every text in a value: a question's directions may differ by system. */
const textsIn = (value: unknown): readonly string[] => {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
};

const hasAll = (value: unknown, words: readonly string[]): boolean => {
  const text = textsIn(value).join(' ').toLowerCase();
  return words.every((word) => text.includes(word.toLowerCase()));
};

const questions = (overlay: string | undefined, words: readonly string[]): number => {
  const found = loadTriage(FOLDER, overlay).checks.filter(({ id, stage, brief, question, how, answers }) =>
    hasAll([id, stage, brief, question, how, answers.map(({ label }) => label)], words),
  );
  for (const { id, stage, question, answers } of found)
    console.log(`${id} (${stage}): ${question}\n${answers.map((a) => `    ${a.id.padEnd(16)} ${a.label}`).join('\n')}`);
  if (found.length === 0) console.error(`No question has "${words.join(' ')}", its directions and answers included.`);
  return found.length === 0 ? 1 : 0;
};

const MOST_WORDS = 12;

const words = (overlay: string | undefined, word: string): number => {
  const found = readEntries(FOLDER, overlay).entries.words.filter((entry) => hasAll([entry.id, entry.words], [word]));
  for (const { id, words: all } of found)
    console.log(`${id}: ${all.slice(0, MOST_WORDS).join(', ')}${all.length > MOST_WORDS ? ', …' : ''}`);
  if (found.length === 0) console.error(`No list of words has "${word}".`);
  return found.length === 0 ? 1 : 0;
};

const MOST_STANDING = 3;

const play = (overlay: string | undefined, said: string, faultId: string | undefined): number => {
  const result = readEntries(FOLDER, overlay);
  const mistakes = mistakesIn(result, HELD_TO);
  if (mistakes.length > 0) throw new KnowledgeError(mistakes);
  const model = makeModel(result.entries);
  if (said === '' || (faultId !== undefined && model.fault(faultId) === undefined)) {
    console.error("play needs a member's words, between quotes, and may have --fault with a fault's id.");
    return 2;
  }
  const wanted = model.faults.filter(({ id }) =>
    faultId === undefined ? result.from('faults', id) === 'club' : id === faultId,
  );
  const faults = wanted.length > 0 ? wanted : likeliestAfter(model, said, MOST_STANDING);
  for (const line of playLines(model, said, faults, faultId !== undefined)) console.log(line);
  return 0;
};

const runSimulation = async (overlay: string | undefined, json: boolean, narrowing: Narrowing): Promise<number> => {
  const model = loadTriage(FOLDER, overlay);
  if (jobsFor(model, narrowing).length === 0) {
    console.error(
      `simulate knows the paths ${model.paths.map(({ id }) => id).join(', ')}, the systems ${SYSTEMS.join(', ')} and the clients ${CLIENTS.join(', ')}.`,
    );
    return 2;
  }
  if (json && narrowing.alone === true) {
    console.error('--json prints the comparison as well; leave out --alone.');
    return 2;
  }
  const records = await simulate(FOLDER, overlay, bar, narrowing);
  const figures = figuresFrom(model, records);
  if (json) {
    console.log(JSON.stringify(figures));
    return 0;
  }
  const own = records.filter(({ policy }) => policy === 'engine');
  const noisy = records.filter(({ policy }) => policy === 'noisy');
  const share = (of: readonly WalkRecord[], end: WalkRecord['end']): string =>
    `${(100 * meanOf(of, (record) => (record.end === end ? 1 : 0))).toFixed(1)} %`;
  console.log('Faults, worst first:');
  table(own, ({ faultId }) => faultId, 25);
  console.log('\nContexts, worst first:');
  table(own, ({ context }) => `${context.path} ${context.system} ${context.client}`, 100);
  const compared = [
    `  deep search     ${figures.bestMeanSteps.toFixed(2)} steps (for fewest steps, ${DEEP.depth} steps ahead over the best ${DEEP.breadth}, told that no answer is wrong) → ratio ${(figures.meanSteps / figures.bestMeanSteps).toFixed(3)}`,
    `  fixed order     ${figures.fixedOrderMeanSteps.toFixed(2)} steps (checks by stage, skipping what is settled) → ratio ${(figures.meanSteps / figures.fixedOrderMeanSteps).toFixed(3)}`,
  ];
  console.log(
    [
      '',
      'Steps are questions and remedies; connection, computer and program are taken as known. One walk a fault and context, answers',
      'drawn as the model has them, the same draws for every policy; faults weigh by their priors, contexts alike.',
      `  the walk        ${figures.meanSteps.toFixed(2)} steps; ${share(own, 'cured')} cured, ${share(own, 'handedOn')} handed on; ${(100 * figures.resolvedWithin10).toFixed(1)} % of either in 10 steps`,
      ...(narrowing.alone === true ? [] : compared),
      `  1 in 10 wrong   ${(100 * figures.noisyResolvedWithin10).toFixed(1)} % cured or handed on in 10 steps; in all ${share(noisy, 'cured')} cured, ${share(noisy, 'handedOn')} handed on`,
    ].join('\n'),
  );
  return 0;
};

const main = async (): Promise<number> => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      json: { type: 'boolean', default: false },
      overlay: { type: 'string' },
      help: { type: 'boolean', default: false },
      path: { type: 'string' },
      system: { type: 'string' },
      client: { type: 'string' },
      alone: { type: 'boolean', default: false },
      depth: { type: 'string', default: '6' },
      club: { type: 'string', default: '' },
      data: { type: 'string', default: './data' },
      fault: { type: 'string' },
    },
  });
  const [task, ...rest] = positionals;
  const [word] = rest;
  if (values.help) {
    console.log(USAGE);
    return 0;
  }
  switch (task) {
    case 'check':
      return check(values.overlay);
    case 'tree':
      return tree(
        values.overlay,
        word ?? values.path,
        values.system ?? 'windows',
        values.client ?? 'direct',
        Number(values.depth),
      );
    case 'simulate':
      return runSimulation(values.overlay, values.json, values);
    case 'questions':
      return questions(values.overlay, rest);
    case 'words':
      return words(values.overlay, word ?? '');
    case 'play':
      return play(values.overlay, rest.join(' ').trim(), values.fault);
    case 'learned':
      return printLearned(FOLDER, values.overlay, values.data, values.club);
    default:
      console.error(USAGE);
      return 2;
  }
};

leaveWithReader();
process.exitCode = await main().catch((error: unknown) => {
  console.error(error instanceof KnowledgeError || error instanceof Error ? error.message : String(error));
  return 1;
});
