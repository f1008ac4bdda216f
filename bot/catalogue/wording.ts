/** The catalogue's sentences: a target in one line, and what was wrong with a look-up and what would be right. */
import { constellationName } from './constellations.js';
import { constellationOf, partOfList } from './designation.js';
import type { TargetProblem } from './target-resolution.js';
import type { Target } from './target.js';
import { NO_ELEMENTS, NO_SATELLITES } from './untold.js';

const LONGEST_LABEL = 100;
const LONGEST_MESSAGE = 400;

const shorten = (text: string, longest: number): string => {
  return text.length > longest ? `${text.slice(0, longest - 1).trimEnd()}…` : text;
};

/** "spiral galaxy in Pegasus", "planet". */
const kindAndPlace = (target: Target): string => {
  return target.constellation === null
    ? target.kindText
    : `${target.kindText} in ${constellationName(target.constellation)}`;
};

/** "NGC 7331 · spiral galaxy in Pegasus", at most 100 characters; `also` is a further name to show after the first. */
export const targetLabel = (target: Target, also?: string): string => {
  const name = also === undefined || also === target.name ? target.name : `${target.name} (${also})`;
  return shorten(`${name} · ${kindAndPlace(target)}`, LONGEST_LABEL);
};

/** Asterisms are called in other languages too, which their English name stands for; from memory, no source. */
const isAbroad = ({ kind }: Target, alias: string): boolean =>
  kind === 'asterism' && /\P{ASCII}|(?:dreieck|sechseck|wagen)$|^(?:Grande?|Croix|Cruz|Kreuz|Triangle d) /u.test(alias);

/** "M 97 (Owl Nebula)": enough to choose by; a further catalogue's number says nothing more. */
export const nameWithAlias = (target: Target): string => {
  const also = target.aliases.find(
    (alias) => !/^(?:NGC|IC|HIP) /.test(alias) && partOfList(alias) === null && !isAbroad(target, alias),
  );
  return also === undefined ? target.name : `${target.name} (${also})`;
};

const choices = (targets: readonly Target[], most: number): string => {
  const shown = targets.slice(0, most).map(nameWithAlias);
  const last = shown.pop() ?? '';
  return shown.length === 0 ? last : `${shown.join(', ')} or ${last}`;
};

const coordinateMessage = (problem: Extract<TargetProblem, { problem: 'bad-coordinates' }>): string => {
  const { text, fault, value } = problem;
  const example = 'for example 05h34m32s +22°00′52″';
  switch (fault) {
    case 'right-ascension-range':
      return `Right ascension ${value ?? ''} is out of range: it goes from 0 up to 24 hours (or 0 up to 360°), ${example}.`;
    case 'declination-range':
      return `Declination ${value ?? ''}° is out of range: it goes from −90° to +90°, ${example}.`;
    case 'sixtieths-range':
      return `${value ?? 'A part'} is too large for minutes or seconds: they go from 0 up to 60, ${example}.`;
    case 'hours-or-degrees':
      return `“${text}” could begin with hours or with degrees. Write the unit: ${value ?? 5.5}h or ${value ?? 82.5}° first, or ${example}.`;
    case 'unreadable':
      return `Could not read “${text}” as coordinates. Give right ascension, then declination, both J2000, ${example}.`;
  }
};

/** Of some lists only a part is held: what to type instead. */
const partMessage = (text: string): string => {
  const instead =
    partOfList(text) === 'stars'
      ? 'its name, its letter or number in the constellation (α Lyr, 61 Cyg), or its HIP number if it is brighter than 6.5'
      : 'the NGC, IC or Messier number or the name that it also goes by';
  return `“${text}” is not here: of that list only the best known are. Type ${instead}; or its J2000 coordinates, for example 05h34m32s +22°00′52″.`;
};

const notFoundMessage = (text: string, nearest: readonly Target[]): string => {
  if (nearest.length > 0) return `Found no target “${text}”. Did you mean ${choices(nearest, 4)}?`;
  return partOfList(text) === null
    ? `Found no target “${text}”. Try a name such as Altair, a number such as M 97 or NGC 7331, or J2000 coordinates.`
    : partMessage(text);
};

/** One or two sentences, ≤ 400 characters, that say what was wrong and what would be right. */
export const targetProblemMessage = (problem: TargetProblem): string => {
  const message = (() => {
    switch (problem.problem) {
      case 'bad-coordinates':
        return coordinateMessage(problem);
      case 'ambiguous-target':
        if (constellationOf(problem.text) !== undefined)
          return `${problem.text} is a constellation. Which target in it: ${choices(problem.candidates, 6)}?`;
        return `“${problem.text}” could be ${choices(problem.candidates, 6)}. Which one?`;
      case 'unknown-target':
        if (problem.reason === 'empty')
          return 'Name a target: a name such as Altair, a number such as M 97 or NGC 7331, or J2000 coordinates.';
        if (problem.reason === 'too-long')
          return 'That is too long for a target. Give a name, a catalogue number or J2000 coordinates.';
        if (problem.reason === 'listed-as-nonexistent') {
          return `${problem.text} is a number in the catalogue, but nothing is there: it is listed as nonexistent. Check the number.`;
        }
        if (problem.reason === 'moon-of-planet')
          return `${problem.text} goes with ${problem.nearest[0]?.name ?? 'its planet'}: ask for that.`;
        if (problem.reason === 'satellite') return NO_SATELLITES;
        if (problem.reason === 'moves-unlisted') return NO_ELEMENTS;
        if (problem.reason === 'variable-unlisted')
          return `${problem.text} is a variable star that is not in my list, which holds some fifty. Give its J2000 coordinates to hear when it is up; an observers' association keeps its light curve.`;
        if (problem.reason === 'not-in-list')
          return `${problem.text} is not in this bot’s list of comets and minor planets. Check the name (C/2023 A3, 12P, Ceres), or give its J2000 coordinates for the hour.`;
        return notFoundMessage(problem.text, problem.nearest);
    }
  })();
  return shorten(message, LONGEST_MESSAGE);
};
