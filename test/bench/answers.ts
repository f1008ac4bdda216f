/** How long computed answers, completion, charts and sweeps take, warm, over many sites, dates and targets. */
import { isProblem } from '../../bot/ground/problem.js';
import { completeTargets } from '../../bot/catalogue/index.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { CONSOLE_ASKER } from '../../bot/platforms/console/session.js';
import { type Chart } from '../../bot/reply/reply.js';
import { renderChart } from '../../bot/reply/render-chart.js';
import { spread, timed, type BenchRow } from './measure.js';

const NOW_UTC_MS = Date.UTC(2026, 10, 25, 18);

/** Deterministic, and spread over the whole range. */
const site = (run: number): string =>
  `${(((run * 37) % 1300) / 10 - 65).toFixed(2)},${(((run * 61) % 3580) / 10 - 179).toFixed(2)}`;
const night = (run: number): string => new Date(NOW_UTC_MS + (run % 360) * 86_400_000).toISOString().slice(0, 10);

/** `skip` is told of commands that are not there. */
export const answerRows = async (deps: Deps, skip: (why: string) => void): Promise<BenchRow[]> => {
  const ask = async (line: string): Promise<Chart | undefined> => {
    const outcome = await runLine(deps, line, {
      asker: CONSOLE_ASKER,
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error as Error;
      },
    });
    if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
    return outcome.chart;
  };
  const { catalogue } = deps;
  const targetName = (run: number): string =>
    (run % 8 === 0
      ? catalogue.solarSystem[1 + ((run / 8) % 8)]
      : catalogue.targetAt((run * 7919) % catalogue.sweep.length)
    )?.name ?? 'Moon';
  const rows: BenchRow[] = [];
  const answers = async (name: string, count: number, line: (run: number) => string, target: number): Promise<void> => {
    const command = line(0).split(' ')[0];
    if (!deps.commands.some((known) => known.name === command)) return skip(`${name}: there is no command ${command}`);
    rows.push(spread(name, 'ms', await timed(count, (run) => ask(line(run))), target));
  };
  await answers(
    'answer: altitude',
    1000,
    (run) => `altitude "${targetName(run)}" site:${site(run)} at:${night(run)}T21:00Z`,
    10,
  );
  await answers(
    "answer: up, with the chart's data",
    1000,
    (run) => `up "${targetName(run)}" site:${site(run)} on:${night(run)}`,
    10,
  );
  await answers('answer: dark', 300, (run) => `dark on:${night(run)} site:${site(run)}`, 10);
  await answers('answer: sidereal', 300, (run) => `sidereal site:${site(run)}`, 10);
  await answers(
    'answer: sun, with the way there',
    300,
    (run) => `sun "${targetName(run)}" site:${site(run)} at:${night(run)}T12:00Z`,
    10,
  );
  await answers(
    'answer: astray',
    200,
    (run) =>
      `astray Vega site:52.71,0.12 at:${night(run)}T21:00Z landed:${30 + (run % 30)},${(run * 13) % 360} lst:0${run % 9}:15:00`,
    10,
  );
  await answers('answer: alignment', 200, (run) => `alignment site:${site(run)} at:${night(run)}T21:00Z`, 10);
  await answers(
    'tonight over every catalogued object',
    200,
    (run) => `tonight site:${site(run)} on:${night(run)} brighter:20 above:0`,
    50,
  );
  const partials = [
    '',
    'n',
    'ng',
    'ngc 7',
    'NGC 73',
    'm',
    'm 1',
    'and',
    'alph',
    'α',
    'bet',
    'whirl',
    'betelg',
    'hip 9',
    'c 1',
    'zz',
    'andromida',
    '61 c',
    'the',
    'ic 4',
  ];
  rows.push(
    spread(
      'completion over the whole catalogue',
      'ms',
      await timed(2000, (run) => completeTargets(catalogue, partials[run % partials.length] ?? '', 25)),
      3,
    ),
  );
  const charts = (
    await Promise.all(
      Array.from({ length: 12 }, (_, run) => ask(`up "${targetName(run * 5 + 1)}" site:${site(run)} on:${night(run)}`)),
    )
  ).filter((chart): chart is Chart => chart !== undefined);
  rows.push(
    spread('chart to PNG', 'ms', await timed(120, (run) => renderChart(charts[run % charts.length] as Chart)), 60),
  );
  return rows;
};
