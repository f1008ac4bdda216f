/** The package ships these schemas without declarations; only those used here are named. */
declare module 'discord-api-spec/zod' {
  import type { $ZodType } from 'zod/v4/core';
  export const ApplicationCommandAutocompleteCallbackRequestSchema: $ZodType;
  export const ApplicationCommandUpdateRequestSchema: $ZodType;
  export const CreateMessageInteractionCallbackRequestSchema: $ZodType;
  export const CreatePrivateChannelRequestSchema: $ZodType;
  export const CreateTextThreadWithMessageRequestSchema: $ZodType;
  export const IncomingWebhookRequestPartialSchema: $ZodType;
  export const IncomingWebhookUpdateRequestPartialSchema: $ZodType;
  export const MessageCreateRequestSchema: $ZodType;
  export const MessageEditRequestPartialSchema: $ZodType;
  export const ModalInteractionCallbackRequestSchema: $ZodType;
  export const PongInteractionCallbackRequestSchema: $ZodType;
  export const UpdateMessageInteractionCallbackRequestSchema: $ZodType;
}
