/**
 * A member's words as others may read them: telephone numbers, e-mail and street addresses, and passwords are left out. What a helper needs stays: host
 * addresses, ports, speeds, versions, serial numbers, coordinates, dates and times.
 */

const [PHONE, MAIL, STREET, SECRET] = ['(phone number)', '(e-mail address)', '(address)', '(password)'];

/** Names of a house's own network are hosts. */
const OWN_HOST = /\.(?:local|lan|home|box|internal|localdomain|arpa|intra)$/iu;
const E_MAIL = /(?<![\w.+-])[\w.+-]{1,64}@[\w-]{1,63}(?:\.[\w-]{2,24}){1,4}(?![\w-])/gu;
/** "Odalys (at) example dot org"; a bare "at" only beside a word for mail. */
const SPELLED =
  /(?<![\w.])[\w.+-]{1,64} ?[([]at[)\]] ?[\w-]{1,63}(?:(?: ?[([]?dot[)\]]? ?|\.)[a-z]{2,24}){1,3}\b|(?<=\be-?mail\b[^.;\n]{0,24})(?<![\w.])(?!is\b|me\b)[\w.+-]{1,64} at [\w-]{1,63}(?:(?: dot |\.)[a-z]{2,24}){1,3}\b/giu;

const NAMED_AS_NONE =
  /\b(?:serial|s\/n|sn|firmware|version|driver|build|ports?|com|baud|hwid|vid|pid|ids?|imei|uuid|codes?|errors?|lat(?:itude)?|lon(?:g(?:itude)?)?|ra|dec|site|coordinates?|jd|mjd|utc|gmt|lst|date|time|epoch|step|position|encoders?|ticks?|counts?|order)\b[^.;,\n\p{L}]{0,12}(?:(?:no|number|is|nr|of|at)\b[^.;,\n\p{L}]{0,6}){0,2}$/iu;
const CUE_AHEAD =
  /\b(?:call|ring|phone|tel|telephone|mobile|cell|handy|whats ?app|text|sms|fax|reach me|my number|number is)\b[^\n]{0,28}$/iu;
const CUE_BEHIND = /^[^\n\d]{0,6}\b(?:is my|my|for a|is the) ?(?:mobile|number|phone|cell|landline|call)\b/iu;
const OF_A_LABEL = /^[^\n\d]{0,14}\b(?:label|sticker|packet|box|board|chip|plug)\b/iu;
/** Digits in groups, as long as a number one dials (ITU-T E.164: fifteen at most). */
const GROUPS = /(?<![\w.:/@#-])(?:\+|\(\+?)?\d(?:[ ().-]{0,2}\d){6,14}(?![\w:@]|\.\d)/gu;
const [FEWEST, FEWEST_UNSAID, MOST_UNSAID] = [7, 9, 13];

const HOST_OR_DATE = /^\d{1,3}(?:\.\d{1,3}){3}$|^\d{4}-\d{2}-\d{2}\b|^\d{1,2}[.-]\d{1,2}[.-]\d{2,4}\b|^\d+\.\d+$/u;
/** Begun as one dials it, or grouped as it is written: "0…", "+…", "(555) 0123-456", "555-012-3456". */
const DIALLED = /^(?:\+\d|\(|0\d)|^\d{3}-\d{3}-\d{4}$/u;
/** Degrees, minutes and seconds, or hours, one after the other. */
const SEXAGESIMAL = /^[+-]?\d{1,3}(?: [0-5]\d){2}(?:[ .]\d+)*$/u;
const IN_PAIRS = /^0[1-9](?: \d\d){4}$/u;

const isPhone = (found: string, ahead: string, behind: string): boolean => {
  const digits = found.replace(/\D/gu, '').length;
  if (digits < FEWEST || HOST_OR_DATE.test(found)) return false;
  if (NAMED_AS_NONE.test(ahead) || OF_A_LABEL.test(behind)) return false;
  if (CUE_AHEAD.test(ahead) || CUE_BEHIND.test(behind)) return true;
  if (SEXAGESIMAL.test(found) && !IN_PAIRS.test(found)) return false;
  return DIALLED.test(found) && digits >= FEWEST_UNSAID && digits <= MOST_UNSAID;
};

const A_STREET =
  /\b\d{1,4}[a-z]? (?:(?!(?:m|km|from|of|the|in|to|at|on|by|off|volts?|amps?|times?)\b)\p{L}{2,20} ){1,2}(?:street|road|lane|avenue|crescent|terrace|grove|rd|ave)\b/giu;

/** "Password is hunter2": a word with a figure or a mark in it; "password wrong" tells no secret. */
const A_SECRET =
  /\b(pass(?:word|wd|phrase|key|code)?|pwd?|psk|(?:wi-?fi|network|wpa[23]?) key|passwort|kennwort|mot de passe)((?:\s+(?:is|was|ist))?\s*[:=]?\s*)(?=\S*[\d!$%&*#@])\S{4,63}/giu;

export const withoutContact = (text: string): string =>
  text
    .replace(A_SECRET, `$1$2${SECRET}`)
    .replace(E_MAIL, (found) => (OWN_HOST.test(found) ? found : MAIL))
    .replace(SPELLED, MAIL)
    .replace(GROUPS, (found, at: number, whole: string) =>
      isPhone(found, whole.slice(Math.max(0, at - 60), at), whole.slice(at + found.length, at + found.length + 40))
        ? PHONE
        : found,
    )
    .replace(A_STREET, STREET);
