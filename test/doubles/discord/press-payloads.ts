/** What Discord sends of a pressed button, a picked option and a form filled in. */
import { ComponentType } from 'discord-api-types/v10';
import { attachmentPayload, upload, type SentFile } from './people-and-files.js';
import type { Attachment, Message, World } from './world.js';

/** A button or select option on the message, by its label. */
export const pressData = (message: Message, label: string): object => {
  const offered: string[] = [];
  for (const component of message.components.flatMap((row) => row.components)) {
    if (component.type === ComponentType.Button && 'custom_id' in component) {
      if (component.label === label) return { custom_id: component.custom_id, component_type: 2 };
      offered.push(component.label ?? '');
    }
    if (component.type === ComponentType.StringSelect) {
      const option = component.options.find((candidate) => candidate.label === label);
      if (option !== undefined) return { custom_id: component.custom_id, component_type: 3, values: [option.value] };
      offered.push(...component.options.map((candidate) => candidate.label));
    }
  }
  throw new Error(`no choice "${label}" on that message; there are: ${offered.join(', ') || 'none'}`);
};

interface ShownForm {
  readonly custom_id: string;
  readonly components: readonly {
    readonly component: {
      readonly type: number;
      readonly custom_id: string;
      readonly max_length?: number;
      readonly required?: boolean;
    };
  }[];
}

/** A form filled in and sent; fields left out stay empty, as far as the form allows that. */
export const submitData = (
  world: World,
  shown: unknown,
  values: Readonly<Record<string, string | SentFile>>,
): object => {
  const form = shown as ShownForm;
  const known = form.components.map(({ component }) => component.custom_id);
  for (const name of Object.keys(values)) {
    if (!known.includes(name)) throw new Error(`the form has no field ${name}; there are: ${known.join(', ')}`);
  }
  const attachments: Attachment[] = [];
  const components = form.components.map(
    ({ component: { type, custom_id: id, max_length: most = 4000, required } }) => {
      const value = values[id] ?? '';
      if (required === true && value === '') throw new Error(`the form needs ${id}`);
      if (typeof value !== 'string') {
        if (type !== Number(ComponentType.FileUpload)) throw new Error(`${id} takes no file`);
        attachments.push(upload(world, value));
        return {
          type: ComponentType.Label,
          id: 1,
          component: { type, id: 2, custom_id: id, values: [attachments.at(-1)?.id] },
        };
      }
      if (type === Number(ComponentType.FileUpload))
        return { type: ComponentType.Label, id: 1, component: { type, id: 2, custom_id: id, values: [] } };
      if (value.length > most) throw new Error(`Discord would not take ${value.length} characters in ${id}`);
      return { type: ComponentType.Label, id: 1, component: { type, id: 2, custom_id: id, value } };
    },
  );
  return {
    custom_id: form.custom_id,
    components,
    resolved: { attachments: Object.fromEntries(attachments.map((file) => [file.id, attachmentPayload(world, file)])) },
  };
};
