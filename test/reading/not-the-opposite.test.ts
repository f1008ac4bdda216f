/**
 * What a member says of a good part is not taken as a fault of it, what is excepted is not lost, and a guess opens no safety gate.
 * The sentences are ours, in the voices of members at night (invented; no source).
 */
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { answerMeant, readText } from '../../bot/reading/index.js';
import { loadTriage, startWalk, tellText } from '../../bot/triage/index.js';

const model = loadTriage(path.join(projectRoot(), 'knowledge/connection'));

const factOf = (text: string, check: string): string | null =>
  readText(model.reading, text).facts.find(({ what }) => what === check)?.answer ?? null;

/** As the walk takes it: what the words tell of the check, else the answer they mean. */
const takenFor = (check: string, text: string): string | null => {
  const told = factOf(text, check);
  if (told !== null) return told;
  const { answers = [], good, safety } = model.check(check) ?? {};
  const meant = answerMeant(model.reading, text, { id: check, answers, good, guards: safety });
  return meant?.isSure === true ? meant.id : null;
};

/** Text, check, what may be read of it (null: nothing). */
const READ: readonly (readonly [string, string, string | null])[] = [
  // Another part that works is no part that changes nothing.
  ['my new lead to the mount will not work, the clubs one works fine', 'other-cable', 'works'],
  ['new cable doesnt work but the old one does', 'other-cable', 'works'],
  ['the new usb cable is dead, with the spare one it connects', 'other-cable', 'works'],
  ['bought a new lead and it wont connect', 'other-cable', null],
  ['my new cable does not fit well', 'other-cable', null],
  ['new adapter is no good, a borrowed adapter works fine', 'other-adapter', 'works'],
  // Found good, not at fault.
  ['one axis at a time is fine, both together and it dies', 'arrow-keys', null],
  ['a single axis at slow speed works fine', 'how-far', null],
  ['single axis slewing is ok', 'arrow-keys', null],
  ['only one axis moves', 'arrow-keys', 'one'],
  // The exception wins.
  ['nothing has changed except the cable', 'changed-last', 'cable'],
  ['nothing changed apart from a new lead', 'changed-last', 'cable'],
  ['we changed nothing except the battery', 'changed-last', 'supply'],
  ['nothing was changed except for the router', 'changed-last', 'network'],
  ['nothing different other than the laptop', 'changed-last', 'computer'],
  ['i changed nothing, only the cable', 'changed-last', 'cable'],
  ['nothing changed but the dew heater', 'changed-last', 'device'],
  ['nothing changed except the weather', 'changed-last', null],
  ['nothing changed but it does not connect', 'changed-last', 'nothing'],
  ['nothing changed since last week', 'changed-last', 'nothing'],
  // What the list shows is seen.
  ['there is no com port on a phone. the pairing list shows the mount', 'how-far', null],
  ['the bluetooth list has the dongle in it, no port anywhere', 'how-far', null],
];

/** Said to the question of the lead's level, which keeps a board from being destroyed. */
const LEVEL: readonly (readonly [string, string | null])[] = [
  ['other end is usb, 5 volts i think it said', null],
  ['probably 5v', null],
  ['should be logic level', null],
  ['ttl i guess', null],
  ['5 V, not sure', null],
  ['it is marked 5 V', 'logic'],
  ['i read it off the label: 5 volt ttl', 'logic'],
  // The dangerous one may be taken from a guess.
  ['i think it has a nine pin plug', 'rs232'],
];

/** What is said in a walk, a line at a time, and what the last line tells of the port's settings. */
const SPEEDS: readonly (readonly [readonly string[], string | null])[] = [
  [['is 115200 right for the speed? the leaflet says 9600'], 'other-speed'],
  [['should the speed not be 9600? here it is at 115200'], 'other-speed'],
  [['COM5 in both. the speed is 115200, the sheet says 9600'], 'other-speed'],
  [['port COM5, speed 115200, 8N1', 'the sheet in the box says 9600'], 'other-speed'],
  [['the sheet says 9600', 'it is set to 9600'], 'match'],
  [['port COM5, speed 115200, 8N1', 'the light blinks'], null],
  [['tried 9600 and 115200, the sheet does not say'], null],
];

describe('not the opposite', () => {
  it.each(READ)('“%s” tells of %s: %s', (text, check, expected) => {
    expect(model.check(check), check).toBeDefined();
    expect(factOf(text, check)).toBe(expected);
  });

  it.each(LEVEL)('at the lead’s level “%s” is %s', (text, expected) => {
    expect(takenFor('lead-level', text)).toBe(expected);
  });

  it.each(SPEEDS)('%j tells of the speed: %s', (lines, expected) => {
    let state = startWalk({ member: 'Tamsin', helper: null });
    let last: string | null = null;
    for (const line of lines) {
      const told = tellText(model, state, line, 'member');
      state = told.state;
      last = told.read.facts.find(({ what }) => what === 'port-settings')?.answer ?? null;
    }
    expect(last).toBe(expected);
  });

  it('a hedge opens no gate in the opening either', () => {
    expect(factOf('usb lead to the motor board, 5 volt ttl i think', 'lead-level')).toBeNull();
  });
});
