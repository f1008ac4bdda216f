/** Reads the catalogue's two files once, into arrays and look-up tables; targets themselves are made when asked for. */
import { join } from 'node:path';
import { createKept } from '../ground/kept.js';
import { numberKeyOf, type CatalogueTables } from './catalogue-index.js';
import { NO_KIND, type Catalogue } from './catalogue.js';
import { readCsvLines } from './csv-lines.js';
import {
  DEEP_SKY_COLUMNS,
  deepSkyRank,
  deepSkyTarget,
  indexDeepSkyRow,
  readDeepSkyRow,
  showpieceRank,
  type DeepSkyRow,
} from './deep-sky-row.js';
import { readShowpieces } from './showpieces.js';
import { SOLAR_SYSTEM } from './solar-system.js';
import { readStarExtras } from './star-extras.js';
import { indexStarRow, readStarRow, STAR_COLUMNS, starRank, starTarget } from './star-row.js';
import { TARGET_KINDS, type Target } from './target.js';

const DEG = Math.PI / 180;
const KEPT_TARGETS = 600;
const KIND_INDEX = new Map<string, number>(TARGET_KINDS.map((kind, i) => [kind, i]));

/** Reads the catalogue's CSV files from a folder ("knowledge/catalogue"); throws an Error naming the file and line where one is malformed. */
export const loadCatalogue = (folder: string): Catalogue => {
  const deepSky = readCsvLines(join(folder, 'deep-sky.csv'), DEEP_SKY_COLUMNS);
  const stars = readCsvLines(join(folder, 'stars.csv'), STAR_COLUMNS);
  const showpieces = readShowpieces(folder);
  const extras = readStarExtras(folder);
  const firstStar = deepSky.lines.length;
  const length = firstStar + stars.lines.length;
  const sweep = {
    length,
    unitX: new Float64Array(length),
    unitY: new Float64Array(length),
    unitZ: new Float64Array(length),
    magnitude: new Float32Array(length),
    sizeArcmin: new Float32Array(length).fill(NaN),
    minorSizeArcmin: new Float32Array(length).fill(NaN),
    kindIndex: new Uint8Array(length),
    alsoKindIndex: new Uint8Array(length).fill(NO_KIND),
    showpieceRank: new Uint8Array(length),
    group: new Uint16Array(length),
    separationArcsec: new Float32Array(length).fill(NaN),
    wellKnown: new Uint8Array(length),
  };
  const rank = new Float32Array(length);
  const tables: CatalogueTables = { exact: new Map(), unnumbered: new Map(), short: new Map(), names: [] };
  const positions = new Map<string, number>();

  const enter = (
    position: number,
    id: string,
    { kind, raDeg, decDeg, magnitude }: Pick<DeepSkyRow, 'kind' | 'raDeg' | 'decDeg' | 'magnitude'>,
  ): void => {
    const kindIndex = KIND_INDEX.get(kind);
    if (kindIndex === undefined) throw new Error(`${id} in ${folder} has the unknown kind "${kind}".`);
    if (!(raDeg >= 0 && raDeg < 360 && decDeg >= -90 && decDeg <= 90))
      throw new Error(`${id} in ${folder} has an impossible position.`);
    if (positions.has(id)) throw new Error(`${id} is twice in ${folder}.`);
    positions.set(id, position);
    sweep.unitX[position] = Math.cos(decDeg * DEG) * Math.cos(raDeg * DEG);
    sweep.unitY[position] = Math.cos(decDeg * DEG) * Math.sin(raDeg * DEG);
    sweep.unitZ[position] = Math.sin(decDeg * DEG);
    sweep.magnitude[position] = magnitude ?? NaN;
    sweep.kindIndex[position] = kindIndex;
  };

  // Stars first: where a cluster is also known by a star's designation (ω Centauri), a real star of that designation has it.
  stars.lines.forEach((line, i) => {
    const row = readStarRow(line);
    const position = firstStar + i;
    const measured = extras.doubles.get(row.hip);
    const kind = row.isDouble || measured !== undefined ? 'double-star' : 'star';
    enter(position, indexStarRow(row, position, tables), { ...row, kind });
    sweep.separationArcsec[position] = measured?.separationArcsec ?? NaN;
    sweep.showpieceRank[position] = measured?.showpieceRank ?? 0;
    sweep.wellKnown[position] = row.names ? 1 : 0;
    rank[position] = starRank(row);
  });
  deepSky.lines.forEach((line, position) => {
    const row = readDeepSkyRow(line);
    const id = indexDeepSkyRow(row, position, tables);
    enter(position, id, row);
    sweep.sizeArcmin[position] = row.sizeArcmin ?? NaN;
    sweep.minorSizeArcmin[position] = row.minorSizeArcmin ?? row.sizeArcmin ?? NaN;
    sweep.alsoKindIndex[position] = KIND_INDEX.get(row.alsoKind) ?? NO_KIND;
    sweep.showpieceRank[position] = showpieceRank(row, showpieces.get(id)) ?? 0;
    sweep.wellKnown[position] = row.messier || row.caldwell || row.commonNames ? 1 : 0;
    rank[position] = deepSkyRank(row);
  });

  const groups = new Map<string, number>();
  for (const [id, { groupId }] of showpieces) {
    const position = positions.get(id);
    if (position === undefined)
      throw new Error(`showpieces.csv in ${folder} names ${id}, which is not in the catalogue.`);
    if (groupId === null) continue;
    if (!groups.has(groupId)) groups.set(groupId, groups.size + 1);
    sweep.group[position] = groups.get(groupId) ?? 0;
  }
  for (const hip of [...extras.doubles.keys(), ...extras.variables.keys()])
    if (!positions.has(`hip${hip}`)) throw new Error(`${folder} knows more of HIP ${hip} than stars.csv does.`);

  const nonexistent = new Set(
    deepSky.comments.flatMap((line) => /^# nonexistent: (.*)$/.exec(line)?.[1]?.split(';') ?? []).map(numberKeyOf),
  );
  const starOf = (line: string): Target => {
    const target = starTarget(readStarRow(line), extras);
    const groupId = showpieces.get(target.id)?.groupId;
    return groupId == null ? target : { ...target, groupId };
  };
  const read = (position: number): Target => {
    const line = position < firstStar ? deepSky.lines[position] : stars.lines[position - firstStar];
    if (line === undefined) throw new RangeError(`No target at ${position}: the catalogue has ${length}.`);
    if (position >= firstStar) return starOf(line);
    const row = readDeepSkyRow(line);
    return deepSkyTarget(row, showpieces.get(numberKeyOf(row.designation)));
  };
  // What shows tonight is the same few hundred for most members.
  const kept = createKept<number, Target>(KEPT_TARGETS);
  const targetAt = (position: number): Target => kept(position, () => read(position));
  return {
    sweep,
    solarSystem: SOLAR_SYSTEM,
    targetAt,
    targetById: (id) => {
      const position = positions.get(id);
      return position === undefined ? SOLAR_SYSTEM.find((body) => body.id === id) : targetAt(position);
    },
    index: { ...tables, nonexistent, rank },
  };
};
