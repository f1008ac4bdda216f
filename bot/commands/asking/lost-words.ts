/** Last of all readers: ordinary words that nothing understood get what can be asked, rather than that they are no command. */
import { cautionText } from '../../cautions/cautions.js';
import { foldWords } from '../../ground/fold-text.js';
import { problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import type { Deps, WordsReader } from '../core/command.js';
import { isBesideSunTalk } from './following/beside-sun-talk.js';
import { lastAsked } from './following/last-asked.js';
import { isOfOtherSight } from './following/spoken-of.js';
import { knownFor } from './plain-reader.js';
import { sunPoint } from './sentence/sun-briefly.js';
import { SAYS_NIGHT } from './sentence/sun-harm.js';
import { isLittle } from './sentence/words.js';
import { spellerFor } from './spelling/known-words.js';
import { isHarmless, isPerhapsHarm, isTalkOfSun } from './sun-likeness/heard.js';

const LEAST_WORDS = 3;

const notFollowed = (text: string): Problem =>
  problem(
    'unknown-command',
    `I did not follow "${tidy(text, 40)}". Ask me what is up tonight, where a target such as M 42 stands, or tell me what your mount will not do.`,
    [
      { label: "What's up tonight?", run: 'tonight' },
      { label: 'The mount does not work', run: 'triage' },
      { label: 'Help', run: 'help' },
    ],
  );

/** The Sun, or what there is of it alone; in eight languages, from memory. */
const NAMES_SUN =
  /\b(?:(?:the|at|to|on|into|towards?) sun|sun (?:and|with|through|in)|solar (?:filters?|film|observ\w*|imag\w*|photo\w*|scope|telescope|dis[ck]|view\w*|astronomy|project\w*|prominences?)|sunspots?|annular\w*|totality|eclips\w+|sonne\w*|soleil|(?:el|al|del) sol|(?:il|al|del|sul) sole|(?:o|ao|do) sol|(?:de|het) zon|slonc\w+)\b/u;

/** Better warned for nothing than sent on unwarned; in short where the whole was said a moment ago. */
const ofTheSun = (plain: string, isTalk: boolean): Problem =>
  problem(
    'not-safe',
    isTalk
      ? (sunPoint(plain) ?? `I did not follow that. If it is of the Sun still: ${cautionText('sun-still')}`)
      : `I did not follow all of that. If it is of looking at the Sun or pointing at it: ${cautionText('sun-filter')}`,
    [
      { label: 'How near the Sun a target is, such as Venus', run: 'sun Venus' },
      { label: 'Sunrise and sunset', run: 'dark' },
      { label: 'Help', run: 'help' },
    ],
  );

const onlyTalk = (): Problem =>
  problem(
    'unknown-command',
    'I did not follow that. Of the Sun I know when it rises and sets, where it stands, how far a target is from it, and its eclipses.',
    [
      { label: 'Sunrise and sunset', run: 'dark' },
      { label: 'Eclipses to come', run: 'ahead eclipses about:Sun' },
      { label: 'Help', run: 'help' },
    ],
  );

/** Words of a sentence, and no slip in a command's name. */
const isOrdinary = (text: string, isWarned: boolean, deps: Deps): boolean => {
  const [first = '', ...others] = text.trim().toLowerCase().split(/\s+/u);
  if (deps.commands.some(({ name }) => name === first)) return false;
  return isWarned || isLittle(first) || spellerFor(deps).isKnown(first) || others.length + 1 >= LEAST_WORDS;
};

export const lostWords: WordsReader = {
  name: 'words not understood',
  read: async (deps, said) => {
    const { text, asker, nowUtcMs } = said;
    const isWarned = lastAsked(deps.store, asker, nowUtcMs, 'sun') !== null;
    if (!isOrdinary(text, isWarned, deps)) return null;
    // What comes right after a warning is most often of the Sun still.
    const plain = foldWords(text);
    if (isTalkOfSun(text)) return { outcome: onlyTalk() };
    const isTalk =
      isWarned && !SAYS_NIGHT.test(plain) && !isBesideSunTalk(plain) && (sunPoint(plain) !== null || !isHarmless(text));
    const isOfSun =
      NAMES_SUN.test(plain) ||
      ((isTalk || isPerhapsHarm(text)) && !isOfOtherSight(text, deps, said, await knownFor(deps, said)));
    return { outcome: isOfSun ? ofTheSun(plain, isTalk) : notFollowed(text) };
  },
};
