/** Options that name a member: a mention, a Matrix id or a name in the room becomes the id that commands know. */
import { problem, type Problem } from '../../../ground/problem.js';
import { tidy } from '../../../ground/tidy.js';
import type { Command } from '../../../commands/core/command.js';
import { displayNameIn, presentMembers, type RoomState } from '../rooms/rooms.js';

const MATRIX_ID = /^(?:matrix:)?(@[^\s:@]+:[^\s@]+?)[,:]?$/u;

/** The members of the room whom a word may mean: by id, or by display or user name where there is no id in it. */
const meantBy = (value: string, state: RoomState): readonly string[] => {
  const id = MATRIX_ID.exec(value)?.[1];
  const present = presentMembers(state);
  if (id !== undefined) return present.filter((userId) => userId === id);
  const name = value.replace(/^@/u, '').toLowerCase();
  // Anyone may take another's user name as their display name, so neither goes before the other.
  return present.filter(
    (userId) =>
      displayNameIn(state, userId)?.toLowerCase() === name ||
      userId.slice(1, userId.indexOf(':')).toLowerCase() === name,
  );
};

/** The raw options with each member as "matrix:@user:server", or a Problem where none or several of the room are meant. */
export const withMemberIds = (
  command: Command,
  raw: ReadonlyMap<string, string>,
  state: RoomState,
): ReadonlyMap<string, string> | Problem => {
  const ids = new Map(raw);
  for (const [name, value] of raw) {
    if (command.options[name]?.type !== 'member') continue;
    const meant = meantBy(value.trim(), state);
    const [userId] = meant;
    if (userId === undefined)
      return problem(
        'unknown-member',
        `${name}: I see no "${tidy(value, 60)}" in this room. Mention a member who is here, or write their id, such as @tamsin:example.org.`,
      );
    if (meant.length > 1)
      return problem(
        'which-member',
        `${name}: there are ${meant.length} members called "${tidy(value, 60)}" here. Mention the one you mean, or write their id.`,
      );
    ids.set(name, `matrix:${userId}`);
  }
  return ids;
};
