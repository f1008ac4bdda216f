/** The 88 constellations: IAU abbreviation, Latin name, Latin genitive (IAU list; IAU Transactions IIIB, 1928, for the abbreviations). */

export interface Constellation {
  readonly abbreviation: string;
  readonly name: string;
  readonly genitive: string;
}

const TABLE = `And Andromeda Andromedae|Ant Antlia Antliae|Aps Apus Apodis|Aqr Aquarius Aquarii|Aql Aquila Aquilae|Ara Ara Arae|
Ari Aries Arietis|Aur Auriga Aurigae|Boo Boötes Boötis|Cae Caelum Caeli|Cam Camelopardalis Camelopardalis|Cnc Cancer Cancri|
CVn Canes_Venatici Canum_Venaticorum|CMa Canis_Major Canis_Majoris|CMi Canis_Minor Canis_Minoris|Cap Capricornus Capricorni|
Car Carina Carinae|Cas Cassiopeia Cassiopeiae|Cen Centaurus Centauri|Cep Cepheus Cephei|Cet Cetus Ceti|
Cha Chamaeleon Chamaeleontis|Cir Circinus Circini|Col Columba Columbae|Com Coma_Berenices Comae_Berenices|
CrA Corona_Australis Coronae_Australis|CrB Corona_Borealis Coronae_Borealis|Crv Corvus Corvi|Crt Crater Crateris|Cru Crux Crucis|
Cyg Cygnus Cygni|Del Delphinus Delphini|Dor Dorado Doradus|Dra Draco Draconis|Equ Equuleus Equulei|Eri Eridanus Eridani|
For Fornax Fornacis|Gem Gemini Geminorum|Gru Grus Gruis|Her Hercules Herculis|Hor Horologium Horologii|Hya Hydra Hydrae|
Hyi Hydrus Hydri|Ind Indus Indi|Lac Lacerta Lacertae|Leo Leo Leonis|LMi Leo_Minor Leonis_Minoris|Lep Lepus Leporis|Lib Libra Librae|
Lup Lupus Lupi|Lyn Lynx Lyncis|Lyr Lyra Lyrae|Men Mensa Mensae|Mic Microscopium Microscopii|Mon Monoceros Monocerotis|
Mus Musca Muscae|Nor Norma Normae|Oct Octans Octantis|Oph Ophiuchus Ophiuchi|Ori Orion Orionis|Pav Pavo Pavonis|
Peg Pegasus Pegasi|Per Perseus Persei|Phe Phoenix Phoenicis|Pic Pictor Pictoris|Psc Pisces Piscium|
PsA Piscis_Austrinus Piscis_Austrini|Pup Puppis Puppis|Pyx Pyxis Pyxidis|Ret Reticulum Reticuli|Sge Sagitta Sagittae|
Sgr Sagittarius Sagittarii|Sco Scorpius Scorpii|Scl Sculptor Sculptoris|Sct Scutum Scuti|Ser Serpens Serpentis|
Sex Sextans Sextantis|Tau Taurus Tauri|Tel Telescopium Telescopii|Tri Triangulum Trianguli|
TrA Triangulum_Australe Trianguli_Australis|Tuc Tucana Tucanae|UMa Ursa_Major Ursae_Majoris|UMi Ursa_Minor Ursae_Minoris|
Vel Vela Velorum|Vir Virgo Virginis|Vol Volans Volantis|Vul Vulpecula Vulpeculae`;

export const CONSTELLATIONS: readonly Constellation[] = TABLE.split('|').map((row) => {
  const [abbreviation = '', name = '', genitive = ''] = row
    .trim()
    .split(' ')
    .map((word) => word.replaceAll('_', ' '));
  return { abbreviation, name, genitive };
});

const BY_ABBREVIATION = new Map(CONSTELLATIONS.map((c) => [c.abbreviation, c]));

/** "Peg" → "Pegasus"; the abbreviation itself where it is none of the 88. */
export const constellationName = (abbreviation: string): string => {
  return BY_ABBREVIATION.get(abbreviation)?.name ?? abbreviation;
};

const LEAST_LETTERS = 3;

/** "herc", "cass", "ori": a constellation's name, or the beginning of one. */
export const beginsConstellation = (word: string): boolean =>
  word.length >= LEAST_LETTERS && CONSTELLATIONS.some(({ name }) => name.toLowerCase().startsWith(word.toLowerCase()));

const ENDS_NAMES = new Set(
  CONSTELLATIONS.flatMap(({ abbreviation, genitive }) => [abbreviation, genitive].map((word) => word.toLowerCase())),
);

/** "leonis", "leo": what follows a star's letter, as the IAU writes it short or in full. */
export const isGenitive = (words: string): boolean => ENDS_NAMES.has(words.toLowerCase());

/** R to Z, RR to ZZ, AA to QZ without J, the second letter never before the first (Argelander's names, as the GCVS keeps them), or V 335 on. */
const VARIABLE = /^(?:([r-z])|([a-ik-z])([a-ik-z])|v ?\d{3,5}) (.+)$/iu;
const WORDS_OF_TWO = new Set('am an as at be by do go he hi if in is it me my no of on or so to up us we'.split(' '));

/** "X Cygni", "RT Aur", "V404 Cyg": the name of a variable star, be it in a list or not. */
export const isVariableName = (text: string): boolean => {
  const [, , first = '', second = '', ofConstellation] = VARIABLE.exec(text.trim()) ?? [];
  if (ofConstellation === undefined || !isGenitive(ofConstellation)) return false;
  const pair = `${first}${second}`.toLowerCase();
  return !WORDS_OF_TWO.has(pair) && first.toLowerCase() <= second.toLowerCase();
};
