/** What `remind` may be asked, and how the same question is written again. */
import { choice, integer, number, optional, text, type OptionSpec, type OptionValues } from '../core/command.js';
import { commandLine } from '../asking/question-parts.js';

const ACTIONS = ['add', 'list', 'cancel'] as const;
export type Action = (typeof ACTIONS)[number];
export const isAction = (word: string): word is Action => (ACTIONS as readonly string[]).includes(word.toLowerCase());

/** In text the target may stand there as well: `remind NGC 7331 above:30`. */
const action: OptionSpec<string> = {
  ...choice('What to do (usual: add, or list when nothing else is given)', ACTIONS),
  schema: text('').schema,
};

export const options = {
  action: optional(action),
  target: optional(text('add: the target, by name or coordinates', { complete: 'target' })),
  above: optional(number('add: when the target is higher than this many degrees', { min: 0, max: 90 })),
  when: optional(
    choice(
      'add: or when it clears your horizon, transits, sets or is due south, or when dark begins, or before sunrise',
      ['horizon', 'transit', 'set', 'north', 'east', 'south', 'west', 'dark', 'sunrise', 'up'],
    ),
  ),
  at: optional(
    text('add: or at an hour, with a target or without: 23:00, 9pm, in 2 hours', { complete: 'time', maxLength: 80 }),
  ),
  on: optional(text('Which night: tonight (usual), tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
  site: optional(text('Where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  before: optional(integer('Minutes before (usual: 0; before sunrise 45)', { min: 0, max: 240 })),
  to: optional(choice('Whom to tell: me (usual), or this channel', ['me', 'channel'])),
  nights: optional(text('sunrise or at: again and again, every night or the days named, "fri sat"', { maxLength: 80 })),
  event: optional(text('add: a meteor shower on its best night, or an eclipse of the Moon', { maxLength: 40 })),
  say: optional(text('add: what to remind you of, in your own words', { maxLength: 120 })),
  instead: optional(text('add: in the place of this one, by its id', { complete: 'own', maxLength: 40 })),
  id: optional(text('cancel: its id from remind list, what it is about, or all', { complete: 'own', maxLength: 40 })),
} satisfies Record<string, OptionSpec>;
export type RemindOptions = OptionValues<typeof options>;

/** The options that keep the question the same when it is asked again with another target or site. */
export const again = (given: RemindOptions, changed: Readonly<Record<string, string | undefined>>): string =>
  commandLine('remind', '', {
    target: given.target,
    above: given.above,
    when: given.when,
    at: given.at,
    event: given.event,
    on: given.on,
    site: given.site,
    before: given.before,
    to: given.to,
    say: given.say,
    ...changed,
  });
