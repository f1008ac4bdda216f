/**
 * "The lead I always used on the hand controller": at the motor board that is a lead of another socket, and of another level as like
 * as not; at the hand controller itself it is the very lead.
 */
import type { Reading, Understood } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import { openingOf } from './opening.js';
import type { WalkEvent } from './walk-state.js';

const CHECK = 'same-lead';
const OF_OTHER_SOCKET = 'other-socket';
const AT_THE_BOARD = 'board-cable';
/** Told of what it did, not of where it goes or came from. */
const WAS_USED = /\b(?:always|used|before|since|years?|months?|ages|worked)\b/iu;
const LABEL = 'this very lead has worked on this mount';

/** @param events the record with the words in it */
export const withLeadsSocket = (model: TriageModel, events: readonly WalkEvent[], read: Reading): Reading => {
  const isOf = ({ what, answer }: { readonly what: string; readonly answer: string }): boolean =>
    what === CHECK && answer === OF_OTHER_SOCKET;
  if (!read.facts.some(isOf)) return read;
  const { context, paths, open } = openingOf(model, events);
  const isAtBoard = open.has('path')
    ? paths.includes(AT_THE_BOARD) && paths.length < model.paths.length
    : context.path === AT_THE_BOARD;
  if (isAtBoard) return read;
  const own = (one: Understood): readonly Understood[] => {
    if (!isOf(one.fact)) return [one];
    return WAS_USED.test(one.fact.quote) ? [{ fact: { ...one.fact, answer: 'worked' }, label: LABEL }] : [];
  };
  return {
    ...read,
    facts: read.facts.flatMap((fact) => own({ fact, label: '' }).map((one) => one.fact)),
    understood: read.understood.flatMap(own),
  };
};
