/** Whether words may tell of a fault at all: they name what fails, or what lies between a mount and its computer. Without either no walk begins. */

/** What a fault is and does, as people call it. */
const FAILS = [
  "not|no|none|nothing|never|nowhere|neither|nowt|nope|\\p{L}+n['’]?t|cannot|barely|hardly|without",
  'fail\\w*|refus\\w*|reject\\w*|den(?:y|ied|ies)|dead|die[sd]?|dying|los(?:e|es|t|ing|s)|drop(?:s|ped|ping)?|disconnect\\w*|cuts|vanish\\w*|disappear\\w*|gone|missing|miss(?:es|ed)?|invisible|absent|empty',
  'wrong\\w*|errors?|faults?|faulty|broken?|breaks|bust\\w*|kaput\\w*|stuck|sticks|jam\\w*|fr(?:ee|o)z\\w*|crash\\w*|hangs?|hung|stall\\w*|stop(?:s|ped)?|ignor\\w*|corrupt\\w*|garbage|gibberish|rubbish|nonsense',
  'drift\\w*|trail(?:s|ing|ed)|wander\\w*|creep\\w*|jump\\w*|jerk\\w*|judder\\w*|slip(?:s|ped|ping)?|oscillat\\w*|wobbl\\w*|backlash|grind\\w*|whin\\w*|squeal\\w*|buzz\\w*|humming|click\\w*|beep\\w*|blink\\w*|flash\\w*|flicker\\w*|smok\\w*|smell\\w*|burn\\w*|spark\\w*|overheat\\w*|tingl\\w*|shock\\w*',
  'off|away|instead|elsewhere|somewhere|backwards?|revers\\w*|opposite|random\\w*|into the|short of|overshoot\\w*|undershoot\\w*|goes|went|lands?|landed|ends? up|points?|pointed|pointing|nods|dives?|half the sky',
  'black|blank|silent|quiet|asleep|slow\\w*|weak|loose|bent|worn|rust\\w*|busy|unknown|unrecogni\\w*|time ?out|timed? ?out|times out|offline|reset\\w*|reboot\\w*|restart\\w*|code \\d+|triangle|warning|alarm',
  'trouble\\w*|problems?|issues?|help|fix\\w*|repair\\w*|diagnos\\w*|weird\\w*|strange\\w*|odd|oddly|funny|silly|mad|crazy|useless|hopeless|stupid|annoy\\w*|keeps|anymore|suddenly|every time|by itself|on its own|silence|says',
  'connect\\w*|paired|pairing|detect\\w*|recogni[sz]\\w*|respond\\w*|communicat\\w*|install\\w*|updat\\w*|upgrad\\w*',
].join('|');

/** What lies between the mount and whoever commands it. */
const GEAR =
  'hand ?(?:set|controller|box|paddle|pad)s?|keypads?|paddle|controllers?|com ?\\d+|com ?ports?|ports?|usb\\w*|serial|dongle|adapt[eo]rs?|cables?|plugs?|plugged|sockets?|drivers?|router|network|ethernet|wi-?fi|wlan|bluetooth|hotspot|firewall|udp|tcp|baud|laptop|macbook|notebook|netbook|pc|desktop|computer|tablet|raspberry|app|software|windows|linux|mac ?os|firmware|device manager|hub|motors?|fuse|power (?:supply|bank|tank|brick)|tty\\w*|dmesg|lsusb|dialout|clutch\\w*|worm|encoders?|goto\\w*|go ?to|slew\\w*|sync\\w*|tracking|home position|ax[ei]s|ra|dec|programs?|programmes?|antivirus|leads?|phone|re-?align\\w*';

const NAMES = new RegExp(`(?<![\\p{L}\\p{N}])(?:${FAILS}|${GEAR})(?![\\p{L}\\p{N}])`, 'iu');

/** "How long with 5 arcmin of polar error": a figure that is asked about. */
const FIGURE_OF_ERROR =
  /\b(?:(?:polar|pointing|alignment|tracking|periodic|pa|axis)[ -])+(?:errors?|drift)\b|\b(?:of|degrees?|arc ?min\w*) error\b/giu;
const ASKS = /^\W*(?:(?:and|so|ok|hi|hello|hey),? )*(?:what|which|when|how|is|are|does|do|will|would|can|could)\b/iu;

/** "Asked it for the double cluster and got a hedge". */
const SENT_AND_GOT = /\b(?:asked|sent|told|ordered)\b.*\b(?:got|gives?|gave|shows?|found)\b/iu;

/** @param text as it was typed */
export const namesFault = (text: string): boolean =>
  NAMES.test(ASKS.test(text) ? text.replace(FIGURE_OF_ERROR, ' ') : text) || SENT_AND_GOT.test(text);
