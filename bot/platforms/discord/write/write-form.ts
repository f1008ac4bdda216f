/** A command's form as Discord's modal. Its id carries the form's name and the line it adds to, so nothing is remembered. */
import { ComponentType, TextInputStyle, type APIModalInteractionResponseCallbackData } from 'discord-api-types/v10';
import type { Form, FormField } from '../../../commands/core/form.js';
import { plainWithin } from './escape-text.js';
import { LIMITS } from './limits.js';

const ID = /^([a-z]{1,10}):(.*)$/su;

export const formId = (name: string, run: string): string => `${name}:${run}`;

/** The form's name and line in an id of ours, or undefined. */
export const formIn = (id: string): { readonly name: string; readonly run: string } | undefined => {
  const [, name, run] = ID.exec(id) ?? [];
  return name === undefined || run === undefined ? undefined : { name, run };
};

const input = ({ id, kind, hint, required }: FormField) => {
  const common = { custom_id: id, required: required === true };
  if (kind === 'file')
    return { type: ComponentType.FileUpload, ...common, min_values: required === true ? 1 : 0, max_values: 1 } as const;
  return {
    type: ComponentType.TextInput,
    ...common,
    style: kind === 'paragraph' ? TextInputStyle.Paragraph : TextInputStyle.Short,
    max_length: kind === 'paragraph' ? LIMITS.formParagraph : LIMITS.formLine,
    ...(hint === undefined ? {} : { placeholder: plainWithin(hint, LIMITS.formHint) }),
  } as const;
};

export const writeForm = (form: Form, name: string, run: string): APIModalInteractionResponseCallbackData => ({
  custom_id: formId(name, run),
  title: plainWithin(form.title, LIMITS.formTitle),
  components: form.fields.slice(0, LIMITS.formFields).map((field) => ({
    type: ComponentType.Label,
    label: plainWithin(field.label, LIMITS.formLabel),
    // A file field has no placeholder; its hint stands under the label.
    ...(field.kind === 'file' && field.hint !== undefined
      ? { description: plainWithin(field.hint, LIMITS.formHint) }
      : {}),
    component: input(field),
  })),
});
