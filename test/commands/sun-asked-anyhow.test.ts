/** Of the Sun asked in other words and other languages, before sunrise and after it: a No or a warning first, with no site known as well. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 18, 25);
const COLOGNE = 'site add garden 50.94,6.96';

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const alone = (channelId: string) => ({ ...ODALYS, memberId: `console:${channelId}`, channelId });

const first = async (line: string, site: string | null): Promise<string> => {
  const asker = alone(`${site ?? 'none'} ${line}`);
  if (site !== null) await answer(deps, site, EVENING, asker);
  const outcome = await ask(deps, line, EVENING, asker);
  return isProblem(outcome) ? outcome.message : [outcome.summary, ...outcome.notes].join(' ');
};

/** What each begins with in knowledge/cautions.yaml. */
describe.each([[null], [COLOGNE]])('with site %s', (site) => {
  it.each([
    ['the sun goes down in 10 minutes, can we search mercury now with the binocular', /^No, never sweep/u],
    ['sun is about to set, looking for venus with 10x50', /^No, never sweep/u],
    ['the sun goes down now, where do I look for Mercury with my child', /^No, never sweep/u],
    ['Sonne geht gleich unter, darf ich Merkur mit dem Fernglas suchen?', /^No, never sweep/u],
    ['we look for Venus after sunrise with binoculars, ok?', /^No, never sweep/u],
    ['once the sun is up can i find mercury in my bins', /^No, never sweep/u],
    ['posso guardare il sole con gli occhiali da sole', /^No, unless/u],
    ['darf ich mit Sonnenbrille in die Sonne schauen', /^No, unless/u],
    ['posso olhar para o sol com óculos de sol', /^No, unless/u],
    ['mag ik met een zonnebril naar de zon kijken', /^No, unless/u],
    ['czy mogę patrzeć na słońce w okularach przeciwsłonecznych', /^No, unless/u],
    ['puedo mirar el sol un segundo', /^No, unless/u],
    ['podemos ver el sol con gafas de sol', /^No, unless/u],
    ['si può guardare il sole al tramonto', /^No, unless/u],
    ['mag je zonder bril in de zon kijken', /^No, unless/u],
    ['sun going down, mercury in the finder now?', /^No, never sweep/u],
    ['do i need eclipse specs when its total', /^Yes, before and after totality/u],
    ['still light out, sun just about gone, sweeping for mercury ok?', /^No, never sweep/u],
    ['can i search for venus at sunrise with bins', /^No, never sweep/u],
    ['and if i use a white card to project it', /^No, not as a first try/u],
    ['è sicuro guardare l’eclissi con il telefono', /^No, not without/u],
    ['what if i project it on paper', /^No, not as a first try/u],
    ['do we need glasses when it is total?', /^Yes, before and after totality/u],
    ['filters needed during totality', /^Yes, before and after totality.*During totality itself.*none is needed/u],
  ])('%s', async (line, told) => {
    expect(await first(line, site)).toMatch(told);
  });
});

describe('by day and before it', () => {
  it('tells what makes it safe before any Yes, at an hour of day', async () => {
    expect(await first('can i look at venus at 10am tomorrow with the 14 inch', COLOGNE)).toMatch(
      /^The Sun is up then, \d+° from it\. Never by hand/u,
    );
  });

  // Venus rises at 04:26 CET, the Sun at 08:09 (reckoned apart, low precision).
  it.each(['is it safe to look for venus before the sun comes up', 'sun nearly up can i look at venus thru the scope'])(
    'reads the morning: %s',
    async (line) => {
      expect(await first(line, COLOGNE)).toMatch(/04:2\d.*well before sunrise/u);
    },
  );

  it.each(['can i look at venus at 10am tomorrow', 'is it safe to look for venus before the sun comes up'])(
    'warns where no site is known: %s',
    async (line) => {
      expect(await first(line, null)).toMatch(/^By day keep the caps on/u);
    },
  );

  it.each([
    ['when is it safe to open the dome', /^The Sun sets next on .*16:3\d/u],
    ['when can i open the roof', /^The Sun sets next on .*16:3\d/u],
    ['can i uncap the scope at 8pm', /^Down: 3\d° below/u],
  ])('%s', async (line, told) => {
    expect(await first(line, COLOGNE)).toMatch(told);
    expect(await first(line, null)).toMatch(/^By day keep the caps on/u);
  });
});

describe('what only sounds like it', () => {
  it.each([
    'posso guardare Venere dopo il tramonto del sole',
    'can we search mercury with binoculars when the sun goes down',
    'can i see venus before sunrise in binoculars',
    'what can i see after the sun goes down',
    'a qué hora se pone el sol',
    'a qué hora puedo ver la puesta del sol',
    'dove posso vedere Saturno stasera',
    'is it still light out',
    'which stars can we see at sunrise',
    'do i need glasses at the eyepiece',
    'can i open the observatory door app on my phone',
    'wann geht die Sonne unter',
  ])('%s', async (line) => {
    expect(await first(line, COLOGNE)).not.toMatch(/^No, (?:unless|never|not)/u);
  });
});
