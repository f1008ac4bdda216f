/** The homeserver is away, or asks for patience: what was tried may be tried again. `message` says why, in the operator's words. */
export class NotNow extends Error {
  constructor(
    message: string,
    /** How long the homeserver asks to wait, in milliseconds; 0 where it does not say. */
    readonly pauseMs: number,
  ) {
    super(message);
  }
}
