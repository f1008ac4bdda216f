/** What a target is called among others: by the name people use, the number behind it. */
import { constellationName } from './constellations.js';
import type { Target } from './target.js';
import { nameWithAlias } from './wording.js';

/** "Double Cluster" rather than "C 14"; Messier's numbers are names themselves. */
export const commonName = ({ name, aliases }: Target): string =>
  /^(?:C|NGC|IC|Mel|Cr|ESO|Sh2-|HIP) ?\d/u.test(name)
    ? (aliases.find((alias) => !/^[A-Z][A-Za-z]*\d? ?\d/u.test(alias)) ?? name)
    : name;

/** Names that only a catalogue knows stand behind, or, where there is no other, after what it is. */
const LISTED_ONLY = /^(?:ESO|HIP|Sh2-|PGC|UGC) ?\d/u;

/** As it stands in a list: "h 3945 (HIP 35210)", "A double star in Canis Major (HIP 35210)". */
export const listName = (target: Target): string => {
  if (!LISTED_ONLY.test(target.name)) return nameWithAlias(target);
  const [alias] = target.aliases;
  const place = target.constellation === null ? '' : ` in ${constellationName(target.constellation)}`;
  return alias === undefined ? `A ${target.kindText}${place} (${target.name})` : `${alias} (${target.name})`;
};
