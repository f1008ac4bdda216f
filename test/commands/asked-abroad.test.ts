/** The plainest questions in other languages come to the same commands. Written before the words were; from memory, no source. */
import { beforeAll, describe, expect, it } from 'vitest';
import { askedAbroad } from '../../bot/commands/asking/asked-abroad.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { shippedCatalogue } from '../shipped.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
  await answer(deps, 'site add garden 53.8,-1.55', NOW);
});

describe('asked in another language', () => {
  it.each([
    ['was kann ich heute nacht sehen', /^Worth seeing/u],
    ['was kann ich heute sehen', /^Worth seeing/u],
    ['was ist heute abend am himmel', /^Worth seeing/u],
    ['was sieht man heute nacht mit fernglas', /^Worth seeing/u],
    ['wann geht jupiter auf', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wann geht der mond unter', /Moon/u],
    ['ist saturn heute zu sehen', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wo steht die venus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wie hoch steht vega um 22 uhr', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wann wird es dunkel', /^The dark of/u],
    ['wann ist neumond', /Moon/u],
    ['ist m31 heute sichtbar', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wann ist die nächste mondfinsternis', /eclipses/u],
    ['wann geht die sonne unter', /^The dark of/u],
    ['que puedo ver esta noche', /^Worth seeing/u],
    ['que puedo ver esta noche con un telescopio de 8 pulgadas', /^Worth seeing/u],
    ['qué se ve hoy en el cielo', /^Worth seeing/u],
    ['a que hora sale jupiter', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['cuando se pone la luna', /Moon/u],
    ['se ve saturno esta noche', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['donde esta venus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['a que altura esta vega', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['cuando oscurece', /^The dark of/u],
    ['cuando es luna nueva', /Moon/u],
    ['cuando es el próximo eclipse de luna', /eclipses/u],
    ['a que hora se pone el sol', /^The dark of/u],
    ['que voir ce soir', /^Worth seeing/u],
    ['que peut-on voir cette nuit', /^Worth seeing/u],
    ["qu'est-ce que je peux voir ce soir avec des jumelles", /^Worth seeing/u],
    ['quand se lève jupiter', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['à quelle heure se couche la lune', /Moon/u],
    ['saturne est visible ce soir ?', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['où est vénus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['à quelle hauteur est véga', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['quand fait-il nuit', /^The dark of/u],
    ['quand est la nouvelle lune', /Moon/u],
    ['prochaine éclipse de lune', /eclipses/u],
    ['cosa posso vedere stasera', /^Worth seeing/u],
    ['cosa si vede stanotte', /^Worth seeing/u],
    ['cosa posso vedere con il binocolo', /^Worth seeing/u],
    ['quando sorge giove', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['quando tramonta la luna', /Moon/u],
    ['saturno è visibile stasera', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ["dov'è venere", /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['quando fa buio', /^The dark of/u],
    ['quando è luna nuova', /Moon/u],
    ['prossima eclissi di luna', /eclipses/u],
    ['wat kan ik vanavond zien', /^Worth seeing/u],
    ['wat is er vannacht te zien', /^Worth seeing/u],
    ['wanneer komt jupiter op', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['hoe laat gaat de maan onder', /Moon/u],
    ['is saturnus te zien vanavond', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['waar staat venus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['hoe hoog staat wega', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wanneer is het donker', /^The dark of/u],
    ['wanneer is het nieuwe maan', /Moon/u],
    ['co mogę zobaczyć dziś w nocy', /^Worth seeing/u],
    ['co widać dzisiaj wieczorem', /^Worth seeing/u],
    ['co moge zobaczyc dzis przez lornetke', /^Worth seeing/u],
    ['kiedy wschodzi jowisz', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['o której zachodzi księżyc', /Moon/u],
    ['czy saturn jest dziś widoczny', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['gdzie jest wenus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['kiedy robi się ciemno', /^The dark of/u],
    ['kiedy jest nów', /Moon/u],
    ['o que posso ver hoje à noite', /^Worth seeing/u],
    ['o que dá para ver esta noite', /^Worth seeing/u],
    ['o que posso ver com binóculos', /^Worth seeing/u],
    ['quando nasce júpiter', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['que horas a lua se põe', /Moon/u],
    ['saturno está visível hoje', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['onde está vênus', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['quando escurece', /^The dark of/u],
    ['quando é lua nova', /Moon/u],
    ['próximo eclipse lunar', /eclipses/u],
    ['wie gross ist jupiter', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['kann man die plejaden sehen', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['se puede ver orion hoy', /^Rigel/u],
    ['kan ik de ring van saturnus zien', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
    ['wo ist der polarstern', /^(?:Jupiter|Saturn|Venus|Vega|M |Moon|Polaris|Rigel)/u],
  ])('%s', async (line, title) => {
    expect((await answer(deps, line, NOW, { ...ODALYS, channelId: line })).title).toMatch(title);
  });

  it('the hour, the night and the telescope are taken along', () => {
    const read = (line: string) => askedAbroad(line, shippedCatalogue());
    expect(read('wie hoch steht vega um 22 uhr')).toBe('how high is vega at 22:00');
    expect(read('que puedo ver esta noche con un telescopio de 8 pulgadas')).toBe('what can i see tonight with 8 inch');
    expect(read('que voir demain soir avec des jumelles')).toBe('what can i see tomorrow night with binoculars');
    expect(read('kann man heute nacht die plejaden sehen')).toBe('can i see pleiades tonight');
    expect(read('wo ist der bahnhof')).toBe(null);
  });

  it('a walk that waits leaves it alone', async () => {
    const asker = { ...ODALYS, channelId: 'walks' };
    await answer(deps, 'triage do:new goto missed by 15 degrees east', NOW, asker);
    const outcome = await ask(deps, 'wann geht jupiter auf', NOW, asker);
    expect(JSON.stringify(outcome)).toContain('Your walk still waits');
  });
});
