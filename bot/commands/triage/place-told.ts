/** "Im in leeds, yorkshire", "i'm in Leeds, is jupiter up": where members say they are is kept, and what they ask is answered for there. */
import { isProblem } from '../../ground/problem.js';
import { assess, NUMBERS } from '../../triage/index.js';
import type { PlainReading } from '../asking/not-known-here.js';
import { plainQuestion } from '../asking/plain-question.js';
import { knownFor } from '../asking/plain-reader.js';
import { commandLine } from '../asking/question-parts.js';
import { sameSiteName } from '../asking/resolve-site.js';
import type { Known } from '../asking/sentence/asked.js';
import { keepTold } from '../asking/following/told-here.js';
import { mountSaid } from '../asking/sentence/mount-said.js';
import { takeSky } from '../asking/sentence/kit.js';
import { sentenceOf } from '../asking/sentence/words.js';
import { kitToldIn } from '../asking/sentence/told-kit.js';
import { toldPlace, type ToldPlace } from '../asking/sentence/told-place.js';
import { OF_A_PLACE } from '../asking/several-requests.js';
import type { Deps, SaidWords, WordsRead, WordsReader } from '../core/command.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { site } from '../site/site.js';
import { waitingWalk } from './find-walk.js';

const MY_SITE = 'my site';
const SITE = / site:/u;

const skyToldIn = (text: string): string | null => takeSky(sentenceOf(text));

/** A walk that asks for the numbers of a miss asks where that was as well. */
const isForNumbers = async (deps: Deps, { asker, nowUtcMs }: SaidWords): Promise<boolean> => {
  const walk = await waitingWalk(deps, asker, nowUtcMs);
  return walk !== null && assess(deps.triage(), walk.state).step.kind === NUMBERS;
};

const lineOf = (read: PlainReading): string => (read !== null && 'line' in read ? read.line : '');

/** The question behind the place, asked for there; null where what stands there is none of the sky's. */
const askedThere = ({ place, rest }: ToldPlace, known: Known): string | null => {
  const line = lineOf(plainQuestion(rest, known));
  if (!OF_A_PLACE.test(line)) return null;
  return SITE.test(line) ? line : `${line} ${commandLine('', '', { site: place }).trim()}`;
};

/** Kept where nobody knows yet where they are: what is asked next is asked from there. */
export const keepWhereTold = async (
  deps: Deps,
  said: SaidWords,
  { place, isAmbiguous }: ToldPlace,
  known: Known,
): Promise<string> => {
  if (isAmbiguous || (known.usual ?? null) !== null) return '';
  const { text: _text, shared: _shared, ...request } = said;
  const named = { action: 'add', name: MY_SITE, position: place } as const;
  const nothing = { elevation: undefined, horizon: undefined, sky: undefined, to: undefined };
  const options = { ...named, ...nothing, precise: undefined, for: undefined };
  const outcome = await site.run(deps, { ...request, options });
  return isProblem(outcome) ? '' : `Kept as your site: ${place}. For another say “my site is …”.`;
};

/** What the sentences of sites read is read there: a saved name to be used, a place with a name of its own. */
const isReadAlready = (line: string, { siteNames }: Known): boolean => {
  const [, used] = /^site use name:"?([^"]+)"?$/u.exec(line) ?? [];
  if (used !== undefined) return siteNames.some((name) => sameSiteName(name, used));
  return /^site add\b/u.test(line) && !/ name:"?(?:[\w ]*(?:spot|city|town|place|site|name))"? /u.test(line);
};

/** A line to run, and under its answer the notes that there are. */
const lineNoted = (line: string, ...notes: readonly string[]): WordsRead => {
  const note = notes.filter((words) => words !== '').join(' ');
  return note === '' ? { line } : { line, note };
};

/** The telescope counts for what is asked next, and the mount is offered to be kept. */
const gearKept = (deps: Deps, said: SaidWords, gear = ''): string => {
  const kit = kitToldIn(gear);
  const mount = mountSaid(gear.toLowerCase());
  keepTold(deps.store, said, { kit, sky: skyToldIn(gear) });
  return [
    ...(kit === null ? [] : [`Answers of this evening are for the ${kit}; say with: for another.`]),
    ...(mount === null ? [] : [`To keep the mount as well, type gear ${mount}.`]),
  ].join(' ');
};

const tookBeside = ({ place, beside }: ToldPlace): string =>
  (beside ?? null) === null
    ? ''
    : `I do not know ${beside}: took ${place} beside it. For the place itself give its latitude and longitude.`;

export const placeTold: WordsReader = {
  name: 'where they are',
  read: async (deps, said): Promise<WordsRead | null> => {
    if (said.text.length > LINE_LIMIT) return null;
    const known = await knownFor(deps, said);
    const told = toldPlace(said.text, known);
    if (told === null || (await isForNumbers(deps, said))) return null;
    if (told.rest !== '') {
      const line = askedThere(told, known);
      if (line === null) return null;
      keepTold(deps.store, said, { kit: kitToldIn(told.rest), sky: skyToldIn(told.rest) });
      return lineNoted(line, await keepWhereTold(deps, said, told, known));
    }
    const read = lineOf(plainQuestion(said.text, known));
    if (isReadAlready(read, known)) return lineNoted(read, gearKept(deps, said, told.gear));
    const sky = skyToldIn(said.text) ?? undefined;
    const line = commandLine('site', 'add', { name: MY_SITE, position: told.place, sky });
    return lineNoted(line, tookBeside(told), gearKept(deps, said, told.gear));
  },
};
