/**
 * The groups of a session, as `id` or `groups` print them, pasted or typed as a bare list of words: whether the one that owns serial
 * ports is among them.
 */
import type { ReadFact, Reading } from '../../reading/index.js';
import { quotedFrom, withFact, withoutGuesses } from './with-fact.js';

/** Groups that nothing else is called: those of a fresh account on the usual systems. */
const GROUPS =
  /^(?:adm|cdrom|sudo|dip|plugdev|lpadmin|sambashare|wheel|netdev|lxd|docker|libvirt|kvm|www-data|dialout|uucp|tty|disk|systemd-journal)$/u;
/** … and those whose names are words of every day. */
const ALSO_GROUPS =
  /^(?:audio|video|users|games|input|render|scanner|bluetooth|floppy|tape|network|storage|power|optical|lp|sys)$/u;
/** Of these one owns the port: Debian and its kin, Arch and its kin. */
const OWNS = /^(?:dialout|uucp)$/u;
/** What a command has and a list has not. */
const COMMAND = /(?:^|\s)-{1,2}[a-z]|[$/|>]|\b(?:usermod|adduser|gpasswd|apt|systemctl|chmod|dmesg)\b/iu;
const ASKED = /\b(?:groups?|id -nG|id)\b/iu;

const CHECK = 'port-group';
const SURE = 0.85;
/** Words that are no groups: a name before a colon, "my groups are". */
const MOST_OTHERS = 4;

/** @returns the groups that a line lists; null where it is none */
const groupsIn = (line: string): readonly string[] | null => {
  if (COMMAND.test(line)) return null;
  const words = line
    .toLowerCase()
    .replace(/\b[ug]id=\d+\([\w-]+\)/gu, ' ')
    .replace(/\d+\(([\w-]+)\)/gu, ' $1 ')
    .split(/[^a-z0-9_-]+/u)
    .filter((word) => word !== '');
  const plain = words.filter((word) => GROUPS.test(word));
  const listed = words.filter((word) => GROUPS.test(word) || ALSO_GROUPS.test(word));
  const least = ASKED.test(line) ? 2 : 3;
  if (plain.length === 0 || listed.length < least || words.length - listed.length > MOST_OTHERS) return null;
  return listed;
};

/** Adds what such a list says, where nothing was read of it. */
export const withGroupsListed = (read: Reading, text: string): Reading => {
  if (read.facts.some(({ what }) => what === CHECK)) return read;
  const lines = text.split('\n');
  const at = lines.findLastIndex((line) => groupsIn(line) !== null);
  const groups = groupsIn(lines[at] ?? '');
  if (groups === null) return read;
  const isMember = groups.some((group) => OWNS.test(group));
  const fact: ReadFact = {
    what: CHECK,
    answer: isMember ? 'member' : 'outside',
    sureness: SURE,
    quote: quotedFrom(lines[at] ?? ''),
    by: 'words',
  };
  const label = isMember ? 'in the group that owns the port' : 'not in the group that owns the port (dialout or uucp)';
  return withoutGuesses(withFact(read, { fact, label }), (what) => what === CHECK);
};
