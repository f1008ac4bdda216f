/** `astray`: the tube went elsewhere; which single mistake explains it, and what to change. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Choice, type Problem } from '../../ground/problem.js';
import { resolveTarget, targetProblemMessage, type Target } from '../../catalogue/index.js';
import {
  POSITION_SIGMA_DEG,
  type AlignmentStar,
  type Circumstances,
  type Observation,
  type PointedTarget,
} from '../../pointing/miss/astray-types.js';
import { landedOfDate, shownHorizontal } from '../../pointing/miss/controller-belief.js';
import { explainMiss, type Diagnosis, type Explanation } from '../../pointing/miss/explain-miss.js';
import { magneticNorth } from '../../pointing/pole/magnetic-north.js';
import { nextObservation } from '../../pointing/miss/next-observation.js';
import { reply, type Json, type Outcome } from '../../reply/reply.js';
import { compassWord, degrees, duration, hoursMinutesSeconds, isoUtc, listed, rounded } from '../../reply/wording.js';
import { precessionNutationAt } from '../../sky/earth.js';
import {
  equatorialFromVector,
  horizonFrame,
  multiply,
  placeOf,
  positionAngleDeg,
  separationDeg,
  siderealTimes,
  wrapHours12,
} from '../../sky/index.js';
import type { Equatorial, Horizontal, Observer, UtcMs } from '../../sky/types.js';
import { StoreError } from '../../store/store.js';
import { CAUSE_TITLES, correctionFor, nextWords, type WordContext } from './astray-words.js';
import { pointedAt, readAltAz, readLanding, readLst } from './astray-observations.js';
import { brightNamedStars } from '../../catalogue/bright-stars.js';
import { defineCommand, number, optional, text, type Asker } from '../core/command.js';
import type { Deps } from '../core/deps.js';
import { mountFor, mountOption } from '../asking/mount-for.js';
import { audienceOf, targetAtSite, timeFor } from '../asking/question-parts.js';
import { siteClock } from '../../times/site-clock.js';
import { sunWarning } from '../asking/sun-warning.js';

const CAUSES_SAID = 3;
const CAUSES_LISTED = 8;
const MOST_ALSO = 6;
/** Beyond this nobody is sent back to the mount for another reading. */
const NEAR_CERTAIN = 0.98;

interface Seen {
  readonly observations: readonly Observation[];
  readonly notes: readonly string[];
}

const ALSO_HINT =
  'Write it as also:"Capella = 12 degrees east of it; Deneb = 41,135": a target, =, and where the tube landed.';

/** Further landings: "Capella = 12 degrees east of it; Deneb = 41,135". */
const readAlso = (deps: Deps, also: string, observer: Observer, utcMs: UtcMs): Seen | Problem => {
  const parts = also
    .split(';')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (parts.length > MOST_ALSO)
    return problem('bad-also', `also: has ${parts.length} landings; at most ${MOST_ALSO} are read.`);
  const observations: Observation[] = [];
  const notes: string[] = [];
  for (const part of parts) {
    const at = part.indexOf('=');
    if (at < 1) return problem('bad-also', `also: "${tidy(part, 30)}" has no target and "=". ${ALSO_HINT}`);
    const found = resolveTarget(deps.catalogue, part.slice(0, at).trim());
    if (!found.ok) return problem(found.problem, `also: ${targetProblemMessage(found)}`);
    const target = pointedAt(found.target.name, found.target.body, observer, utcMs);
    const landing = readLanding(deps, part.slice(at + 1), target, found.target.body, observer, utcMs);
    if (isProblem(landing)) return landing;
    observations.push({ kind: 'landed', target, ofDate: landing.ofDate, sigmaDeg: landing.sigmaDeg });
    if (landing.note !== undefined) notes.push(landing.note);
  }
  return { observations, notes };
};

interface SeenTexts {
  readonly landed?: string | undefined;
  readonly shown?: string | undefined;
  readonly lst?: string | undefined;
  readonly also?: string | undefined;
  readonly within?: number | undefined;
}

const readSeen = (
  deps: Deps,
  texts: SeenTexts,
  target: PointedTarget,
  body: Target['body'],
  observer: Observer,
  utcMs: UtcMs,
): Seen | Problem => {
  const observations: Observation[] = [];
  const notes: string[] = [];
  if (texts.lst !== undefined) {
    const lst = readLst(texts.lst);
    if (isProblem(lst)) return lst;
    observations.push({ kind: 'lst', lstHours: lst.hours, sigmaS: lst.sigmaS });
  }
  if (texts.shown !== undefined) {
    const at = readAltAz('shown', texts.shown);
    if (at === null)
      return problem(
        'bad-shown',
        `shown: "${tidy(texts.shown, 30)}" is not an altitude and an azimuth. Give both in degrees, altitude first, as the display shows them: shown:41,135`,
      );
    if (isProblem(at)) return at;
    observations.push({ kind: 'shown', target, at, sigmaDeg: POSITION_SIGMA_DEG });
  }
  if (texts.landed !== undefined) {
    const landing = readLanding(deps, texts.landed, target, body, observer, utcMs);
    if (isProblem(landing)) return landing;
    observations.push({ kind: 'landed', target, ofDate: landing.ofDate, sigmaDeg: texts.within ?? landing.sigmaDeg });
    if (landing.note !== undefined) notes.push(landing.note);
  }
  if (texts.also !== undefined) {
    const also = readAlso(deps, texts.also, observer, utcMs);
    if (isProblem(also)) return also;
    observations.push(...also.observations);
    notes.push(...also.notes);
  }
  return observations.length > 0
    ? { observations, notes: [...new Set(notes)] }
    : problem(
        'no-observation',
        'Say what you saw: landed: where the tube really went (a star, 41,135 as altitude and azimuth, or "15 degrees west of it"), shown: the altitude and azimuth on the display, or lst: the sidereal time on it.',
      );
};

/** To the aberration (20″), which is nothing to a miss. */
const alignmentStars = (deps: Deps, observer: Observer, utcMs: UtcMs): AlignmentStar[] => {
  const frame = horizonFrame(observer, utcMs);
  const toDate = precessionNutationAt(utcMs);
  return brightNamedStars(deps.catalogue).map(({ name, magnitude, body }) => ({
    name,
    magnitude,
    ofDate: equatorialFromVector(multiply(toDate, frame.directionOf(body))),
  }));
};

const percent = (probability: number): string =>
  probability > 0.995 ? 'over 99 %' : probability < 0.01 ? 'under 1 %' : `${Math.round(probability * 100)} %`;

const summaryOf = ({ causes, noMistakeProbability, unexplainedProbability }: Diagnosis, correction: string): string => {
  const [first, second] = causes as [Explanation, Explanation];
  if (noMistakeProbability > first.probability && noMistakeProbability >= unexplainedProbability) {
    return 'No miss to speak of: what you saw is as near to right as it can be read. Centre the target by hand and carry on.';
  }
  if (unexplainedProbability > first.probability)
    return 'None of the mistakes I know explains what you saw. Look for a loose clutch or a slipping gear, and check what you read off.';
  const lead = first.probability > 0.8 ? 'Most likely' : first.probability > 0.5 ? 'Probably' : 'Perhaps';
  const rival = first.probability < 0.5 ? ` But "${CAUSE_TITLES[second.id]}" is nearly as likely.` : '';
  return `${lead} ${CAUSE_TITLES[first.id]} (${percent(first.probability)}). ${correction}${rival}`;
};

const missText = (from: Equatorial, to: Equatorial): string =>
  `${degrees(separationDeg(from, to), 1)} ${compassWord(positionAngleDeg(from, to))}`;
const altAzText = ({ altitudeDeg, azimuthDeg }: Horizontal): string =>
  `${degrees(altitudeDeg)}, ${Math.round(azimuthDeg) % 360}°`;

/** What a cause predicts beside what was seen: "sidereal time 23h 19m 25s (seen 23h 19m 40s), landing 12.2° east (seen 15.0° east)". */
const predictedBesideSeen = (
  { belief }: Explanation,
  circumstances: Circumstances,
  observations: readonly Observation[],
): string =>
  listed(
    observations.map((seen) => {
      switch (seen.kind) {
        case 'lst':
          return `sidereal time ${hoursMinutesSeconds(belief.lstHours)} (seen ${hoursMinutesSeconds(seen.lstHours)})`;
        case 'shown':
          return `display ${altAzText(shownHorizontal(belief, seen.target))} (seen ${altAzText(seen.at)})`;
        case 'landed':
          return `landing ${missText(seen.target.ofDate, landedOfDate(circumstances, belief, seen.target))} of ${seen.target.name} (seen ${missText(seen.target.ofDate, seen.ofDate)})`;
      }
    }),
  );

const causeFact = (
  cause: Explanation,
  context: WordContext,
  observations: readonly Observation[],
  isFirst: boolean,
): { label: string; value: string } => ({
  label: `${CAUSE_TITLES[cause.id]}, ${percent(cause.probability)}`,
  value: isFirst
    ? `predicts ${predictedBesideSeen(cause, context.circumstances, observations)}; leaves ${degrees(cause.residualDeg, 1)} unexplained.`
    : `leaves ${degrees(cause.residualDeg, 1)} unexplained. ${correctionFor(cause, context)}`,
});

const predictedData = ({ belief }: Explanation, circumstances: Circumstances, target: PointedTarget): Json => {
  const shown = shownHorizontal(belief, target);
  const landed = landedOfDate(circumstances, belief, target);
  return {
    lstHours: rounded(belief.lstHours, 5),
    shown: { altitudeDeg: rounded(shown.altitudeDeg, 3), azimuthDeg: rounded(shown.azimuthDeg, 3) },
    landedOfDate: { raHours: rounded(landed.raHours, 5), decDeg: rounded(landed.decDeg, 4) },
  };
};

/** Buttons that take the finding back to a triage walk under way. */
const triageChoices = async (deps: Deps, asker: Asker, causes: readonly Explanation[]): Promise<readonly Choice[]> => {
  try {
    const walk = await deps.store.walks.active(asker.clubId, asker.memberId);
    return walk === null
      ? []
      : causes
          .filter(({ probability }) => probability > 0.02)
          .slice(0, CAUSES_SAID)
          .map(({ id }, i) => ({
            label: `Back to the walk with: ${CAUSE_TITLES[id]}`,
            run: `triage walk:${walk.id} answer:found.${id}`,
            preferred: i === 0,
          }));
  } catch (error) {
    if (error instanceof StoreError) return [];
    throw error;
  }
};

/** What the observations say without any model: the miss on the sky, or the display's error. */
const missOf = (
  target: PointedTarget,
  observations: readonly Observation[],
): { readonly missDeg: number; readonly towards: string } | null => {
  const landed = observations.find((observation) => observation.kind === 'landed' && observation.target === target);
  return landed === undefined || landed.kind !== 'landed'
    ? null
    : {
        missDeg: separationDeg(target.ofDate, landed.ofDate),
        towards: compassWord(positionAngleDeg(target.ofDate, landed.ofDate)),
      };
};

const lstFact = (
  observations: readonly Observation[],
  observer: Observer,
  utcMs: UtcMs,
): { label: string; value: string }[] =>
  observations.flatMap((observation) => {
    if (observation.kind !== 'lst') return [];
    const hours = wrapHours12(observation.lstHours - siderealTimes(utcMs, observer.longitudeDeg).lastHours);
    return [
      {
        label: 'Sidereal time',
        value:
          Math.abs(hours) < observation.sigmaS / 1200
            ? 'right'
            : `${duration(Math.abs(hours) * MS_PER_HOUR)} ${hours > 0 ? 'ahead' : 'behind'}`,
      },
    ];
  });

export const astray = defineCommand({
  name: 'astray',
  summary: 'It went to the wrong place: which mistake explains the miss?',
  options: {
    target: text('What you sent it to: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    landed: optional(
      text('Where the tube really went: a star, coordinates, ALT,AZ, or "15 degrees west of it"', {
        complete: 'target',
      }),
    ),
    shown: optional(text('The altitude and azimuth the controller shows for the target, as ALT,AZ', { maxLength: 40 })),
    lst: optional(text('The sidereal time the controller shows, such as 05:12:33', { maxLength: 20 })),
    at: optional(text('When: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    mount: mountOption,
    aligned: optional(
      text('The star you aligned on last, if any; leave out if you only started from home', { complete: 'target' }),
    ),
    also: optional(
      text('More targets and where they landed: "Capella = 12 degrees east of it; Deneb = 41,135"', { maxLength: 300 }),
    ),
    within: optional(number('How sure the landing is, in degrees (0.5 when not said)', { min: 0.05, max: 20 })),
  },
  examples: [
    'astray Mirach landed:"about 15 degrees east of it" lst:23:19:40 at:2026-11-25T20:00Z site:52.71,0.12',
    'astray M 36 landed:"7 degrees east of it" aligned:Capella mount:fork site:"Cork, Ireland"',
  ],
  run: async (deps, { options, asker, nowUtcMs }): Promise<Outcome> => {
    const asked = await targetAtSite(deps, asker, 'astray', options.target, options.site, {
      landed: options.landed,
      shown: options.shown,
      lst: options.lst,
      at: options.at,
    });
    if (isProblem(asked)) return asked;
    const { target: wanted, where } = asked;
    const { observer, zone } = where.site;
    const time = timeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;
    const { utcMs } = time;
    const target = pointedAt(wanted.name, wanted.body, observer, utcMs);
    const seen = readSeen(deps, options, target, wanted.body, observer, utcMs);
    if (isProblem(seen)) return seen;

    const stars = alignmentStars(deps, observer, utcMs);
    let alignedOn: AlignmentStar | null = null;
    if (options.aligned !== undefined) {
      const found = resolveTarget(deps.catalogue, options.aligned);
      if (!found.ok) return problem(found.problem, `aligned: ${targetProblemMessage(found)}`);
      alignedOn = {
        name: found.target.name,
        magnitude: found.target.magnitude ?? 0,
        ofDate: placeOf(found.target.body, observer, utcMs).ofDate,
      };
    }
    const clock = siteClock(zone, utcMs);
    const circumstances: Circumstances = {
      observer,
      utcMs,
      mount: await mountFor(deps, asker, options.mount),
      clock,
      stars,
      alignedOn,
    };
    const diagnosis = explainMiss(circumstances, target, seen.observations);
    const context: WordContext = {
      circumstances,
      clock,
      zone,
      target,
      magneticDeclinationDeg: magneticNorth(observer, utcMs)?.declinationDeg ?? null,
    };

    const [first, second] = diagnosis.causes as [Explanation, Explanation];
    const next = nextObservation(circumstances, target, seen.observations, first, second);
    const nextText =
      next === null
        ? `Nothing I can ask for tells "${CAUSE_TITLES[first.id]}" from "${CAUSE_TITLES[second.id]}"; check both.`
        : nextWords(next.observation, first, second, circumstances);
    const miss = missOf(target, seen.observations);
    const isRight =
      diagnosis.noMistakeProbability > first.probability &&
      diagnosis.noMistakeProbability >= diagnosis.unexplainedProbability;
    const isFound = first.probability > Math.max(diagnosis.noMistakeProbability, diagnosis.unexplainedProbability);
    const warning = sunWarning(deps, wanted, observer, utcMs, zone);
    const said = diagnosis.causes
      .slice(0, CAUSES_SAID)
      .filter(({ probability }, i) => isFound && (i === 0 || probability > 0.02));
    return reply({
      title:
        miss === null || isRight
          ? `Astray: ${wanted.name}`
          : `Astray: ${degrees(miss.missDeg, 1)} ${miss.towards} of ${wanted.name}`,
      level: warning.level === 'clear' ? 'info' : warning.level,
      summary: summaryOf(diagnosis, correctionFor(first, context)),
      facts: [
        ...lstFact(seen.observations, observer, utcMs),
        ...said.map((cause, i) => causeFact(cause, context, seen.observations, i === 0)),
      ],
      notes: [
        ...(isRight || first.probability > NEAR_CERTAIN
          ? []
          : isFound
            ? [`To be surer: ${nextText}`]
            : [
                'Then read off everything again, on a second target too, and ask again with also:"STAR = where it landed".',
              ]),
        ...seen.notes,
        ...time.notes,
        ...asked.notes,
      ],
      cautions: warning.cautions,
      choices: await triageChoices(deps, asker, isFound ? diagnosis.causes : []),
      audience: audienceOf(where),
      data: {
        utc: isoUtc(utcMs),
        mount: circumstances.mount,
        missDeg: miss === null ? null : rounded(miss.missDeg, 3),
        missDirection: miss?.towards ?? null,
        causes: diagnosis.causes
          .filter(({ probability }, i) => i < CAUSES_SAID || (i < CAUSES_LISTED && probability >= 0.0005))
          .map((cause): Json => ({
            id: cause.id,
            probability: rounded(cause.probability, 4),
            predictedMissDeg: rounded(cause.predictedMissDeg, 3),
            residualDeg: rounded(cause.residualDeg, 3),
            correction: correctionFor(cause, context),
            predicted: predictedData(cause, circumstances, target),
          })),
        noMistakeProbability: rounded(diagnosis.noMistakeProbability, 4),
        unexplainedProbability: rounded(diagnosis.unexplainedProbability, 4),
        nextObservation:
          next === null
            ? null
            : {
                kind: next.observation.kind,
                target: 'target' in next.observation ? next.observation.target.name : null,
                text: nextText,
              },
      },
    });
  },
});
