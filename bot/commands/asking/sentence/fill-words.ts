/** Words that ask, greet or fill, and need not be used by an answer; and those that an answer of a command is about in any case. */
import { tableOf } from '../../../ground/table-of.js';
import { LITTLE_WORDS } from './words.js';

/** Little words that narrow what is asked: where nothing was made of them, they are told. */
const TELL = new Set(
  `above under without until between before after
  north south east west left azimuth elevation`.split(/\s+/u),
);

/** Beside the little words. */
const FILL = new Set(
  `her their our ours mine yours hers kid kids child children son daughter wife husband mum mom dad friend friends guest guests family boys girls
  grandson granddaughter nephew niece club group class school public beginners newbie six seven eight year old
  star stars planet planets galaxy galaxies nebula nebulae nebulas cluster clusters constellation object asterism double doubles
  tonite pls plz hiya cheers lads folks mate everybody anybody y'all
  honestly actually currently moment presently exactly roughly approximately maybe perhaps really quite
  small large big little wo ist wann steht geht auf unter quand ou est se leve lève couche donde esta cuando sale
  fit fancy fancies wondering curious trying hoping planning going heading
  local time clock o'clock ut utc gmt bst am pm date day days week hour hrs mins seconds`.split(/\s+/u),
);

/** What the answers hold whatever was asked, by the command's name. */
const ABOUT = tableOf<RegExp>({
  up: /^(?:up|long|oiii|catalog\w*|numbers?|names?|called|known|ideal|hunt\w*|reach\w*|times?|year|season|months?|earth|like|smallest|nicest|moment|rise\w*|ris\w+|sets?|setting|visible|visibility|high|highest|low|lowest|best|good|when|where|altitude|height|transit\w*|culminat\w*|cross\w*|meridian|dark|moon\w*|bright\w*|magnitude|mag|mags|size|big|large|phase|lit|illuminated|full|rings?|tilt\w*|separation|position|angle|angles|pa|split\w*|resolv\w*|separat\w*|divid\w*|aperture|enough|apart|far|away|wide|bag\w*|snag\w*|grab\w*|becomes?|gets?|stars?|show\w*|alt\/az|hour|ha|parallactic|air ?mass|airmass|eyepieces?|power|magnification|exit|pupil|minim\w*|fad(?:e|es|ing)|dims?|maxim\w*|primary|ruin\w*|spoil\w*|swap|replace|jump|leave|leaving|route|goto|track\w*|finished|eclips\w*|period|variable|faint\w*|dim|constellation|belong\w*|lies?|horizon|sky|evening|night|see\w*|observ\w*|spot\w*|catch|look\w*|view\w*|imag\w*|photograph\w*|point\w*|find\w*|show\w*|easy|hard|worth|opposition|distance|colour|color|type|kind|what|filters?|need\w*|companion|components?|south|due|drown\w*|washed|too|late|early|chance|possible|telescope\w*|scope|binocular\w*|eye|naked|degrees?|deg|comp\w*|alt|az|info|information|details?|data|facts?|tell|about|status|chart|curve|graph|plot)$/u,
  altitude:
    /^(?:up|high|height|low|altitude|alt|az|azimuth|alt\/az|elevation|direction|where|way|compass|bearing|degrees?|deg|hour|angle|air ?mass|airmass|point\w*|locate|find\w*|look\w*|position|sky|part|stand\w*|sit\w*|side|meridian|transit\w*|horizon|north|south|east|west|see\w*|show\w*|goto|aim\w*|push\w*|nudg\w*|steer\w*|swing\w*|turn\w*|driv\w*|mov\w*|alt-?az\w*|fork|german|equatorial|gem|eq)$/u,
  tonight:
    /^(?:up|list|best|top|good|great|nice|interesting|easy|bright\w*|showpieces?|highlights?|worth\w*|look\w*|see\w*|observ\w*|imag\w*|photograph\w*|point\w*|target\w*|object\w*|things?|stuff|sky|evening|night|ideas?|suggest\w*|recommend\w*|plan\w*|session|hunt\w*|find\w*|show\w*|visible|high|overhead|zenith|above|straight|directly|head|house|dark|moon\w*|telescope\w*|scope|tour|choose|pick|faint\w*|deep|dso|dsos|split\w*|pairs?|despite|spite|list|binaries|bed|bedtime|sleep|south|north|east|west|light|lights|twilight|dusk|dawn|hour|hours|start\w*|first|view\w*|fov|what)$/u,
  meridian:
    /^(?:flip\w*|meridian|side|pier|mount|transit\w*|cross\w*|track\w*|german|equatorial|fork|past|mins?|minutes?|long|degrees?|when|limit\w*|must|before|after|follow\w*|through|east|west|\d{1,3})$/u,
  bright:
    /^(?:bright\w*|star|planet|light|lights|thing|object|dot|one|low|high|twinkl\w*|flash\w*|flicker\w*|blink\w*|stead\w*|constant|doesn't|doesnt|move|moving|colou?r\w*|white|yellow\w*|orange\w*|red(?:dish)?|blu(?:e|ish)|big|shin\w*|saw|seen|near|horizon|sky|side|what|which|moon|constellation|overhead|zenith|above|head|straight|directly|golden|no|not)$/u,
  moons:
    /^(?:jupiter\w*|jovian|moons?|galilean|satellites?|io|europa|ganymede|callisto|transit\w*|shadows?|occult\w*|eclips\w*|events?|disc|disk|behind|front|beside|position\w*|cross\w*|visible|next|when|seen?|week|month|on)$/u,
  epoch:
    /^(?:precess\w*|coordinates?|j|j2000|2000|jnow|epoch|equinox|ra|dec|right|ascension|declination|date|of|now|today|current|convert\w*|position|j?\d{4}(?:\.\d+)?)$/u,
});

/** Whether an answer of that line need not use the word. */
export const isFill = (word: string, line: string): boolean => {
  // A letter alone is "see", "and", "are".
  if (FILL.has(word) || /^(?:[^\p{L}\p{N}]+|[a-z])$/u.test(word)) return true;
  const command = /^\S+/u.exec(line)?.[0] ?? '';
  if (ABOUT.get(command)?.test(word) === true) return true;
  return LITTLE_WORDS.has(word) && !TELL.has(word);
};
