/** What members type at night on a phone, and of the Sun by day: the command that ran, and what the answer says it understood. Common practice, no source. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allCommands } from '../../bot/commands/all-commands.js';
import type { Asker, Command } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

// Wednesday 25 November 2026, in UTC.
const EVENING = Date.UTC(2026, 10, 25, 20, 41);
const NOON = Date.UTC(2026, 10, 25, 12, 10);
const NEXT_MORNING = Date.UTC(2026, 10, 26, 9, 23);

let ran = '';
const watched = (command: Command): Command => ({
  ...command,
  run: (known, request) => {
    ran = command.name;
    return command.run(known, request);
  },
});
const deps = await realDeps({ commands: allCommands.map(watched) });

/** Each asks alone, with sites of their own: what one keeps is nothing to the next. */
const askAlone = async (sentence: string, nowUtcMs: number): Promise<Outcome> => {
  const own: Asker = { ...ODALYS, memberId: `console:${sentence}${nowUtcMs}`, channelId: `console ${sentence}` };
  await answer(deps, 'site add name:garden position:52.63,1.30', nowUtcMs, own);
  await answer(deps, 'site add name:"fen hut" position:52.71,0.12', nowUtcMs, own);
  await answer(deps, 'site use garden', nowUtcMs, own);
  ran = '';
  return ask(deps, sentence, nowUtcMs, own);
};

const sentencesOf = (file: string) =>
  readFileSync(new URL(file, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.includes(' => ') && !/^[#~]/u.test(line))
    .map((line) => {
      const [sentence = '', meant = ''] = line.split(' => ');
      const [commands = '', words = ''] = meant.split(' | ');
      return { sentence, commands: commands.split(' '), words: words.split('; ').filter((word) => word !== '') };
    });

/** The chart and its points would hold any hour. */
const saidIn = (outcome: Outcome): string => {
  if (isProblem(outcome)) return JSON.stringify([outcome.message, outcome.choices]);
  const { title, summary, facts, notes, cautions, choices } = outcome;
  return JSON.stringify([title, summary, facts, notes, cautions, choices]);
};

describe.each([
  ['typed at night on a phone', 'on-a-phone.txt', EVENING],
  ['typed of the Sun by day', 'sun-sentences.txt', NOON],
  ['typed in the morning of the way from one to another', 'sun-ways.txt', NEXT_MORNING],
  ['asked of looking at the Sun', 'sun-looks.txt', NEXT_MORNING],
  ['typed by day of ways, hours and the Sun, in many styles', 'sun-day.txt', NEXT_MORNING],
  ['typed in the evening of what may come by day', 'sun-evening.txt', EVENING],
])('%s', (_, file, nowUtcMs) => {
  it.each(sentencesOf(file))('$sentence', async ({ sentence, commands, words }) => {
    const outcome = await askAlone(sentence, nowUtcMs);
    expect(commands, saidIn(outcome)).toContain(isProblem(outcome) ? '?' : ran);
    const said = saidIn(outcome).toLowerCase();
    for (const word of words)
      if (word.startsWith('!')) expect(said).not.toContain(word.slice(1).toLowerCase());
      else expect(said).toContain(word.toLowerCase());
  });
});
