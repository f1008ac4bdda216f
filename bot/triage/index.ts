/** The door to connection triage: load the model, walk it, explain it. Pure but for the loader. */
export type { TriageModel } from './model/model.js';
export { loadTriage } from './model/load-triage.js';
export { wantsPlainWords } from './model/guards-gear.js';
export { countEntries } from './model/read-entries.js';
export { KnowledgeError, problemLine } from './model/knowledge-problem.js';
export { answerInstead, answerStep, assess, passStep, startWalk, type Assessment, type Step } from './walk/walk.js';
export { couldNotDo, mendedBy } from './walk/after-remedy.js';
export { stepBack, turnFrom } from './walk/turns.js';
export {
  readWalkState,
  takenBackIn,
  UNSURE,
  wordsIn,
  WORDS_LIMIT,
  type Asked,
  type Speaker,
  type TryOutcome,
  type WalkEvent,
  type WalkState,
} from './walk/walk-state.js';
export { tellText } from './walk/tell-text.js';
export { howTold } from './walk/how-told.js';
export { remediesOf, remediesTold, thingsNamed, type RemedyTold } from './walk/remedies-told.js';
export { collectingOffer } from './walk/collecting-offer.js';
export { NO_COMPUTER } from './walk/opening.js';
export { NUMBERS } from './walk/numbers.js';
export { VOLTS_NAMED } from './walk/volts-named.js';
export {
  CLIENT_NAMES,
  contradictions,
  located,
  lookAlikes,
  movedBy,
  speaksFor,
  standing,
  type Standing,
  SYSTEM_NAMES,
  UNEXPLAINED,
  whatEachAnswerSays,
} from './engine/explain.js';
export { isForPrudence, pressingAlone, unaskedSafety } from './engine/safety.js';
export type { CheckEntry, FaultEntry, System } from './model/schema.js';
export {
  keepSuspicion,
  OWN_SUSPICION,
  ownSuspicion,
  supposeCheck,
  supposing,
  suspicions,
  touchingOn,
} from './walk/suppose.js';
export { likelyBehind, lookOf, suspectedFault, type Suspected } from './walk/suspected.js';
