/** What cured in a club, counted with its members' consent, beside what the shipped weights expect: for review, never applied by hand. */
import { openStore } from '../../bot/store/open-store.js';
import { loadTriage } from '../../bot/triage/index.js';

export interface LearnedRow {
  readonly faultId: string;
  readonly counted: number;
  /** How many of as many cures the shipped weights would expect. */
  readonly expected: number;
}

/** Most surprising first: counted against expected. */
export const learnedRows = (
  weights: ReadonlyMap<string, number>,
  counts: Readonly<Record<string, number>>,
): readonly LearnedRow[] => {
  const all = Object.values(counts).reduce((sum, n) => sum + n, 0);
  const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
  return Object.entries(counts)
    .map(([faultId, counted]) => ({ faultId, counted, expected: (all * (weights.get(faultId) ?? 0)) / total }))
    .sort((a, b) => b.counted - b.expected - (a.counted - a.expected) || (a.faultId < b.faultId ? -1 : 1));
};

export const printLearned = async (
  folder: string,
  overlay: string | undefined,
  data: string,
  club: string,
): Promise<number> => {
  const store = await openStore({ dataFolder: data });
  try {
    const counts = await store.outcomes.counts(club);
    const weights = new Map(loadTriage(folder, overlay).faults.map(({ id, weight }) => [id, weight]));
    const rows = learnedRows(weights, counts);
    console.log(`${club}: ${rows.reduce((sum, { counted }) => sum + counted, 0)} cures counted`);
    for (const { faultId, counted, expected } of rows)
      console.log(`  ${faultId.padEnd(36)} ${String(counted).padStart(3)} counted, ${expected.toFixed(1)} expected`);
    return 0;
  } finally {
    await store.close();
  }
};
