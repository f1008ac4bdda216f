/** Words that are no command, where a walk of the asker waits in that place: they are the member's own words about the mount. */
import { wordCountOf } from '../../ground/fold-text.js';
import { isProblem } from '../../ground/problem.js';
import { resolveTarget } from '../../catalogue/index.js';
import type { Outcome } from '../../reply/reply.js';
import {
  asksOfTheStep,
  leavesWalk,
  ofTheTalk,
  outcomeSaid,
  readText,
  suspectedCause,
  tellsOfMount,
  wantsNote,
  type SaidOutcome,
  type Vocabulary,
} from '../../reading/index.js';
import { assess, mendedBy, NUMBERS, wordsIn, type Step } from '../../triage/index.js';
import { plainAlone } from '../asking/plain-alone.js';
import { LINE_LIMIT } from '../core/grammar.js';
import type { Reading } from '../asking/sentence/asked.js';
import { quotesSunWarning } from '../asking/sentence/sun-words.js';
import type { WordsReader, Deps } from '../core/command.js';
import { forWhomAtEnd } from './at-the-end.js';
import { walkHere } from './find-walk.js';
import type { UtcMs } from '../../sky/types.js';
import { walkStandsAgain } from './stands-again.js';
import { numbersSaid, placedNumbers } from './take-numbers.js';
import { tellsOutcome } from './told-at-card.js';
import { triage } from './triage.js';

/** How a question of another kind begins; "I don't see anything" and "it is in the port" are answers. */
const OPENS_QUESTION =
  /^(?:(?:hi|hey|so|and|please|pierhand|(?:my|the|our) \w+ (?:asks?|asked|is asking|wants to know|wonders?)(?: if| whether)?),? )*(?:what|whats|which|when|whens|where|wheres|how|hows|who|is|are|will|can (?:i|we|you)|could|should|show me|remind|suggest|recommend|next|any|do you|does|tell me)\b/iu;

/** And what is told with sure intent: where they observe from, and what to be reminded of. */
const SURE =
  /^(?:(?:please|hi|hey|and|so),? )*(?:my (?:site|garden|home|house|observatory|location|scope|telescope|sk(?:y|ies)) (?:is|are)\b|save (?:my|the|our)?\b|(?:set|change|move) (?:my|our) (?:site|location|home)\b|add (?:a |my )?site\b|remind (?:me|us)\b|set (?:a|an) (?:reminder|alarm)\b|(?:wake|ping|nudge|alert) (?:me|us)\b|let (?:me|us) know (?:when|once)\b)/iu;

/** What would be sent here anyway is said of the mount, and so is a miss without its amount, whatever else might answer it. */
export const isOfTheMount = (outcome: Outcome): boolean =>
  isProblem(outcome) && (outcome.choices ?? []).some(({ run }) => /^(?:triage|astray)\b/u.test(run));

/** A target and where the tube landed: a pointing question whole in itself, but where a walk has asked for just that. */
const A_MISS = /^astray\b/u;

/** What is kept, and what the air does at a height: no walk asks for it. */
const NEVER_OF_WALK =
  /^(?:forget|mydata|refraction|remind (?:list|cancel)|site (?:use|rename|remove)|dark first:sun(?:set|rise)|ahead messier)\b|^site$/u;

/** A whole question of another kind ("when is the next lunar eclipse", "hello"); a bare target may be one of the walk's answers. */
export const isAnotherQuestion = (text: string, deps: Deps, nowUtcMs: UtcMs): boolean => {
  if (text.length > LINE_LIMIT) return false;
  const read = plainAlone(text, deps, nowUtcMs);
  if (read === null) return false;
  // "The screen is black, nothing on the scope" may be the walk's answer: a topic has to be asked about.
  if (!('line' in read)) return read.isTopic === true ? OPENS_QUESTION.test(text.trim()) : !isOfTheMount(read.outcome);
  if (A_MISS.test(read.line) || read.isAbroad === true) return true;
  // What is kept of them is never less than sure, however it is said.
  if (NEVER_OF_WALK.test(read.line)) return true;
  const said = text.trim();
  return !/^triage\b/u.test(read.line) && (OPENS_QUESTION.test(said) || SURE.test(said));
};

/** What came of it, or that it is yet to be done: "I will when the clouds go" asks for no weather. */
const isOfRemedy = (said: SaidOutcome, text: string): boolean =>
  tellsOutcome(said) || (said.what === 'not-yet' && !OPENS_QUESTION.test(text.trim()) && !SURE.test(text.trim()));

/** "How do I forget a network on the phone": how a thing is done with the gear, whatever names of the sky its words may be. */
const HOW_TO_DO =
  /^(?:(?:and|so|ok|but|um|sorry),? )*(?:how|where) (?:do|can|could|should|would|to)(?: (?:i|we|one|you))? (?:\w+ )?(?:forget|join|leave|stop|turn|switch|set|change|install|update|open|get (?:to|into|rid)|connect|disconnect|unplug|reset|restart|allow|choose|pick|select|pair|see which|tell which)\b/iu;

/** Lines of the sky, with the day or hour that a question names. */
const OF_THE_SKY =
  /^(?:up|tonight|altitude|dark|moon|ahead|compare|alignment|sidereal|pole|meridian|moons|bright|epoch)\b(?<rest>.*)$/u;
const NAMES_A_TIME = /\b(?:on|at|in|over|from|until|first):(?!now\b)/u;
const FEWEST_WORDS = 3;
const FEWEST_OF_SKY = 2;
/** "Steady light low in the east": no lamp of a mount has a direction. */
const A_LIGHT = /^bright towards:/u;

/** What is asked of a target, though no hour and no mark stands beside it: "M 42 in binoculars", "NGC 253 transit", "β Per visible". */
const ASKS_OF_SKY = /\b(?:with|kind|event|about|in):/u;
const WORDS_OF_SKY =
  /\b(?:visible|transits?|culminat\w*|alt(?:itude)?|az(?:imuth)?|ra|dec|right ascension|declination|coord(?:inate)?s|rises?|rising|sets?|setting|oppositions?|phases?|magnitude|mag|split|minim\w*|mins?|conj\w*|eclipses?|showers?)\b/iu;

/** "Io transit times": one name is left over, and the rest is asked of a planet's moons. */
const OF_MOONS = /\b(?:transits?|shadows?|eclipses?|occult\w*|events?|times?)\b/iu;
const isOfMoons = (said: string, line: string, unread: number): boolean =>
  unread === 1 && /^moons\b/u.test(line) && OF_MOONS.test(said);

/** "My son wants to see Saturn", and little more. */
const WISHES_TO_SEE =
  /^(?:(?:and|so|now|also|but|ok|oh|well|btw),? )*(?:i|we|(?:my|our|the) \p{L}+|(?:every|some)(?:one|body)(?: here)?|he|she|they)(?: (?:really|just|also|still))? ?(?:wants?|would (?:like|love)|['\u2019]?d (?:like|love)|wish(?:es)?|hopes?|wanted) to (?:see|look at|find|spot|observe|view|show|try)\b/iu;
const MOST_BESIDE_WISH = 2;

/** What is left over may be told of the mount: "how do I see what uses it", "a brick of 5 amps, works now". */
const isAskedOfTheSky = (said: string, { line, unread = 0 }: Reading): boolean => {
  const rest = OF_THE_SKY.exec(line)?.groups?.['rest'];
  if (rest === undefined) return false;
  const asks = OPENS_QUESTION.test(said) || said.endsWith('?');
  const isTimed = NAMES_A_TIME.test(rest) || A_LIGHT.test(line);
  if (unread <= MOST_BESIDE_WISH && WISHES_TO_SEE.test(said)) return true;
  if (unread > 0) return (asks && isTimed) || isOfMoons(said, line, unread);
  return asks || isTimed || ASKS_OF_SKY.test(rest) || WORDS_OF_SKY.test(said);
};

/** Of targets, of what is coming, or of what nobody reckons here: no word about the walk, however like one it is. */
const IS_OF_SKY = /^(?:up|altitude|sun|compare|ahead|moons|meridian|mydata|forget)\b/u;
const LEAST_OF_SKY = 4;
const isPlainlyAnother = (text: string, deps: Deps, nowUtcMs: UtcMs): boolean => {
  if (!isAnotherQuestion(text, deps, nowUtcMs)) return false;
  const read = plainAlone(text, deps, nowUtcMs);
  if (read === null) return false;
  if ('line' in read && (NEVER_OF_WALK.test(read.line) || read.isAbroad === true)) return true;
  if (wordCountOf(text) < LEAST_OF_SKY) return false;
  return 'line' in read ? IS_OF_SKY.test(read.line) : isProblem(read.outcome) && read.isTopic !== true;
};

const OF_TARGET = /^(?:up|altitude) (?<target>[^:]*?)(?: \w+:.*)?$/u;

/** The target that a line asks of, or why there is none of that name; null where it asks of none. */
const targetIn = (line: string, { catalogue }: Deps): ReturnType<typeof resolveTarget> | null => {
  const named = OF_TARGET.exec(line)?.groups?.['target'];
  return named === undefined ? null : resolveTarget(catalogue, named.replaceAll('"', ''));
};

/** "Always at ten": a word that no target has is said of the hour at which it fails. */
const namesNoTarget = (line: string, said: string, deps: Deps): boolean => {
  if (OPENS_QUESTION.test(said) || said.endsWith('?')) return false;
  const found = targetIn(line, deps);
  return found !== null && isProblem(found);
};

/** "M 42 transit on 12 December", "what is up tonight": of the sky from end to end, and nothing in it told of the mount. */
const isWhollyOfTheSky = (text: string, deps: Deps, nowUtcMs: UtcMs): boolean => {
  const said = text.trim();
  const fewest = WORDS_OF_SKY.test(said) ? FEWEST_OF_SKY : FEWEST_WORDS;
  if (text.length > LINE_LIMIT || wordCountOf(said) < fewest) return false;
  const read = plainAlone(text, deps, nowUtcMs);
  if (read === null || !('line' in read) || !isAskedOfTheSky(said, read) || namesNoTarget(read.line, said, deps))
    return false;
  // "I want to see the port": no target is called that.
  if (WISHES_TO_SEE.test(said) && !/^moon\b/u.test(read.line) && !isOfNamed(read.line, deps)) return false;
  const { facts, perhaps } = readText(deps.triage().reading, text);
  // "Saturn at 9" is a target and its hour from end to end, whatever it is like.
  const isWhole = (read.unread ?? 0) === 0 && / at:/u.test(read.line);
  return facts.length === 0 && (perhaps.length === 0 || isWhole);
};

/** Sums of optics and exposures, with their numbers: whoever answers them, no walk asks for one. */
const SUMS =
  /\b(?:exit pupils?|magnif\w+|(?:true |apparent )?field of view|t?fov|focal (?:ratio|length)|barlow|dawes|rayleigh|limiting mag\w*|(?:seeing|resolution|resolving) (?:limit|power)|air ?mass|arc ?sec\w* per pixel|image scale|sampling|plate scale|max(?:imum)? (?:power|magnification)|(?:rule|npf) (?:of )?(?:500|rule)|500 rule)\b|\b(?:longest|max\w*|how long)\b.{0,25}\b(?:exposures?|expose|shutter|subs?)\b|\bexposures?\b.{0,20}\b(?:for|of|at|with)\b.{0,20}\bf ?\/? ?\d/iu;
const isOfSums = (text: string, deps: Deps): boolean =>
  text.length <= LONGEST_SUM &&
  SUMS.test(text) &&
  (/\d/u.test(text) || OPENS_QUESTION.test(text.trim())) &&
  readText(deps.triage().reading, text).facts.length === 0;
const LONGEST_SUM = 120;

const OF_THE_SUN = /\b(?:sun|solar|sunspots?)\b/iu;
/** "Slew to Venus at 2pm, is it safe": by day it is the Sun that is asked about. */
const WHETHER_SAFE = /\b(?:safe(?:ly)?|danger\w*|risky?)\b/iu;

/** "Tracking Saturn, start 1800, sun still up": all of it is of the Sun and a target, and nothing of a fault. */
const isBesideSun = (text: string, deps: Deps, nowUtcMs: UtcMs): boolean => {
  if (!(OF_THE_SUN.test(text) || WHETHER_SAFE.test(text)) || text.length > LINE_LIMIT) return false;
  const read = plainAlone(text, deps, nowUtcMs);
  const isOfSun = read !== null && 'line' in read && /^sun\b/u.test(read.line) && (read.unread ?? 0) === 0;
  return isOfSun && readText(deps.triage().reading, text).facts.length === 0;
};

/** "M 42 up", "LMC tonight", "and M 45?", "the Moon": a name of the sky and nothing else. A walk that asks on which target it was takes it for that. */
const isTargetAlone = (text: string, deps: Deps, nowUtcMs: UtcMs, kind: Step['kind']): boolean => {
  const said = text.trim();
  if (kind === NUMBERS || wordCountOf(said) > MOST_OF_TARGET) return false;
  const read = plainAlone(said, deps, nowUtcMs);
  if (read === null || !('line' in read) || (read.unread ?? 0) > 0 || read.unsure !== undefined) return false;
  const isOfMoon = /^moon\b/u.test(read.line) && /\bmoon\b/iu.test(said);
  return (isOfMoon || isOfNamed(read.line, deps)) && readText(deps.triage().reading, said).facts.length === 0;
};

/** Of one target that is called as it is written. */
const isOfNamed = (line: string, deps: Deps): boolean => {
  const found = targetIn(line, deps);
  return found !== null && !isProblem(found) && found.isSlip !== true;
};
const MOST_OF_TARGET = 5;

/** "Antares now", "SMC 2045": by day it is looked for at once. A walk that asks on which target it was takes it for that. */
const isOfThisMinute = (text: string, deps: Deps, nowUtcMs: UtcMs, kind: Step['kind']): boolean => {
  if (kind === NUMBERS || !/\b(?:now|[012]\d[0-5]\d)\W*$/iu.test(text) || wordCountOf(text) > MOST_OF_NOW) return false;
  const read = plainAlone(text, deps, nowUtcMs);
  return (
    read !== null && 'line' in read && (read.unread ?? 0) === 0 && /^up \S.* at:(?:now|\d\d:\d\d)$/u.test(read.line)
  );
};
const MOST_OF_NOW = 4;

/** What is never for a walk: a question of the Sun, which is answered by what judges it, and one of the sky from end to end. */
export const isOfTheSkyAlone = (text: string, deps: Deps, nowUtcMs: UtcMs): boolean =>
  (OF_THE_SUN.test(text) && isAnotherQuestion(text, deps, nowUtcMs)) ||
  isBesideSun(text, deps, nowUtcMs) ||
  isWhollyOfTheSky(text, deps, nowUtcMs);

const asksHowOfGear = (reading: Vocabulary, text: string): boolean =>
  HOW_TO_DO.test(text.trim()) && readText(reading, text).facts.length > 0;

/** Who speaks here is no word about the mount. */
const ASKS_WHO =
  /^(?:(?:hi|hey|hello|and|so|but),? )*(?:who|what) (?:are|r|is) (?:you|u|this bot|pierhand)(?: then| anyway)?\W*$/iu;

/** "What if the mice chewed the cable" names a target of the sky, and a lead. */
const isSuspicion = (reading: Vocabulary, text: string, isAnother: () => boolean): boolean => {
  const cause = suspectedCause(text);
  return cause !== null && (tellsOfMount(reading, cause, OFTEN_OF_MOUNT) || !isAnother());
};
const OFTEN_OF_MOUNT = 3;

/** "Com7 or com8": a port, and never a target of the sky. */
const A_PORT = /\bcom ?\d{1,2}\b(?! ber)/iu;
const ofThisGear = (reading: Vocabulary, text: string): boolean =>
  A_PORT.test(text) || readText(reading, text).named.length > 0;

const answersStep = (text: string, deps: Deps, nowUtcMs: UtcMs, kind: Step['kind']): boolean => {
  const { reading } = deps.triage();
  return (
    // "Who can help me", "stop" and "what do you mean" are said of the walk.
    leavesWalk(reading, text) !== null ||
    isSuspicion(reading, text, () => isPlainlyAnother(text, deps, nowUtcMs)) ||
    (ofTheTalk(reading, text) !== null && !isPlainlyAnother(text, deps, nowUtcMs)) ||
    asksHowOfGear(reading, text) ||
    ofThisGear(reading, text) ||
    // "OK, that was it, works" ends a remedy; elsewhere it is talk.
    (kind === 'try' && isOfRemedy(outcomeSaid(reading, text), text))
  );
};

const isForOthers = (text: string, deps: Deps, nowUtcMs: UtcMs, kind: Step['kind']): boolean =>
  isOfSums(text, deps) ||
  isOfTheSkyAlone(text, deps, nowUtcMs) ||
  isOfThisMinute(text, deps, nowUtcMs, kind) ||
  isTargetAlone(text, deps, nowUtcMs, kind) ||
  (!answersStep(text, deps, nowUtcMs, kind) && isAnotherQuestion(text, deps, nowUtcMs));

export const waitingWords: WordsReader = {
  name: 'triage',
  isOfWalk: true,
  standsAgain: walkStandsAgain,
  read: async (deps, { text, ...request }) => {
    const walk = await walkHere(deps, request.asker, request.nowUtcMs);
    if (walk === null || ASKS_WHO.test(text.trim())) return null;
    const model = deps.triage();
    const { kind } = assess(model, walk.state).step;
    const before = kind === NUMBERS ? wordsIn(walk.state).at(-1) : undefined;
    const isPlace = before !== undefined && placedNumbers(before, text, deps, request.nowUtcMs) !== null;
    const isNumbers = kind === NUMBERS && (isPlace || numbersSaid(text, deps, request.nowUtcMs) !== null);
    const isOfStep = isNumbers || quotesSunWarning(text) || wantsNote(text) || asksOfTheStep(text) === 'how';
    if (!isOfStep && isForOthers(text, deps, request.nowUtcMs, kind)) return null;
    if (mendedBy(walk.state) !== null && forWhomAtEnd(model, walk, text) === 'others') return null;
    const options = { walk: walk.id, text, for: undefined, answer: undefined, do: undefined, file: undefined };
    return { outcome: await triage.run(deps, { ...request, options }) };
  },
};
