/** Sentences about the mount, the site and what is kept: faults, misses, drift, reminders, saving a place, what to type in. */
import { commandLine } from '../question-parts.js';
import { latitudeAlone } from './latitude-alone.js';
import { drift } from './about-drift.js';
import { flip } from './about-flip.js';
import { alignmentMissed, miss, missOfAny, missUnmeasured } from './about-miss.js';
import { cancelReminder } from './about-cancelling.js';
import { remind } from './about-reminders.js';
import { changeSite, saveSite, useSite } from './about-sites.js';
import { isHandHeld, readEquipment } from '../../../evening/equipment.js';
import { isProblem } from '../../../ground/problem.js';
import { mountSaid } from './mount-said.js';
import { instantLine, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

/** What lies between the hand controller and the computer: said to fail, it is no question of the sky or the eyepiece. */
const LINK =
  'handset|hand ?controller|hand ?set|keypad|cable|usb|serial|com ?port|port|driver|adapter|adaptor|dongle|wi-?fi|bluetooth|laptop|computer|pc|device manager|hub';
const PART = `mount|controller|lead|motors?|network|fuse|power|battery|${LINK}`;
const FAILS =
  "not|won'?t|wont|doesn'?t|doesnt|can'?t|cant|cannot|isn'?t|isnt|no|lost|losing|los(?:t|es|ing)|fail\\w*|refus\\w*|dead|die[sd]?|vanish\\w*|disappear\\w*|drops?|dropp\\w*|disconnect\\w*|missing|trouble|problem|error|code \\d+|triangle|denied|busy|unknown|stuck|nothing|broken|keeps|timed? ?out|times out|stopped|faulty|beep\\w*|blink\\w*|flash\\w*";
const TROUBLE = new RegExp(
  `\\b(?:${PART})s?\\b.*\\b(?:${FAILS})\\b|\\b(?:${FAILS})\\b.*\\b(?:${PART}|connect\\w*|communicat\\w*|detect\\w*|recogni\\w*|respond\\w*)s?\\b|\\bcode (?:10|28|43|31|39|52)\\b|\\b(?:yellow triangle|permission denied|access denied|ping(?:ing)? it)\\b`,
  'u',
);

const LINK_FAILS = new RegExp(`\\b(?:${LINK})s?\\b.*\\b(?:${FAILS})\\b|\\b(?:${FAILS})\\b.*\\b(?:${LINK})s?\\b`, 'u');
/** Asked rather than told. */
const ASKED =
  /^(?:what|which|when|where|how|who|why|is|are|do|does|did|can|could|should|would|will|may|must|shall)\b|\?\s*$/u;

/** "Nothing happens when I plug the scope into the laptop": told of the link, whatever else its words are of. */
export const tellsOfLink = (plain: string): boolean => LINK_FAILS.test(plain) && !ASKED.test(plain);

/** Nothing is named that fails: the walk asks what it is. */
const ALL_FAILS =
  /^(?:nothing (?:(?:at all|ever|still|is) )?(?:works?|working|happens?|happening|moves?|responds?)|(?:it|this|that|the (?:thing|scope|telescope)|my (?:scope|telescope|goto)|everything) (?:just |still |all )*(?:(?:does(?: not|n't|nt)|will not|won't|wont|is not|isn't|isnt) (?:work\w*|mov\w+|respond\w*|do anything|turn(?:ing)? on|start\w*)|stopped working|is (?:dead|broken|stuck)))\b/u;

const trouble: Rule = (asked) =>
  (says(asked, TROUBLE) || says(asked, ALL_FAILS)) && !says(asked, /\bremind\b|\bmeridian flip\b/u)
    ? { line: `triage ${asked.original}` }
    : null;

const SIDE =
  /\b(?:in|on|to|towards?|facing) (?:the |my )?(north|east|south|west)\b|\b(north|east|south|west)(?:ern)? (?:side|half|part|sky)\b/u;

/** "One each side of the meridian", "one east, one west". */
const BOTH_SIDES =
  /\b(?:each|both|either|opposite|different|two) sides?\b|\b(?:one|1|some) (?:on |in |to |at )?(?:the )?(?:east\w*|west\w*)\b.*\b(?:one|1|other|some) (?:on |in |to |at )?(?:the )?(?:east\w*|west\w*)\b|\beast and (?:one )?west\b/u;

const LEAVES_OUT =
  /\b(?:not|no|without|except|excluding|other than|apart from|instead of|can'?t see|cannot see)\b(.*)$/u;

/** "two stars in the east": how many, and on which side of the sky. */
const alignmentLine = (asked: Asked): Reading => {
  const isTwo = says(
    asked,
    /\b(?:two|2)[ -](?:\w+ )?stars?\b|\bpair of stars\b|\bone (?:on |in |to )?(?:the )?(?:east|each)/u,
  );
  const [, looked, named] = SIDE.exec(asked.plain) ?? [];
  const side = says(asked, BOTH_SIDES) ? 'both' : (looked ?? named);
  const mount = mountSaid(asked.plain);
  const [, after = ''] = LEAVES_OUT.exec(asked.plain) ?? [];
  const leftOut = asked.targets.filter((name) => after.includes(name));
  return instantLine('alignment', '', asked, {
    ...(isTwo ? { stars: '2' } : {}),
    ...(side === undefined ? {} : { side }),
    ...(mount === null ? {} : { mount }),
    ...(leftOut.length === 0 ? {} : { not: leftOut.join(', ') }),
  });
};

/** "What do I type for the Crab Nebula": its number, and its coordinates. */
const typedFor = (asked: Asked): Reading | null => {
  const [target, ...others] = asked.targets;
  const isOfClock = says(asked, /\b(?:dst|daylight|summer ?time|time|date|zone|site|place|latitude|longitude)\b/u);
  return target === undefined || target === 'sun' || others.length > 0 || isOfClock
    ? null
    : {
        ...instantLine('epoch', target, asked),
        note: 'In the controller it stands in its list under the number or name in the title; else type these coordinates.',
        usesAll: true,
      };
};

/** "Whats the time", of the clock where they observe. */
const TIME_NOW =
  /^(?:(?:what(?:'?s| is)|tell me|do you (?:know|have)|show me) (?:the )?(?:local |current |exact |right )*time|what time is it|(?:the |local |current )*time)(?: (?:is it|now|there|here|please|pls|right now|at the moment|at my (?:site|place)|on site))*(?: (?:in|at|for|from) [\p{L} ,'-]{2,40})?$/u;

/** Whole commands that a few words ask for. */
const NAMED: readonly (readonly [RegExp, (asked: Asked) => Reading])[] = [
  [
    /\b(?:show|list) (?:all )?(?:of )?(?:my |the )?reminders?|^(?:my )?reminders?(?: list)?$|\b(?:what|which|any|how many) (?:of my )?reminders?\b|\breminders (?:do )?i have\b/u,
    () => ({ line: 'remind list' }),
  ],
  [
    /\bwhat (?:do )?you (?:know|keep|store|have|hold) (?:about|on|of) me|^my data$|\bgdpr\b|^(?:(?:the|your|my|our|its|about|show|and|me|what|is|whats|club|bot|pierhand) )*privacy(?: (?:policy|rules|notice|statement|please|here|info|page))*$|\b(?:you|your|bot|pierhand)\b.*\bprivacy\b|\bprivacy (?:policy|notice|statement)\b/u,
    () => ({ line: 'mydata' }),
  ],
  [
    /\b(?:delete|erase|remove|forget|wipe) (?:all )?(?:about )?(?:me|my (?:data|stuff|things|info)|everything)\b/u,
    () => ({ line: 'forget' }),
  ],
  [
    /\b(?:what|which|good|best|two|three|bright)\b.*\bstars?\b.*\ball?ign|\bstars? (?:to|for) (?:all?ign|all?in)|\balign(?:ment)? stars?\b|^(?:(?:a|the) )?(?:two|three|2|3)[ -]stars? align\w*\b(?=.*\b(?:sides?|east|west)\b)|\b(?:two|three|2|3) stars?\b.*\bali?gn|\b(?:what|which)\b.{0,20}\b(?:should|do|can|shall|to)\b.{0,12}\ball?ign (?:on|to|with)\b|\ball?ign on (?:two|three|2|3|some|a few)(?: bright)? stars?\b|^align(?:ment)?\b.*\b(?:without|not|except)\b/u,
    alignmentLine,
  ],
  [
    /\bpolar ?align|\bpolar (?:axis|scope)|\b(?:polaris|north star|pole star|sigma oct\w*|σ oct\w*)\b.*\b(?:clock|reticle|scope|circle)\b|\bhow far (?:off |away )?is (?:polaris|the (?:pole|north) star)\b(?:(?: tonight| now| today)?$| from (?:the )?(?:\w+ )?pole)|\bhow far (?:off|from|away from) (?:the )?(?:\w+ )?pole (?:is|does|stands?)\b|\b(?:north|south) celestial pole|\bwhere is the pole\b|\b[ns]cp\b|\bwedge\b.*\b(?:angle|set|tilt|degrees?|latitude)\b|\b(?:angle|tilt|degrees?|set)\b.*\bwedge\b|\blatitude (?:scale|dial|adjust\w*)\b|\bwhat (?:angle|height|altitude)\b.*\b(?:polar axis|(?:eq|equatorial) (?:mount|head))\b|\b(?:true north|compass)\b.*\b(?:compass|true north|declination|says?|reads?|show)\b/u,
    (asked) => {
      const which = /\b(north|south) celestial pole\b/u.exec(asked.plain)?.[1];
      return instantLine('pole', '', asked, which === undefined ? {} : { first: which });
    },
  ],
  [TIME_NOW, (asked) => instantLine('sidereal', '', asked, { first: 'time' })],
  [/\bsidereal\b|\blst\b/u, (asked) => instantLine('sidereal', '', asked)],
  [/\blibrations?\b/u, (asked) => instantLine('moon', '', asked)],
  [
    /\bwhat\b.*\b(?:do|should|must|shall) (?:i|we) (?:type|enter|put)\b|\bhow (?:do|should|must|can) (?:i|we) (?:type|enter)\b|\bdaylight ?saving|\bdst\b|\btime ?zone\b|\b(?:set ?up|enter|put in|type in) (?:the )?(?:date|time|site)/u,
    (asked) => typedFor(asked) ?? instantLine('entries', '', asked),
  ],
];

const named: Rule = (asked) => NAMED.find(([pattern]) => pattern.test(asked.plain))?.[1](asked) ?? null;

const TELLS_GEAR =
  /^(?:my )?gear\b|^(?:(?:hi|hello|hey|ok|so|and|well|btw|fyi|sorry),? )*(?:(?:i|we)(?: (?:just|only|now|also))* (?:have|use|own|got|bought|am using)|(?:i|we)'?ve(?: (?:just|only|now))* (?:got|bought)|i'?m using|(?:just |only )?(?:got|bought|using)(?: myself| me)?|my (?:new |own |first )?(?:mount|scope|telescope|dob|refractor|reflector|newt\w*|binos?|binoculars) (?:is|are)|mine is)\b/u;
const TELLS_SKY =
  /^(?:my |the |our )?(?:sky|skies)\b.*\b(?:is|are)\b|^(?:i have|i'?ve got) .*\b(?:sky|skies|bortle)\b/u;
const ASKS_MORE = /\b(?:what|which|see|look|up|when|how|can)\b/u;

/** Words of a telescope that say no more of it. */
const OF_TUBE =
  /^(?:gear|new|first|own|old|little|small|big|manual|only|goto|tube|telescopes?|scopes?|newt\w*|refractor|reflector|mak|maksutov|sct|cassegrain|dobs?|dobsonian|apo|achromat|rc|ota|aperture|f\/?\d+(?:\.\d)?|pair|bino\w*|eyes?)$/u;

/** "I have a 130 mm scope": what it shows is told, and is kept for what is asked next. */
const kitTold = (asked: Asked): Reading | null => {
  const { kit, left, place, when, kind } = asked;
  const isAll = left.every((word) => OF_TUBE.test(word)) && place === null && when.hour === null && kind === null;
  return kit !== null && isAll && (says(asked, TELLS_GEAR) || (says(asked, TELLS_SKY) && asked.sky !== null))
    ? {
        ...nightLine('tonight', '', asked),
        ...(/\d/u.test(kit) ? { note: 'Answers of this evening are for it.' } : {}),
        usesAll: true,
      }
    : null;
};

const isTelescope = (kit: string): boolean => {
  const read = readEquipment(kit);
  return /\d/u.test(kit) && !isProblem(read) && !isHandHeld(read);
};

/** "my scope is an 8 inch dob": what they observe with, kept as gear; "my skies are bortle 4": the site's sky. */
const own: Rule = (asked) => {
  const isTold = /^my (?:mount|scope|telescope) is\b/u.test(asked.plain);
  if (says(asked, ASKS_MORE) || (asked.targets.length > 0 && !isTold)) return null;
  const mount = mountSaid(asked.plain);
  if (says(asked, TELLS_GEAR) && mount !== null) {
    const aperture = asked.kit !== null && isTelescope(asked.kit) ? asked.kit : undefined;
    return { line: commandLine('gear', '', { mount, aperture }) };
  }
  const told = kitTold(asked);
  if (told !== null) return told;
  return says(asked, TELLS_SKY) && asked.sky !== null ? { line: commandLine('site', 'sky', { sky: asked.sky }) } : null;
};

export const ABOUT_GEAR: readonly Rule[] = [
  cancelReminder,
  remind,
  miss,
  missOfAny,
  missUnmeasured,
  alignmentMissed,
  drift,
  latitudeAlone,
  trouble,
  saveSite,
  useSite,
  own,
  flip,
  named,
  changeSite,
];
