/** What has a state that `/health` and `/metrics` show: a platform, or the store. */

export interface HealthPart {
  readonly name: string;
  /** `detail` is for the operator, and holds nothing personal. */
  readonly health: () => { readonly ok: boolean; readonly detail: string };
}
