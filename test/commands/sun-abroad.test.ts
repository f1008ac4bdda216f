/**
 * The Sun by its names in ten languages: what one asks of looking or pointing at it begins with the same caution as in English. Names:
 * dictionaries, from memory. The sentences are those of sun-harm.txt and sun-looks.txt with the name put in; common practice, no source.
 */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { withBodiesInEnglish } from '../../bot/commands/asking/bodies-abroad.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const BY_DAY = Date.UTC(2026, 10, 26, 9, 23);
const NAMES = [
  'Sonne',
  'soleil',
  'sole',
  'sol',
  'zon',
  'słońce',
  'slonce',
  'solen',
  'солнце',
  '太陽',
  'il sole',
  'le soleil',
];
const THE_SUN = /\b(?:the )?sun\b/giu;
const OF_SUNDAY = /jupiter on sun/u;

const linesOf = (file: string): readonly string[] =>
  readFileSync(new URL(file, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !/^[#~]/u.test(line) && !OF_SUNDAY.test(line))
    .map((line) => line.replace(/ => .*$/u, ''))
    .filter((line) => line.search(THE_SUN) >= 0);

const lines = [...linesOf('sun-harm.txt'), ...linesOf('sun-looks.txt')];
const shown = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.summary);

let deps: Deps;
const asked = async (line: string): Promise<string> => {
  const asker = { ...ODALYS, memberId: `console:${line}`, channelId: line };
  await answer(deps, 'site add garden 53.8,-1.55', BY_DAY, asker);
  return shown(await ask(deps, line, BY_DAY, asker));
};
beforeAll(async () => {
  deps = await realDeps();
});

describe('the Sun by another name', () => {
  it.each(lines.map((line, i) => [line, NAMES[i % NAMES.length] ?? ''] as const))(
    '“%s” is answered alike of %s',
    async (line, name) => {
      const put = line.replace(THE_SUN, (sun) => (/^the /iu.test(sun) && !name.includes(' ') ? `the ${name}` : name));
      expect(await asked(put)).toBe(await asked(line));
    },
  );

  it.each([
    'kann ich die Sonne mit dem Teleskop ansehen',
    'puis-je pointer le soleil avec ma lunette',
    'posso puntare il sole',
    'puedo apuntar al sol sin filtro',
    'kan ik op de zon richten',
    'czy mogę patrzeć na słońce przez teleskop',
    'posso olhar para o sol com o telescopio',
    'må jeg se på solen gennem teleskopet',
    'можно ли смотреть на солнце в телескоп',
    '望遠鏡で太陽を見てもいいですか',
    '可以用望远镜看太阳吗',
    'goto sol',
    'slew to soleil',
  ])('“%s” begins with the caution', async (line) => {
    expect(await asked(line)).toMatch(/^No, unless a proper full-aperture solar filter/u);
  });
});

describe('a name of another language', () => {
  it.each([
    ['when is new mond', 'when is new moon'],
    ['wann ist Vollmond', 'wann ist Full moon'],
    ['where is la lune', 'where is the moon'],
    ['when does merkur set', 'when does mercury set'],
    ['can i point al sol', 'can i point at the sun'],
    ['is Giove up tonight', 'is Jupiter up tonight'],
    // Not the body: an English word, a coast, a part of a word, an option.
    ['the sole reason is my mount', 'the only reason is my mount'],
    ['dark at the costa del sol tonight', 'dark at the costa del sol tonight'],
    ['a lua script for the mount', 'a lua script for the mount'],
    ['is solar noon soon', 'is solar noon soon'],
    ['where is mars site:sol', 'where is mars site:sol'],
  ])('“%s” is “%s”', (line, english) => {
    expect(withBodiesInEnglish(line)).toBe(english);
  });

  it("stays as it is in a site's name", () => {
    expect(withBodiesInEnglish('dark at luna hill', ['Luna Hill'])).toBe('dark at luna hill');
  });
});
