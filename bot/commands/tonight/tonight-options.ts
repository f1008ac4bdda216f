/** What `tonight` may be asked. */
import { SKIES, SKY_NAMES } from '../../evening/equipment.js';
import { PICK_KIND_NAMES, PICK_KINDS } from '../../evening/kinds.js';
import { TOWARDS } from '../../evening/towards.js';
import { choice, flag, number, optional, text, type OptionSpec, type OptionValues } from '../core/command.js';

const LIST_FIRST = ['sets', 'rises', 'brightest'] as const;
export type ListFirst = (typeof LIST_FIRST)[number];

export const options = {
  site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
  kind: optional(choice('Only one kind of target', PICK_KINDS, PICK_KIND_NAMES)),
  also: optional(choice('And a second kind beside it', PICK_KINDS, PICK_KIND_NAMES)),
  at: optional(text('Only as the sky stands at this hour: now, 22:00', { complete: 'time', maxLength: 40 })),
  from: optional(text('From which hour (usual: when it is dark)', { complete: 'time', maxLength: 40 })),
  until: optional(text('Until which hour (usual: half past midnight)', { complete: 'time', maxLength: 40 })),
  with: optional(text('With what: eyes, binoculars, or an aperture such as 150 mm (usual: 150 mm)', { maxLength: 40 })),
  sky: optional(choice('How dark your sky is (usual: country)', SKIES, SKY_NAMES)),
  brighter: optional(number('Faintest magnitude to list (usual: 11)', { min: -5, max: 20 })),
  above: optional(number('Least altitude in degrees (usual: 20; Moon and planets 10)', { min: 0, max: 85 })),
  below: optional(number('Greatest altitude in degrees', { min: 1, max: 90 })),
  towards: optional(choice('Only in that part of the sky', TOWARDS)),
  constellation: optional(
    text('Only in that constellation, such as Cygnus, or in several: Cas, Per', { maxLength: 80 }),
  ),
  messier: optional(flag('Only Messier objects')),
  larger: optional(number('Larger than so many arcminutes', { min: 0, max: 600 })),
  smaller: optional(number('No larger than so many arcminutes: to fit a field', { min: 1, max: 1200 })),
  wider: optional(number('Doubles wider than so many arcseconds', { min: 0, max: 900 })),
  easy: optional(flag('For children and beginners: five at most, bright and early')),
  first: optional(choice('Say first when they set or rise, or which are brightest', LIST_FIRST)),
  all: optional(flag('Spell out every one, not the best six alone')),
} satisfies Record<string, OptionSpec>;
export type TonightOptions = OptionValues<typeof options>;
