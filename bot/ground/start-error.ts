/** A wrong setting or credential found at start: one line for the operator, exit code 2. */
export class StartError extends Error {}
