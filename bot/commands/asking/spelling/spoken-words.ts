/** The words that questions are made of, beside the little ones and the names: what a word with a slip is mended to. */

const KINDS = `galaxy galaxies nebula nebulae nebulas cluster clusters globular globulars globs double doubles binary binaries planet planets
  planetary planetaries star stars comet comets asteroid asteroids constellation constellations object objects target targets meteor meteors
  shower showers satellite satellites station aurora moons`;
const DAYS = `monday tuesday wednesday thursday friday saturday sunday january february march april june july august september october november december
  spring summer autumn winter weekend week month minutes seconds half quarter midday afternoon currently moment`;
const SKY = `eclipse eclipses lunar solar partial total opposition oppositions elongation conjunction conjunctions meeting meetings moonless
  perseids geminids leonids orionids quadrantids lyrids taurids ursids draconids galilean astronomical nautical civil darkness darkest
  phase perigee apogee supermoon supermoons totality waxing waning crescent gibbous culminate culminates highest visible sunspots milky twilight horizon trees roof hedge
  clear clears rises weather cloudy clouds forecast transparency`;
const MOUNT = `mount align aligned aligning alignment polar equator equatorial german dobsonian altazimuth meridian flip flips sidereal latitude longitude
  coordinates precess epoch drifts drifted drifting handset handbox controller keypad cable laptop computer adapter driver bluetooth network
  serial port connect connected connection connecting tracking pointing landing landed slewed ended stopped missed guide calibrate direction degrees arcminutes
  arcseconds refractor refractors reflector reflectors timezone daylight saving zone binoculars inch aperture eyepiece camera declination ascension`;
const DOINGS = `remind reminder reminders notify alert warn wake alarm tell cancel delete remove rename forget list save site sites switch
  position location command commands question settings privacy`;

/** Beside them, the words by which a question is told from another. */
const ASKED = `higher lower lowest brighter brightest fainter faintest nearer nearest biggest bigger larger separation apart compare angle angles airmass refraction
  overhead zenith facing proper properly enough bedtime family children past eyepieces magnification magnify power filter filters laser pointer
  rings ring spoil spoiled ruin ruined interfere nuisance moonlight darkness hours degree arcminute hour minute second o'clock eleven twelve
  three four five seven eight nine fifteen thirty forty fifty evening tomorrow sunset sunrise moonrise moonset transits transit crosses cross behind
  brightness magnitude magnitudes size colour color constellation shooting telescopes inches millimetre split variable minimum minima period
  naked unaided polluted pollution suburbs suburb city village countryside rural skies overcast battery batteries charge heater dew foggy fogged misty upside
  inverted backwards mirror lens lenses mirrors tripod finder goto gotos lands slew slews slewing misses missing keeps always bit left
  nearby rather instead please beside between anywhere everywhere somewhere inside outside along across recommend suggest suggestions advice
  above below besides despite except full free light lights limit limiting least reach reaches percent illuminated
  disc edge axis compass country wait warning weekly monthly daily nightly birthday turn turns tube finished straight directly moving moved points placed
  northern southern largest dimmer wide wider widest whenever happening white green blue yellow orange open hide hides hidden fence wall shows shown kind
  worth front centre center corner middle side sides crescent quarter planets lies belongs needed necessary
  visible invisible easy easier hard harder difficult best better good great nice favourite favorite interesting`;

export const SPOKEN_WORDS: readonly string[] = [KINDS, DAYS, SKY, MOUNT, DOINGS, ASKED].flatMap((words) =>
  words.split(/\s+/u),
);

/** Letters that stand for a thing of their own, and are no word without its vowels. */
export const ABBREVIATIONS: readonly string[] =
  `usb com pc dst lst scp ncp gps utc gmt bst ngc ic hd hr hip sao tv ccd dslr led eq gem ota hz ttl rs232 ra dec mm cm km mag fov alt az sct ed
   mon tue tues wed thu thur thurs fri sat sun jan feb mar apr may jun jul aug sep sept oct nov dec min mins hr hrs sec secs arcsec arcsecs arcmin arcmins
   deg degs astro merc dob dobs altaz mak newt newts frac apo apos goto gotos alt-az globs eng usa aus ground grounds
   wifi lan tcp udp ip dhcp dns ssid mac ms sw hw fw msg btw lol omg ps vs sqm ldn vdb mel cr tr st mt ft in im am pm`.split(
    /\s+/u,
  );
