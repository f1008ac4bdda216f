/** Suggestions for a half-typed option, the same for every platform. */
import { tidy } from '../../ground/tidy.js';
import { completeTargets } from '../../catalogue/index.js';
import { completePlaces } from '../../places/index.js';
import type { Asker, Command, Completion, Deps } from './command.js';
import { savedSites } from '../asking/resolve-site.js';

export const COMPLETION_LIMIT = 25;
const TEXT_LIMIT = 100;

const TIME_WORDS = [
  'now',
  'tonight 21:00',
  'tonight 22:00',
  'tonight 23:00',
  'midnight',
  'tomorrow 04:00',
  'tomorrow 21:00',
  'in 1 hour',
  'in 2 hours',
];
const DATE_WORDS = ['tonight', 'tomorrow', 'friday', 'saturday', 'sunday'];

const startingWith = (words: readonly string[], partial: string): Completion[] =>
  words.filter((word) => word.startsWith(partial.toLowerCase())).map((word) => ({ label: word, value: word }));

/** Saved sites first, the member's own before the club's; a store that does not answer costs only these. */
const namedSites = async (deps: Deps, asker: Asker, partial: string): Promise<Completion[]> => {
  const { member, club } = await savedSites(deps, asker);
  const wanted = partial.toLowerCase();
  return [[member, 'your site'] as const, [club, 'club site'] as const].flatMap(([sites, whose]) =>
    sites
      .filter(({ name }) => name.toLowerCase().includes(wanted))
      .map(({ name }) => ({ label: `${name} · ${whose}`, value: name })),
  );
};

/** At most 25 suggestions, each label and value at most 100 characters, best first. Never rejects for what a member typed. */
export const completeOption = async (
  deps: Deps,
  command: Command,
  optionName: string,
  partialText: string,
  asker: Asker,
): Promise<readonly Completion[]> => {
  const spec = Object.hasOwn(command.options, optionName) ? command.options[optionName] : undefined;
  if (spec === undefined) return [];
  const partial = tidy(partialText, TEXT_LIMIT);
  const found = await (async (): Promise<readonly Completion[]> => {
    if (spec.choices !== undefined) return startingWith(spec.choices, partial);
    switch (spec.complete) {
      case 'target':
        return completeTargets(deps.catalogue, partial, COMPLETION_LIMIT);
      case 'site':
        return [
          ...(await namedSites(deps, asker, partial)),
          ...(partial.length < 2 ? [] : completePlaces(deps.places(), partial, COMPLETION_LIMIT)),
        ];
      case 'place':
        return partial.length < 2 ? [] : completePlaces(deps.places(), partial, COMPLETION_LIMIT);
      case 'command':
        return startingWith(
          deps.commands.map(({ name }) => name),
          partial,
        );
      case 'time':
        return startingWith(TIME_WORDS, partial);
      case 'date':
        return startingWith(DATE_WORDS, partial);
      case 'own':
        return (await command.completeOwn?.(deps, optionName, partial, asker)) ?? [];
      default:
        return [];
    }
  })();
  const seen = new Set<string>();
  return found
    .filter(({ value }) => value.length <= TEXT_LIMIT && !seen.has(value) && seen.add(value))
    .slice(0, COMPLETION_LIMIT)
    .map(({ label, value }) => ({
      label: label.length <= TEXT_LIMIT ? label : `${label.slice(0, TEXT_LIMIT - 1)}…`,
      value,
    }));
};
