/** A Reply's choices as Discord buttons (five or fewer) or a select menu (more); what a choice runs travels in its id, so nothing is remembered. */
import {
  ButtonStyle,
  ComponentType,
  type APIActionRowComponent,
  type APIComponentInMessageActionRow,
  type APIMessage,
} from 'discord-api-types/v10';
import type { Choice } from '../../../ground/problem.js';
import { plainWithin } from './escape-text.js';
import { LIMITS } from './limits.js';
import { formId, formIn } from './write-form.js';

export type Row = APIActionRowComponent<APIComponentInMessageActionRow>;

export interface WrittenChoices {
  readonly rows: Row[];
  /** Choices that could not be carried. */
  readonly left: readonly Choice[];
}

// Ids must differ within a message even where two choices run the same line: each starts with its number.
const idOf = (index: number, { run, form }: Choice): string =>
  `${index}:${form === undefined ? run : `?${formId(form, run)}`}`;
const ID = /^\d{1,2}:([^?].*)$/su;
const FORM_ID = /^\d{1,2}:\?(.*)$/su;
const SELECT_ID = 'choose';

/** Makes the rows; a line too long for an id, and choices beyond 25, are left. */
export const writeChoices = (choices: readonly Choice[]): WrittenChoices => {
  const fits = (choice: Choice, index: number): boolean =>
    index < LIMITS.selectOptions && idOf(index, choice).length <= LIMITS.customId;
  const kept = choices.filter(fits);
  const left = choices.filter((choice, index) => !fits(choice, index));
  if (kept.length === 0) return { rows: [], left };
  if (kept.length <= LIMITS.buttonsARow) {
    return {
      left,
      rows: [
        {
          type: ComponentType.ActionRow,
          components: kept.map((choice, index) => ({
            type: ComponentType.Button,
            style: choice.preferred === true ? ButtonStyle.Primary : ButtonStyle.Secondary,
            label: plainWithin(choice.label, LIMITS.buttonLabel),
            custom_id: idOf(index, choice),
          })),
        },
      ],
    };
  }
  return {
    left,
    rows: [
      {
        type: ComponentType.ActionRow,
        components: [
          {
            type: ComponentType.StringSelect,
            custom_id: SELECT_ID,
            placeholder: 'Choose one',
            options: kept.map((choice, index) => ({
              label: plainWithin(choice.label, LIMITS.selectLabel),
              value: idOf(index, choice),
              ...(choice.preferred === true ? { description: 'Most people want this one' } : {}),
            })),
          },
        ],
      },
    ],
  };
};

/** The line a pressed button or a picked option runs, or undefined when the id is none of ours. */
export const runOf = (id: string): string | undefined => ID.exec(id)?.[1];

/** The form a pressed button opens, or undefined when it opens none. */
export const formOn = (id: string): { readonly name: string; readonly run: string } | undefined => {
  const named = FORM_ID.exec(id)?.[1];
  return named === undefined ? undefined : formIn(named);
};

interface Offered {
  readonly id: string;
  readonly label: string;
}

/** The choices on a message, as its buttons and select options show them. */
export const offeredOn = (message: Pick<APIMessage, 'components'>): readonly Offered[] => {
  const offered: Offered[] = [];
  for (const row of message.components ?? []) {
    if (row.type !== ComponentType.ActionRow) continue;
    for (const component of row.components) {
      if (component.type === ComponentType.Button && 'custom_id' in component) {
        offered.push({ id: component.custom_id, label: component.label ?? '' });
      } else if (component.type === ComponentType.StringSelect) {
        offered.push(...component.options.map(({ value, label }) => ({ id: value, label })));
      }
    }
  }
  return offered;
};
