/** The options of `site`. */
import { SKIES, SKY_NAMES } from '../../evening/equipment.js';
import { choice, flag, number, optional, text, type OptionSpec, type OptionValues } from '../core/command.js';

export const options = {
  action: optional(
    choice('What to do (usual: list)', ['list', 'add', 'show', 'use', 'horizon', 'sky', 'rename', 'remove'], {
      // What the answers call it, and what members say for it.
      ...{ save: 'add', set: 'add', new: 'add', store: 'add', saved: 'list', delete: 'remove', forget: 'remove' },
    }),
  ),
  name: optional(text("The site's name", { complete: 'own', maxLength: 80 })),
  position: optional(text('add: LAT,LON in degrees, ISO 6709, or a place name', { complete: 'place' })),
  elevation: optional(number('add: height above the sea in metres', { min: -430, max: 8850 })),
  horizon: optional(
    text('Azimuth:altitude pairs in degrees, "0:5, 90:20, 120:15"; none takes it away', { maxLength: 3500 }),
  ),
  sky: optional(choice('add, sky: how dark it is there (city, suburb, country, dark)', SKIES, SKY_NAMES)),
  to: optional(text('rename: the new name', { maxLength: 80 })),
  precise: optional(flag('add: keep the position as given, not rounded to 0.01°')),
  for: optional(choice('Whose site: me (usual) or the club', ['me', 'club'])),
} satisfies Record<string, OptionSpec>;
export type SiteOptions = OptionValues<typeof options>;
