/**
 * "Works for my camera", "my friend's phone drives it fine, only mine does not": the good that is told is another device's, and says where
 * the trouble is not. The member's own that works with another part ("with the other cable it goes now") is no such thing.
 */

const WHOSE =
  "(?:friend|mate|pal|buddy|neighbou?r|wife|husband|partner|son|daughter|brother|sister|dad|mum|father|mother|colleague|club|clubmate|kid|boy|girl|lad|uncle|cousin|someone|somebody)(?: mate)?(?:['\u2019]?s|s['\u2019]?)?";
const HOST =
  '(?:laptop|pc|computer|mac(?:book)?|imac|desktop|machine|notebook|netbook|phone|iphone|android|ipad|tablet|chromebook|app|program(?:me)?|software|client|windows|linux|system|user|account|mount|scope|telescope|set-?up|rig)s?';
/** It hangs on the same computer or lead, and is no mount. */
const BESIDE =
  '(?:camera|printer|scanner|arduino|gps|(?:hard |usb |external )?(?:drive|disk|stick)|hdd|ssd|stick|focuser|rotator|guider|weather station|mouse|keyboard|joystick|charger|heater|lamp|radio|modem|phone|ipad|tablet|other (?:gear|things?|stuff|devices?|adapters?)|everything else|anything else|headset|microscope|multimeter|tv|watch|router|web ?page|browser|terminal)s?';
const WELL =
  '(?:works?|worked|working|runs?|ran|is fine|are fine|is ok|fine|ok|okay|good|great|perfect(?:ly)?|flawless(?:ly)?|connects?|connected|finds?|found|sees|drives?|moves?|shows? up|appears?|talks?|answers?|has no (?:problem|trouble)s?|no (?:problem|trouble)s?|gets? on|can|does|charges|syncs|moved files|used it|use it)';
const DET = '(?:my|the|a|an|his|her|our|their|this|that|some|any|all)';
const OTHER = '(?:other|another|second|old|older|previous|former|spare|work|different)';

/** Whoever's device is the one that does it. */
const DOES = [
  `\\b${DET}? ?${WHOSE} (?:\\w+ ){0,3}?${WELL}\\b`,
  `\\b${DET}? ?${OTHER} (?:\\w+ )?${HOST}\\b(?: \\w+){0,3} ${WELL}\\b`,
  `(?:\\b(?:android|ipad|tablet|desktop|${DET} ${BESIDE})|^\\s*${BESIDE})(?: \\w+){0,2} ${WELL}\\b`,
];
/** … or the one that it is done for, or on. */
const DONE_FOR = [
  `\\b${WELL}(?: (?:it|fine|ok|well|great|perfectly|there|here|good|as well))* (?:for|with|on|in|by|from|under|via) (?:${DET} )?(?:${WHOSE}|(?:${OTHER}|new) (?:\\w+ )?${HOST}|(?:\\w+ )?${BESIDE})\\b`,
  `\\b(?:works?|worked|fine|good|ok|great|used) for (?:${DET}|another) (?!mount|scope|telescope|first|time|while|night|hour|laptop|mac|pc)\\w+`,
  `\\b(?:on|with|in|under) (?:${DET} )?(?:${WHOSE}(?: (?:old|new))? (?:${HOST}|cable|lead|one|mount)|(?:${OTHER} |android |windows )(?:\\w+ )?${HOST}|desktop\\b|${DET} android)\\b.{0,30}\\b${WELL}\\b`,
  `\\b(?:used|use|uses|using|tested|test) (?:it|this|that|them|the same (?:\\w+ )?) ?(?:for|with|on|at|in) (?:${DET} |${WHOSE} )?(?!mount|scope|telescope)\\w+`,
];
/** The one that fails is set against it. */
const AGAINST_MINE = new RegExp(
  "\\b(?:just|only) (?:not )?(?:on |with )?(?:my|mine|this|here)\\b(?! (?:time|once))|\\bnot (?:on |with |for )?(?:mine|this (?:one|phone|laptop|computer|mac|pc)|my)\\b|\\bmine (?:does|is|will|would|can|has|wo|no|not|says|still|doesn|won|can['\u2019]?t)\\b|\\bthis (?:phone|one|laptop|tablet|mac|pc|computer) (?:no|not|does|will|won|says|is ?n)\\b|\\bas me not?\\b",
  'iu',
);

/** Of files a mount knows nothing. */
const FILES =
  /\b(?:mov(?:es?|ed)|cop(?:y|ies|ied)|transfer(?:s|red)?|carr(?:y|ies|ied)|syncs?|reads?|loads?|gets?|saves?|downloads?) (?:my |the |all |some )?(?:files?|photos?|pictures?|pics|images|music|songs|documents)\b/iu;
const OF_OTHERS = new RegExp([...DOES, ...DONE_FOR].join('|'), 'iu');
/** It was taken from there, or does so as well by now: the mount's own good end. */
const BY_THIS =
  /\b(?:lent|borrowed|took|taken|gave|brought|from|off|swapped|instead of|bought|got)\b|\b(?:now|again|at last|finally|as well|too)\b/iu;
const BREATHS = /[.,;!?\n\u2026]+(?!\d)|\b(?:and|but|so|then|n)\b/iu;

export const isOfOtherGear = (text: string): boolean =>
  AGAINST_MINE.test(text) ||
  FILES.test(text) ||
  text.split(BREATHS).some((breath) => OF_OTHERS.test(breath) && !BY_THIS.test(breath));
