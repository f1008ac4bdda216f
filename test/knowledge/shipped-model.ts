/** The fault model as shipped, read once for the tests of this folder. */
import { readText, type ReadBy } from '../../bot/reading/index.js';
import { CLIENTS, SYSTEMS } from '../../bot/triage/model/schema.js';
import { situationFor, type Situation } from '../../bot/triage/engine/situation.js';
import { shippedModel } from '../shipped.js';

export const shipped = shippedModel();

/** The entries that say something of a text (not those that only tell a system or a path), and the answers read. */
export const read = (
  text: string,
  by?: ReadBy,
): {
  readonly ids: readonly string[];
  readonly answers: Readonly<Record<string, string>>;
  readonly system: string | null;
} => {
  const { met, facts } = readText(shipped.reading, text, by);
  return {
    ids: met.filter((id) => shipped.reading.evidence.find((entry) => entry.id === id)?.says !== undefined),
    answers: Object.fromEntries(
      facts.flatMap(({ what, answer }) => (shipped.check(what) === undefined ? [] : [[what, answer]])),
    ),
    system: facts.find(({ what }) => what === 'system')?.answer ?? null,
  };
};

/** How much likelier a text makes a fault, by the patterns it matches. */
export const factorFor = (text: string, faultId: string): number =>
  readText(shipped.reading, text).suggested.find((one) => one.faultId === faultId)?.weight ?? 1;

/** Every path under every system and client it names. */
export const everySituation = (): readonly Situation[] =>
  shipped.paths.flatMap((path) =>
    SYSTEMS.filter((s) => path.systems.includes(s)).flatMap((system) =>
      CLIENTS.filter((c) => path.clients.includes(c)).map((client) =>
        situationFor(shipped, { path: path.id, system, client }),
      ),
    ),
  );
