/** A line that comes near what the Sun does to eyes and cameras is answered before anything that waits: a walk, a question, what was asked last. */
import { cleanText } from '../../ground/fold-text.js';
import { isProblem } from '../../ground/problem.js';
import type { WordsReader } from '../core/command.js';
import { knownFor } from './plain-reader.js';
import { inEnglishNames } from './bodies-abroad.js';
import { eclipseKindSaid } from './sentence/eclipse-kind.js';
import { lookingAtSun, sunHarmAnswer } from './sentence/looking-at-sun.js';
import { quotesSunWarning, withSunMadePlain } from './sentence/sun-words.js';
import { mended } from './spelling/known-words.js';

/** More is a message or an account, which the walk reads. */
const LONGEST = 300;

export const sunFirst: WordsReader = {
  name: 'looking at the Sun',
  beforeCommands: true,
  read: async (deps, said) => {
    const text = cleanText(said.text);
    if (text === '' || text.length > LONGEST || quotesSunWarning(text)) return null;
    const known = await knownFor(deps, said);
    const english = inEnglishNames(text, known);
    // As it came as well: what is asked in another language throughout is known by its own words.
    for (const said of english === text ? [text] : [english, text]) {
      const harm = sunHarmAnswer(withSunMadePlain(said), known);
      if (harm !== null) return { outcome: harm };
    }
    // "What about solar", after the Moon's eclipse, is of no looking.
    if (eclipseKindSaid(text) !== null) return null;
    const read = lookingAtSun(withSunMadePlain(mended(english, known)), known);
    return read !== null && isProblem(read) ? { outcome: read } : null;
  },
};
