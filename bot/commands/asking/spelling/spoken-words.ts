/** The words that questions are made of, beside the little ones and the names: what a word with a slip is mended to. */

const KINDS = `galaxy galaxies nebula nebulae nebulas cluster clusters globular globulars globs double doubles binary binaries planet planets
  planetary planetaries star stars comet comets asteroid asteroids constellation constellations object objects target targets meteor meteors
  shower showers satellite satellites station aurora moons`;
const DAYS = `monday tuesday wednesday thursday friday saturday sunday january february march april june july august september october november december
  spring summer autumn winter weekend week month minutes seconds half quarter midday afternoon currently moment`;
const SKY = `eclipse eclipses lunar solar partial total opposition oppositions elongation conjunction conjunctions meeting meetings moonless
  perseids geminids leonids orionids quadrantids lyrids taurids ursids draconids galilean astronomical nautical civil darkness darkest
  phase waxing waning crescent gibbous culminate culminates highest visible sunspots milky twilight horizon trees roof hedge
  clear clears rises weather cloudy clouds forecast transparency`;
const MOUNT = `mount align aligned aligning alignment polar equator equatorial german dobsonian altazimuth meridian flip flips sidereal latitude longitude
  coordinates precess epoch drifts drifted drifting handset handbox controller keypad cable laptop computer adapter driver bluetooth network
  serial port connect connected connection connecting tracking pointing landing landed slewed ended stopped missed guide calibrate direction degrees arcminutes
  arcseconds refractor refractors reflector reflectors timezone daylight saving zone binoculars inch aperture eyepiece camera declination ascension`;
const DOINGS = `remind reminder reminders notify alert warn wake alarm tell cancel delete remove rename forget list save site sites switch
  position location command commands question settings privacy`;

export const SPOKEN_WORDS: readonly string[] = [KINDS, DAYS, SKY, MOUNT, DOINGS].flatMap((words) =>
  words.split(/\s+/u),
);

/** Letters that stand for a thing of their own, and are no word without its vowels. */
export const ABBREVIATIONS: readonly string[] =
  `usb com pc dst lst gps utc gmt bst ngc ic hd hr hip sao tv ccd dslr led eq gem ota hz ttl rs232 ra dec mm cm km mag fov alt az sct ed
   wifi lan tcp udp ip dhcp dns ssid mac ms sw hw fw msg btw lol omg ps vs sqm ldn vdb mel cr tr st mt ft in im am pm`.split(
    /\s+/u,
  );
