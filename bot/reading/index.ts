/** The door to reading: what a member wrote, pasted or photographed, as facts that each quote the words they came from. */
export {
  holdsEither,
  holdsSeveral,
  keyOf,
  type ReadBy,
  type ReadFact,
  type Understood,
  type Reading,
  type Suggestion,
} from './reading.js';
export { makeWeighing } from './examples/likely.js';
export { decodeNet } from './examples/net-file.js';
export type { NetParts } from './examples/net.js';
export { likelyOf, SHAPE } from './examples/likely-of.js';
export { decodeWeights, NOTHING, type Weights } from './examples/weights.js';
export { readText } from './read-text.js';
export { TEXT_LIMIT } from './lines.js';
export * as entryParts from './entry-parts.js';
export {
  CLIENTS,
  NO_CLIENT,
  deedsSchema,
  evidenceSchema,
  familySchema,
  wordedAnswersSchema,
  sayingSchema,
  SYSTEMS,
  translationSchema,
  wordSchema,
  type Client,
  type EvidenceEntry,
  type SayingEntry,
  type System,
  type Told,
  type VocabularyEntries,
  type WordedAnswersEntry,
} from './schema.js';
export { makeVocabulary, type Vocabulary } from './vocabulary.js';
export { isHedged } from './answers/hedged.js';
export { saysNoComputer, saysNoComputerOutright, speaksOfComputer } from './answers/no-computer.js';
export { labelHalf } from './answers/label-half.js';
export { readsOut } from './answers/reads-out.js';
export { supplyFigures } from './answers/supply-figures.js';
export { answerMeant, saysAnswer } from './answers/answer-meant.js';
export type { AnswerMeant } from './answers/question-in-hand.js';
export { asksBack, sharesWords } from './answers/said-words.js';
export { deedKindsIn, type DeedKind } from './words/kinds-of-deed.js';
export { tellingMarks } from './answers/telling-marks.js';
export {
  closingMeant,
  saysBrokenAgain,
  saysNeverFixed,
  saysOtherWrong,
  tellsOfThePast,
} from './answers/closing-meant.js';
export { namesLacked, thingsLacked, type Lacked } from './answers/has-not.js';
export { beginsUnsure, saysNone, saysUnsure } from './answers/says-unsure.js';
export { entriesNamed, entriesRight, isCalledRight } from './words/called-right.js';
export { allWell } from './answers/all-well.js';
export { oddOne, type OddOne } from './answers/odd-one.js';
export { withoutOtherThings } from './answers/of-another-thing.js';
export { yesOrNo } from './answers/yes-or-no.js';
export { toldElsewhere, type ToldElsewhere } from './answers/told-elsewhere.js';
export { ofTheTalk, TALK_KINDS, type OfTheTalk } from './answers/of-the-talk.js';
export { withoutSaidAlready } from './answers/said-already.js';
export { meantChecks, supposedChecks, supposition } from './answers/supposes.js';
export { answersItself, asksOfTheStep, lineAsked, namesWhatItAsks, type AsksOfStep } from './answers/asks-of-step.js';
export { hasNone, hasOnlyOne, isSetAlready } from './answers/has-none.js';
export { suspectedCause, thingOf } from './answers/suspects.js';
export { wantsNote } from './answers/wants-note.js';
export { takesBack } from './answers/takes-back.js';
export { namesNoMount } from './answers/names-no-mount.js';
export { leavesWalk } from './answers/leaves-walk.js';
export { tellsFinding } from './answers/tells-finding.js';
export { tellsOfMount } from './answers/tells-of-mount.js';
export { hasWordOfCure, tellsAstray } from './outcome/no-word-of-cure.js';
export { eitherAsked } from './outcome/question-beside.js';
export { saysSomethingElse } from './outcome/something-else.js';
export { hedgesCure } from './outcome/hedged-cure.js';
export { curedOfItself, curedUnexplained, withoutOfItself } from './outcome/of-itself.js';
export { heldFor } from './outcome/held-for.js';
export { asksWhatItIs, isNotDoneYet } from './outcome/not-done-yet.js';
export { curedByDeed, type DeedTold } from './outcome/cured-by-deed.js';
export { outcomeSaid, type SaidOutcome } from './outcome/said-outcome.js';
export { connectsAndFails, type WrongNow } from './outcome/connects-and-fails.js';
export { doingsNow, type Doing } from './outcome/does-what-failed.js';
export { cureGrade } from './outcome/cure-grade.js';
export { statesFailure } from './outcome/states-failure.js';
export { isStillToCome } from './outcome/still-to-come.js';
export { deniesPremise, refusesAsFine } from './outcome/denies-premise.js';
export { checkExamples, checkVocabulary } from './check-vocabulary.js';
export { asIfOwn, forAnother, type Another } from './for-another.js';
