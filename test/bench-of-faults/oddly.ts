/** A fault as an oddity at one link, whose looks do not always show it. */
import type { Change } from './edit.js';
import { falls, type Oddity } from './world.js';

/** As an oddity, but the one look that shows it best fails to do so in some set-ups, and others show one thing or another. */
export const oddly =
  (
    name: string,
    link: Oddity['link'],
    shows: Oddity['shows'],
    { best, seen = {}, mixed = {}, inComputer = false }: Shown,
  ): Change =>
  (w) => ({
    ...w,
    oddity: {
      name,
      link,
      shows,
      seen: {
        ...seen,
        ...Object.fromEntries(
          Object.entries(mixed).map(([check, [often, else_]]) => [
            check,
            falls(w, `${name} ${check}`, 0.7) ? often : else_,
          ]),
        ),
        ...(falls(w, `${name} shows`, 0.88) ? best : {}),
      },
      inComputer,
      telling: '',
    },
  });

interface Shown {
  readonly best: Readonly<Record<string, string>>;
  readonly seen?: Readonly<Record<string, string>>;
  readonly mixed?: Readonly<Record<string, readonly [string, string]>>;
  readonly inComputer?: boolean;
}
