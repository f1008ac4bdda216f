/** Words of a sentence about the Sun made plain before its parts are read: parts of the day, arrows, exchanges, and the hour it names. */
import type { DayAt } from './day-at.js';
import { byDayHour, handsIn, nextHour } from './hands.js';
import type { When } from './when.js';

/** "before the sun rises" is an hour. */
const SUN_AS_HOUR =
  /(?:\b(?:before|after|when|until|till|once|while|with|as soon as|by)\s+)?(?:\bthe\s+)?\bsun(?:'s|s| is| has)?(?: still)?\s+(?:rises?|rising|rose|sets?|setting|goes down|go down|gone down|comes up|come up|up|down)\b/giu;

export const THIS_AFTERNOON = /\bthis (?:afternoon|arvo)\b/u;

/** "at 10 in morning". */
const ofMorning = (text: string): string =>
  text.replace(/\b(\d{1,2}) (?:in|of) (?:the )?(morning|afternoon)\b/giu, (_, hour: string, part: string) =>
    part.toLowerCase() === 'morning' ? `${hour}am` : `${hour}pm`,
  );

/** Parts of the day that name no hour, as an hour within them. */
const partOfDay = (text: string): string =>
  text
    .replace(/\b(?:just |right |straight )?after lunch\b/giu, 'at 1pm')
    .replace(/\b(?:(tomorrow)(?:'s)? |in the |this )morning\b/giu, (_, day: string | undefined) =>
      day === undefined ? 'at 10am' : `${day} 10am`,
    );

/** What is given up is where the tube stands. */
const EXCHANGES = /\b(?:(?:swap|exchang|replac|ditch|drop)(?:e|ing|ping)?|instead of|rather than) (?=\p{L})/giu;

export const prepared = (typed: string): string =>
  partOfDay(ofMorning(typed))
    .replace(/\s*(?:-+>|→|⟶|>)\s*/gu, ' to ')
    .replace(EXCHANGES, 'from ')
    .replace(SUN_AS_HOUR, ' ');

const SUN_EVENT = /\b(?:at|around|by) (sunset|sunrise|sundown|sun-?up)\b/iu;

/** The hour that the hands of a clock or the Sun itself give; the day is read apart. */
export const ownHour = (
  text: string,
): { readonly rest: string; readonly at: (when: When, isOfSun: boolean, day: DayAt | null) => string } | null => {
  const event = SUN_EVENT.exec(text);
  if (event !== null) return { rest: text.replace(event[0], ' '), at: () => (event[1] ?? '').toLowerCase() };
  const hands = handsIn(text);
  if (hands === null) return null;
  return {
    rest: hands.rest,
    at: ({ night }, isOfSun, day) => {
      const next = nextHour(hands);
      if (night !== null) return byDayHour(hands);
      // Of the Sun one asks by day: the next such hour where the Sun is up then, else the one of the day.
      return !isOfSun || day?.isSunUp(next) === true ? next : byDayHour(hands);
    },
  };
};

/** It is not up yet: "before the Sun comes up", "sun nearly up"; not "the Sun is up before". */
export const BEFORE_SUNRISE =
  /\b(?:before|until|till) (?:the )?(?:sun ?rise|sun-?up|dawn|sun(?:'s| is)? (?:up|rises?|comes? up))\b|\bsun(?:'s| is)? (?:nearly|almost|about to be|not yet) (?:up|rising|coming up|rise)\b|\bsun(?:'s| is)? about to (?:rise|come up)\b/u;

/** It rises ahead of the Sun, or sets behind it: of the night's two ends, and not of now. */
export const RISES_BEFORE =
  /\b(?:ris(?:e|es|ing)|comes? up|up)\b.*\b(?:before|ahead of|until|till|and) (?:the )?sun(?:'?s|rise)?\b|\bbefore (?:the )?sun(?:rise)?\b.*\b(?:ris(?:e|es|ing)|comes? up|up)\b/u;
export const SETS_AFTER =
  /\b(?:sets?|setting|goes down|go down|down)\b.*\b(?:after|behind) (?:the )?sun(?:'?s|set)?\b|\bafter (?:the )?sun(?:set)?\b.*\b(?:sets?|setting|go down|goes down)\b/u;

/** Once it is down: "how long after sunset until Mercury is safe". */
export const AFTER_SUNSET =
  /\b(?:after|past|once|following|since) (?:the )?(?:sun ?set|sun ?down|sun(?:'s| is| has)? (?:set|sets|down|gone|goes down))\b/u;

/** When to stop, in the morning. */
export const STOPS_IN_MORNING =
  /\b(?:when|what time|how (?:long|late))\b.*\b(?:stop\w*|finish|pack up|quit|leave off)\b.*\b(?:morning|dawn)\b|\b(?:morning|dawn)\b.*\bwhen\b.*\bstop\b/u;

/** It rises this minute. */
export const SUN_RISING = /\bsun(?:'s| is)? (?:just |now |already |about )*(?:coming up|rising)\b/u;

/** From sunrise on, whatever the hour is now: the first minute of it. */
export const FROM_SUNRISE =
  /\b(?:after|past|once|since|at|following|as soon as|when) (?:the )?(?:sun ?rise|sun-?up|sun (?:rises|comes up|has risen|has come up))\b/u;

const BY_DAY =
  /\b(?:day ?time|day ?light|by day|(?:in|during) the day|at noon|mid ?day|in the afternoon|arvo|before (?:sunset|dark)|with the sun up|sun(?:'s| is|s)? (?:still )?up|while the sun|when the sun(?:'s| is) up|in sunlight|sunlit|lunch ?time|this afternoon|breakfast|after (?:the )?sun ?(?:rise|up)|after the sun (?:is up|rises|comes up))\b|\b(?:rises?|safe|safely)\b.*\bafter(?:wards?| (?:that|it|then))\b/u;

export const saysByDay = (plain: string): boolean => BY_DAY.test(plain) || FROM_SUNRISE.test(plain);

/** "when does the Sun rise, and can I look at Venus after that": after sunrise, or the by-day question is read as of the night. */
const AFTER_THAT = /\b(after|once|from|since) (?:that|then|this|it(?:'s| is| has)?(?: up| risen)?)\b/iu;
const SUNRISE = /\bsun ?rise\b|\bsun-?up\b|\b(?:does |will )?(?:the )?sun (?:rises?|comes? up)\b/iu;
/** Speech written down by a phone: "my sun set up the wireless", "no, not the sun in the sky". */
const A_SON =
  /\b(my|our|his|her|their) sun(?= (?:and|he|she|says?|said|sets? up|set it|put|did|does|has|had|helps?|helped|is \d|will|wants?|asks?|asked)\b)/giu;
const NOT_THE_SUN = /\bnot the sun\b(?= in the sky|,? (?:my|i mean|but my)\b)(?: in the sky)?/giu;

/** "The sun is gone, what's up now": what is asked stands behind it. */
const SUN_GONE =
  /^(?:(?:so|ok|now|well|finally) )*(?:the )?sun(?:'s|s| is| has)? (?:(?:just|finally|now) )*(?:gone(?: down)?|down|set)(?: now| already)?[,.]? (?:so |and |let'?s (?:go|start) )*(?=(?:what|whats|what's|which|where|show)\b)/iu;

/** Made plain: the Sun is named where it is meant, and only there. */
export const withSunMadePlain = (said: string): string => {
  const words = said.replace(SUN_GONE, '').replace(A_SON, '$1 son').replace(NOT_THE_SUN, ' ');
  const at = SUNRISE.exec(words)?.index;
  return at === undefined
    ? words
    : `${words.slice(0, at)}${words.slice(at).replace(AFTER_THAT, (_, lead: string) => `${lead} sunrise`)}`;
};

const A_WARNING =
  /\b(?:sun|solar) warning\b|\bwarn(?:s|ing|ings)?\b(?: \w+){0,3}? (?:about|of|for|against|on|not to look at) (?:looking (?:at|into) )?(?:the )?sun\b/iu;
const ON_A_SCREEN =
  /\b(?:press\w*|enter|buttons?|keys?|screen|display|hand ?-?(?:set|controller|pad)|menu|says?|shows?|reads?|accept|confirm|continue)\b/iu;
const ASKS_OF_LOOKING = /\b(?:safe\w*|filters?|can (?:i|we)|may (?:i|we)|should (?:i|we)|is it)\b/iu;

/** What a hand controller shows at its start ("a warning about the Sun, press Enter") is told of its screen, and asks of no looking. */
export const quotesSunWarning = (text: string): boolean =>
  A_WARNING.test(text) && ON_A_SCREEN.test(text) && !ASKS_OF_LOOKING.test(text);
