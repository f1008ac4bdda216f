/** Whether a text names nothing of a mount at all: "who brings the urn on Thursday". Pure; asked only where nothing was read. */
import type { Vocabulary } from '../vocabulary.js';
import { sentencesOf } from '../words/sentences.js';

/** Entries of words.yaml that a trouble with a mount has a word of. */
const OF_A_MOUNT = [
  'mount',
  'handset',
  'adapter',
  'port',
  'bridge',
  'bluetooth',
  'wifi',
  'network',
  'cable',
  'hub',
  'slew',
  'goes-to',
  'tracks',
  'axis',
  'motor-part',
  'ping-word',
  'recognised',
  'spins',
  'lose-link',
  'timeout',
];
const OF_ITS_WORK =
  /\b(?:connect\w*|conect\w*|pair(?:s|ed|ing)?|link|baud|sync\w*|beeps?|leds?|lights?|drivers?|tripod|leg|targets?|zone|offset|errors?|code \d|align\w*|polar|volts?|battery|supply|psu|fuse|plug\w*|sockets?|usb|gps|longitude|latitude|epoch|j2000|jnow|equinox|firmware|guid\w*|ra|dec|declination|clutch\w*|arrows?|menu|date|reboots?|restarts?|reset\w*|devices?|software|failure|\d+-\d+|sudo|antivirus|vpn)\b/iu;
/** Of a camera, a heater, a car: what they have is no mount's. */
const OTHERS = ['other-gear', 'other-things'];

export const namesNoMount = ({ sayings: { lexicon } }: Vocabulary, text: string): boolean =>
  text.split('\n').every((line) =>
    sentencesOf(lexicon, line).every((sentence) => {
      const ids = sentence.ids();
      return OTHERS.some((id) => ids.has(id))
        ? !ids.has('mount') && !ids.has('axis')
        : !OF_A_MOUNT.some((id) => ids.has(id)) && !OF_ITS_WORK.test(line);
    }),
  );
