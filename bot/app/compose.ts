/** Puts the parts together: settings → store → knowledge → what commands work with. */
import { isProblem } from '../ground/problem.js';
import { once } from '../ground/once.js';
import path from 'node:path';
import { setImmediate as turn } from 'node:timers/promises';
import { StartError } from '../ground/start-error.js';
import { loadCatalogue, warmCompletion } from '../catalogue/index.js';
import type { Deps } from '../commands/core/command.js';
import { allCommands, allReaders } from '../commands/all-commands.js';
import { createPictureReader } from '../pictures/picture-reader.js';
import { loadPlaces, resolveSite, siteProblemMessage } from '../places/index.js';
import { projectRoot } from '../ground/project-root.js';
import type { Settings } from './settings.js';
import { keepElements } from '../small-bodies/index.js';
import { isUnencrypted } from '../store/database-tls.js';
import { openStore, type StorePlace } from '../store/open-store.js';
import { doingsNow, readText } from '../reading/index.js';
import { compiledModelFile } from './compiled-model.js';
import { cautions } from '../cautions/cautions.js';
import {
  countEntries,
  KnowledgeError,
  loadTriage,
  problemLine,
  remediesOf,
  type TriageModel,
} from '../triage/index.js';

export interface OpenedDeps {
  readonly deps: Deps;
  /** What of the club's own is in force, by kind ("faults": 2); null where no folder is set. */
  readonly clubEntries: Readonly<Record<string, number>> | null;
  /** Reads now what is otherwise read on first use, a piece at a time, so that the first to ask does not wait for it. */
  readonly warm: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** One line for the operator: the first mistake, and how the others are seen. */
const notTaken = (folder: string, { problems }: KnowledgeError): string => {
  const [first] = problems;
  const others = problems.length - 1;
  const told = `PIERHAND_KNOWLEDGE: ${first === undefined ? folder : problemLine(first)}${others > 0 ? ` (and ${others} more)` : ''}`;
  return [
    told,
    `${/[.?!]$/u.test(told) ? '' : '.'} Nothing of the folder is taken, so the bot does not start; npm run -s knowledge -- check --overlay ${folder} tells all.`,
  ].join('');
};

export interface OpenWish {
  /** Default: where the settings say. */
  readonly place?: StorePlace | undefined;
  readonly onAnswered?: Deps['onAnswered'];
}

/** Where the settings say that the store lies. */
const placeOf = ({ databaseUrl, dataFolder }: Settings): StorePlace =>
  databaseUrl === null ? { dataFolder } : { databaseUrl };

/**
 * Opens all that commands need; what goes wrong later (a list that cannot be fetched) goes to `onProblem`.
 * The catalogue is read at once, gazetteer and fault model on first use; a club's own
 * fault model is read now, so that the operator hears of a mistake in it at start.
 * @throws StartError when the store or the club's knowledge folder cannot be used
 */
export const openDeps = async (
  settings: Settings,
  onProblem: (message: string, isGrave?: boolean) => void = (message) =>
    void process.stderr.write(`pierhand: ${message}
`),
  { place = placeOf(settings), onAnswered }: OpenWish = {},
): Promise<OpenedDeps> => {
  const knowledge = path.join(projectRoot(), 'knowledge');
  const triage = once((): TriageModel =>
    loadTriage(path.join(knowledge, 'connection'), settings.knowledgeFolder ?? undefined, compiledModelFile(), {
      cautions: new Set(cautions().keys()),
    }),
  );
  if (settings.knowledgeFolder !== null) {
    try {
      triage();
    } catch (error) {
      if (!(error instanceof KnowledgeError)) throw error;
      throw new StartError(notTaken(settings.knowledgeFolder, error));
    }
  }
  if ('databaseUrl' in place && isUnencrypted(place.databaseUrl))
    onProblem(
      'DATABASE_URL reaches its server over the network without TLS: what members save can be read on the way. Add ?sslmode=require or stricter.',
    );
  const store = await openStore(place, {
    onUnopened: (line, isDamaged) =>
      onProblem(
        `${'databaseUrl' in place ? 'DATABASE_URL' : 'PIERHAND_DATA'}: ${isDamaged ? `the store is damaged (${line}): put a backup back` : `the store cannot be opened (${line}); trying again`}. Until then nothing is saved.`,
        true,
      ),
    onMigrated: (from, to) => {
      if (from > 0) onProblem(`schema ${from} → ${to}: the store was brought up to date`);
    },
  });
  const places = loadPlaces(path.join(knowledge, 'places'));
  if (settings.clubSiteText !== null) {
    const site = resolveSite(places, settings.clubSiteText);
    if (isProblem(site)) {
      await store.close();
      throw new StartError(`PIERHAND_SITE ("${settings.clubSiteText}") cannot be read: ${siteProblemMessage(site)}`);
    }
  }
  const pictures = createPictureReader();
  const elements = keepElements({
    source: settings.elements,
    dataFolder: settings.dataFolder,
    now: () => Date.now(),
    onProblem,
  });
  const catalogue = { ...loadCatalogue(path.join(knowledge, 'catalogue')), moving: elements.moving };
  return {
    clubEntries: settings.knowledgeFolder === null ? null : countEntries(settings.knowledgeFolder),
    deps: {
      ...(onAnswered === undefined ? {} : { onAnswered }),
      catalogue,
      places: () => places,
      store,
      triage,
      pictures,
      clubSiteText: settings.clubSiteText,
      sunLimits: settings.sunLimits,
      commands: allCommands,
      readers: allReaders,
    },
    warm: async () => {
      for (const load of [triage, () => places.warm(), () => warmCompletion(catalogue)]) {
        await turn();
        load();
      }
      // The first texts a process reads are the slowest, until its engine knows what is done often.
      const { reading } = triage();
      for (const text of reading.examples) {
        await turn();
        readText(reading, text);
      }
      // Else the first member who answers a walk in words waits for it.
      await turn();
      reading.phraseCounts();
      await turn();
      remediesOf(triage());
      await turn();
      doingsNow('vega sits in the middle now');
    },
    close: async () => {
      elements.close();
      pictures.close();
      await store.close();
    },
  };
};
