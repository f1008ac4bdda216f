/** `tonight`: what is well placed in the dark hours, ten at most, each with its reason. */
import { isProblem } from '../ground/problem.js';
import { nameWithAlias } from '../catalogue/index.js';
import { fittingChoices, reply, type Outcome } from '../reply/reply.js';
import { degrees, isoUtc, rounded } from '../reply/wording.js';
import { darkness, twilights } from '../sky/index.js';
import { formatClock, zoneName } from '../times/index.js';
import { choice, defineCommand, number, optional, text } from './core/command.js';
import { darkWords, twilightSpan } from './asking/night-words.js';
import { audienceOf, commandLine, siteAtNight, siteNotes } from './asking/question-parts.js';
import { PICK_KINDS, tonightPicks } from '../evening/tonight-picks.js';
import { LEAST_USEFUL_ALTITUDE_DEG } from './up.js';

const FAINTEST_BY_DEFAULT = 11;

export const tonight = defineCommand({
  name: 'tonight',
  summary: 'What is well placed in the dark hours? Ten at most, and why',
  options: {
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
    kind: optional(choice('Only one kind of target', PICK_KINDS)),
    brighter: optional(number('Faintest magnitude to list (usual: 11)', { min: -5, max: 20 })),
    above: optional(number('Least altitude in degrees (usual: 20)', { min: 0, max: 85 })),
  },
  bare: 'site',
  examples: ['tonight site:52.71,0.12', 'tonight kind:galaxy brighter:10 site:"Alice Springs"'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtNight(deps, request);
    if (isProblem(asked)) return asked;
    const { where, night } = asked;
    const { options } = request;
    const { observer, zone } = where.site;
    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const dark = darkness(observer, night.startUtcMs, night.endUtcMs);
    const brightWindow = twilightSpan(twilight.civil, night);
    const window = dark ?? twilightSpan(twilight.nautical, night) ?? brightWindow;
    const picks =
      window === null || brightWindow === null
        ? []
        : tonightPicks(deps.catalogue, {
            observer,
            night,
            window,
            brightWindow,
            kind: options.kind ?? 'any',
            brighter: options.brighter ?? FAINTEST_BY_DEFAULT,
            minimumAltitudeDeg: options.above ?? LEAST_USEFUL_ALTITUDE_DEG,
            horizon: where.horizon,
          });
    const first = picks[0];
    const summary =
      window === null
        ? `Nothing to list: ${darkWords(twilight, night, zone)}.`
        : first === undefined
          ? 'Nothing fits in the dark hours. Try a smaller above:, a larger brighter:, or another kind:.'
          : `${picks.length === 1 ? 'One target is' : `${picks.length} targets are`} well placed; ${first.target.name} first, at ${formatClock(first.bestUtcMs, zone)}, ${degrees(first.bestAltitudeDeg)} high.`;
    return reply({
      title: `Well placed, night of ${night.said}`,
      level: first === undefined ? 'info' : 'good',
      summary,
      facts: picks.map(({ target, bestUtcMs, bestAltitudeDeg, why }) => ({
        label: nameWithAlias(target),
        value: `${target.kindText}${target.magnitude === null ? '' : `, mag ${target.magnitude.toFixed(1).replace('-', '−')}`}; ${formatClock(bestUtcMs, zone)}, ${degrees(bestAltitudeDeg)}: ${why}`,
      })),
      notes: [
        `Dark: ${darkWords(twilight, night, zone)}. Times in ${zoneName(night.endUtcMs, zone)}.`,
        ...siteNotes(where),
      ],
      choices: fittingChoices(
        picks.map(({ target }) => ({
          label: `More on ${nameWithAlias(target)}`,
          run: commandLine('up', target.name, { site: options.site, on: options.on }),
        })),
      ),
      audience: audienceOf(where),
      data: {
        dark: dark === null ? null : { startUtc: isoUtc(dark.startUtcMs), endUtc: isoUtc(dark.endUtcMs) },
        picks: picks.map(({ target, bestUtcMs, bestAltitudeDeg, moonSeparationDeg, why }) => ({
          name: target.name,
          type: target.kindText,
          magnitude: target.magnitude === null ? null : rounded(target.magnitude, 2),
          bestUtc: isoUtc(bestUtcMs),
          bestAltitudeDeg: rounded(bestAltitudeDeg, 4),
          moonSeparationDeg: rounded(moonSeparationDeg, 4),
          why,
        })),
      },
    });
  },
});
