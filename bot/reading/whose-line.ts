/** Whether a line is of another matter than the mount: another device's, a file's that is no port, the internet's. */

/** As lists and programs name them. */
const OTHER_DEVICES = [
  'cameras?|webcams?|imaging devices?|display adapters?|graphics|monitors?|mice|mouse|keyboards?|touchpad',
  'headphones?|headset|earbuds|(?:loud)?speakers?|audio|sound|microphone|database|postgres\\w*|mysql|disk drives?',
  'fingerprint|biometric devices|filter wheel|focus+ers?|rotator',
].join('|');
const OTHER_DEVICE = new RegExp(`\\b(?:${OTHER_DEVICES})\\b`, 'iu');
/** Printers only as a label: messages of serial ports name them. */
const LABELS = `\\b(?:${OTHER_DEVICES}|printers?|print queues?)\\b`;
const STAMP = String.raw`[\d\s:.,/[\]TZ+-]{0,40}`;
const GROUP_OF = '(?:device manager ?[>:-] ?)?';
const WORD = String.raw`[\w()-]{1,30}`;
/** What opens a line and says whose it is: "20:01 camera: …", "HD Webcam: …", "Print queues: …"; or says so in brackets. */
const OTHER_LABEL = new RegExp(
  `^${STAMP}${GROUP_OF}(?:${WORD} ){0,4}?${LABELS}(?:,? ${WORD}){0,5} ?(?:[:>]|- )|\\((?:${OTHER_DEVICES})\\)`,
  'iu',
);
/** "Always with the camera on: …" says when, not whose. */
const SAYS_WHEN = /^(?:\S+ ){0,3}(?:with|when|whenever|during|if|after|every|each|as|once|since|only|while)\b/iu;
/** A line without any of these bears no label. */
const MAY_LABEL = /[:>(]|- /u;
const OWN_DEVICES = [
  'mount|telescope|scope|handset|hand controller|serial|tty\\w*|com\\d+|com port|ports|rs-?232|converter|usb adapter',
  'bridge|brltty|other devices|universal serial bus|bluetooth',
].join('|');
const OWN_DEVICE = new RegExp(`\\b(?:${OWN_DEVICES})\\b|/dev/`, 'iu');

const FOLDER = String.raw`["'(=]?(?:[a-z]:\\|~\/|%\w+%|\/(?:home|users|etc|proc|sys|run|var|tmp|media|opt)\/)`;
const FILE_REFUSED = new RegExp(
  `\\baccess to the path ${FOLDER}|\\b(?:denied|eacces)\\b.{0,20}?[ ,:]${FOLDER}|denied".{0,160}? name=${FOLDER}`,
  'iu',
);

/** The groups of a device list, alone on their lines. */
const OTHER_GROUPS = [
  'cameras|webcams|imaging devices|display adapters|monitors|mice(?: and other pointing devices)?|keyboards',
  'audio inputs and outputs|audio|sound|sound, video and game controllers|disk drives|print queues|printers',
  'biometric devices|human interface devices|graphics/displays',
].join('|');
const OTHER_GROUP = new RegExp(`^${GROUP_OF}(?:${OTHER_GROUPS}):?$`, 'iu');
/** Any group that ends the one above. */
const GROUP = /^(?:device manager\b.*|[a-z]+ (?:adapters|devices|controllers|drives|queues)(?: \([\w &]+\))?:?)$/iu;
/** The part of a line that tells whose it is. */
const NAMED_WITHIN = 240;

const PING_OF = /\bping(?:ing)?:? (?:-\S+ (?:\d+ )?){0,3}([\w.-]{1,80})(?: [[(]([\d.]{7,15})[\])])?/iu;
const PING_GOES_ON = new RegExp(
  '^(?:reply from|request time|(?:\\d+ bytes )?from |ping statistics|packets:|approximate|minimum|' +
    '\\d+ packets|---|rtt |round-trip)',
  'iu',
);
/** RFC 1918 and 3927: addresses of a house's or a bridge's own network. */
const OWN_ADDRESS = /^(?:10\.|127\.|169\.254\.|192\.168\.|172\.(?:1[6-9]|2\d|3[01])\.)/u;
const ADDRESS = /^\d{1,3}(?:\.\d{1,3}){3}$/u;
/** Names of a house's own network (RFC 6762, RFC 8375, and what routers make up); any other with a dot is of the internet. */
const OWN_NAME = /\.(?:local|lan|home|box|internal|localdomain|home\.arpa|arpa|intra)$/iu;
const isPublicName = (name: string): boolean => /\w\.[a-z]{2,}$/iu.test(name) && !OWN_NAME.test(name);

/** Whether a line opens a ping to the internet; undefined: it opens none. */
const pingsInternet = (line: string): boolean | undefined => {
  const [, target = '', address = target] = PING_OF.exec(line) ?? [];
  if (ADDRESS.test(address)) return !OWN_ADDRESS.test(address);
  return isPublicName(target) ? true : undefined;
};

/** A line of the list of USB devices that names no serial adapter, and none of the computer's own sockets. */
const OTHER_ON_USB =
  /\bbus \d{3} device \d{3}: id (?!1d6b:).*\b(?:bluetooth|wi-?fi|wlan|wireless|webcam|camera|keyboard|mouse|receiver|card reader|touch\w*|fingerprint|audio|hub|storage|flash|ethernet)\b/iu;

/** A log in which the mount's lines bear its name: the stamped lines that bear another's are not the mount's. */
const STAMPED_LABEL = String.raw`[\[(]?(?:\d{4}-\d\d-\d\d[T ])?\d\d:\d\d(?::\d\d)?(?:[.,]\d+)?Z?[\])]? (?:\[\w+\] |info |warn(?:ing)? |error )?`;
const MOUNT_LABELLED = new RegExp(`^${STAMPED_LABEL}\\[?(?:mount|telescope|scope)\\b ?[:>\\]]`, 'imu');
const LABELLED_OTHER = new RegExp(`^${STAMPED_LABEL}\\[?([a-z][\\w-]{2,30})(?:\\[\\d+\\])? ?[:>\\]] `, 'iu');
/** Labels of what stands between the program and the mount, or of no one. */
const NOBODYS =
  /^(?:error|warn\w*|info|debug|trace|fatal|note|result|status|message|kernel|system|usb\w*|port|device|driver|client|program|app|platform|network|socket|tcp|udp|wifi|wlan\w*|eth\w*|connection|link|python|main|core|server|service|handset|slew|goto|ping|mount\w*|scope|telescope)$/iu;

const isLabelledOther = (line: string): boolean => {
  const label = LABELLED_OTHER.exec(line)?.[1];
  return label !== undefined && !NOBODYS.test(label);
};

/** A line without any of these names no file that is refused. */
const MAY_REFUSE = /denied|eacces|access to the path/iu;

const namesOther = (line: string, printed: boolean): boolean =>
  ((MAY_REFUSE.test(line) && FILE_REFUSED.test(line)) ||
    (MAY_LABEL.test(line) && OTHER_LABEL.test(line) && !SAYS_WHEN.test(line)) ||
    (printed && OTHER_DEVICE.test(line))) &&
  !OWN_DEVICE.test(line);

/** Takes a text's lines in order: what stands above a line may tell whose it is. */
export const makeOwner = (text: string): ((line: string, printed: boolean) => boolean) => {
  const labelsMount = MOUNT_LABELLED.test(text);
  let underOther = false;
  let underInternet = false;
  return (whole, printed) => {
    const line = whole.slice(0, NAMED_WITHIN);
    const opens = printed ? pingsInternet(line) : undefined;
    underInternet = opens ?? (underInternet && PING_GOES_ON.test(line));
    if (OTHER_GROUP.test(line)) underOther = true;
    else if (underOther && (GROUP.test(line) || OWN_DEVICE.test(line))) underOther = false;
    return (
      underOther ||
      underInternet ||
      (printed && OTHER_ON_USB.test(line)) ||
      (labelsMount && isLabelledOther(line) && !OWN_DEVICE.test(line)) ||
      namesOther(line, printed)
    );
  };
};
