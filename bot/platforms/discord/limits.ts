/** Discord's limits, each written once; figures from Discord's published OpenAPI document and developer documentation. */
export const LIMITS = {
  content: 2000,
  embedTotal: 6000,
  embedTitle: 256,
  embedDescription: 4096,
  embedFields: 25,
  fieldName: 256,
  fieldValue: 1024,
  embedFooter: 2048,
  embedAuthor: 256,
  attachmentDescription: 1024,
  rows: 5,
  buttonsARow: 5,
  buttonLabel: 80,
  customId: 100,
  selectOptions: 25,
  selectLabel: 100,
  selectValue: 100,
  selectPlaceholder: 150,
  completions: 25,
  completionText: 100,
  commandName: 32,
  commandDescription: 100,
  commandOptions: 25,
  optionChoices: 25,
  textOption: 6000,
  commandsOfAKind: 100,
  contextMenusOfAKind: 15,
  threadName: 100,
} as const;

/** A question must have its first response within this; a deferred answer may follow within `TOKEN_MS`. */
export const FIRST_RESPONSE_MS = 3000;
export const TOKEN_MS = 15 * 60_000;
