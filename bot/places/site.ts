/** A site: where someone observes from, with the time zone its clocks keep; made by resolveSite, used by every command. */
import type { Observer } from '../sky/types.js';

export interface Site {
  /** As shown to a member: "Calgary, Alberta, CA", "51.05° N, 114.07° W", or a saved site's own name. */
  readonly name: string;
  readonly observer: Observer;
  /** IANA time zone, such as "America/Edmonton". */
  readonly zone: string;
  readonly source: 'coordinates' | 'place' | 'saved' | 'club';
  /** Something the member should know about how the site was chosen ("Took Paris, FR; the next largest is Paris, Texas, US."). */
  readonly note?: string;
}
