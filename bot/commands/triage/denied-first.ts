/** "Nothing comes back is wrong. Gotos are fine": what was read is taken back by its own words, and the rest is heard. */
import { isProblem } from '../../ground/problem.js';
import { answerStep, assess, type WalkState } from '../../triage/index.js';
import { nearness } from './not-so-typed.js';
import { readText } from '../../reading/index.js';
import { takenItems, type TakenItem } from './read-notes.js';
import { wordsAlone, type Began, type SaidInTurn } from './turn.js';

const IS_WRONG =
  /^\W*(?:(?:no|sorry|hey|but|and|the|that|your)\b,? )*(?<named>[^.;!?\n]{3,60}?)["'”’]? (?:is|are|was|were) (?:wrong|not (?:so|true|right|correct)|n['’]t (?:so|true|right|correct)|false|untrue|incorrect|rubbish|nonsense)\b[\s.,;!-]*/iu;

/** So far the words must name it. */
const NAMED = 0.6;

/** What of all that was read the words name, and those behind them; null: they deny nothing, or say nothing else. */
const deniedIn = ({ context: { model }, walk }: Began, text: string) => {
  const found = IS_WRONG.exec(text);
  const rest = found === null ? '' : text.slice(found[0].length);
  if (found === null || rest === '') return null;
  const items = takenItems(model, walk);
  const words = found.groups?.['named'] ?? '';
  const near = nearness(model, items, words);
  // In the words it was shown in, it is read so again.
  const { facts } = readText(model.reading, words);
  const isRead = (item: TakenItem): boolean =>
    facts.some(({ what, answer }) => what === item.what && answer === item.answer);
  const named = items.filter((item, i) => (near[i] ?? 0) >= NAMED || isRead(item));
  return named.length === 0 ? null : { named, rest };
};

/** @returns the same where nothing that was read is denied */
export const withoutDenied = (began: Began, said: SaidInTurn): readonly [Began, SaidInTurn] => {
  const { context, walk, notes } = began;
  const text = wordsAlone(said);
  const denied = text === null ? null : deniedIn(began, text);
  if (denied === null) return [began, said];
  const state = denied.named.reduce<WalkState>((at, { what }) => {
    const next = answerStep(context.model, at, 'not', what, context.by);
    return isProblem(next) ? at : next;
  }, walk.state);
  const before = assess(context.model, state, context.outcomes);
  const gone = `Taken back: ${[...new Set(denied.named.map(({ label }) => label))].join('; ')}.`;
  return [
    { ...began, walk: { ...walk, state }, before, notes: [...notes, gone] },
    { ...said, text: denied.rest },
  ];
};
