import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameWithAlias, resolveTarget, targetProblemMessage } from '../../bot/catalogue/index.js';
import { catalogue, found } from './loaded.js';

const idsOf = (result: ReturnType<typeof resolveTarget>): readonly string[] => {
  if (!isProblem(result)) return [result.target.id];
  return result.problem === 'ambiguous-target' ? result.candidates.map((c) => c.id) : [];
};

const candidates = (text: string): readonly string[] => {
  const result = resolveTarget(catalogue, text);
  if (!isProblem(result) || result.problem !== 'ambiguous-target') throw new Error(`"${text}" is not ambiguous`);
  return result.candidates.map((c) => c.name);
};

describe('a member may spell a target any way', () => {
  it.each([
    ['m 31', 'M 31'],
    ['M031', 'M 31'],
    ['messier 31', 'M 31'],
    ['MESSIER-31', 'M 31'],
    ['ngc224', 'M 31'],
    ['n.g.c. 224', 'M 31'],
    ['Ｍ３１', 'M 31'],
    ['  ngc   7331 ', 'NGC 7331'],
    ['NGC-07331', 'NGC 7331'],
    ['caldwell 30', 'NGC 7331'],
    ['C30', 'NGC 7331'],
    ['deer lick galaxy', 'NGC 7331'],
    ['Deer Lick', 'NGC 7331'],
    ['C9', 'C 9'],
    ['sh2-155', 'C 9'],
    ['Sharpless 155', 'C 9'],
    ['sh 2 155', 'C 9'],
    ['collinder 399', 'Cr 399'],
    ['the coathanger', 'Cr 399'],
    ['B33', 'Barnard 33'],
    ['barnard 33', 'Barnard 33'],
    ['ic2118', 'IC 2118'],
    ['NGC 1909', 'IC 2118'],
    ['ngc 2239', 'NGC 2244'],
    ['vega', 'Vega'],
    ['VEGA', 'Vega'],
    ['α Lyr', 'Vega'],
    ['α Lyrae', 'Vega'],
    ['αLyr', 'Vega'],
    ['alpha lyr', 'Vega'],
    ['Alpha Lyra', 'Vega'],
    ['alf Lyr', 'Vega'],
    ['3 Lyr', 'Vega'],
    ['3 alpha lyrae', 'Vega'],
    ['hip 91262', 'Vega'],
    ['HIP091262', 'Vega'],
    ['alpha bootis', 'Arcturus'],
    ['alpha Boötis', 'Arcturus'],
    ['α² Cap', 'Algedi'],
    ['alpha2 cap', 'Algedi'],
    ['alf02 Cap', 'Algedi'],
    ['ε¹ Lyr', 'ε¹ Lyr'],
    ['eps 1 lyrae', 'ε¹ Lyr'],
    ['61 cygni', '61 Cyg'],
    ['61Cyg', '61 Cyg'],
    ['beta canis majoris', 'Mirzam'],
    ['bet CMa', 'Mirzam'],
    ['P Cygni', 'P Cyg'],
    ['10 UMa', '10 UMa'],
    ['ksi Boo', 'ξ Boo'],
    ['σ Octantis', 'Polaris Australis'],
    ['omega centauri', 'NGC 5139'],
    ['ω Cen', 'NGC 5139'],
    ['47 Tuc', 'NGC 104'],
    ['47 tucanae', 'NGC 104'],
    ["Barnard's Star", "Barnard's Star"],
    ['Barnard’s star', "Barnard's Star"],
    ['the moon', 'Moon'],
    ['☽', 'Moon'],
    ['Luna', 'Moon'],
    ['planet Mars', 'Mars'],
    ['♃', 'Jupiter'],
    ['sun', 'Sun'],
    ['Mercury', 'Mercury'],
    ['Andromeda', 'M 31'],
    ['pleiades', 'M 45'],
    ['Seven Sisters', 'M 45'],
    ['hyades', 'C 41'],
    ['double cluster', 'C 14'],
    ['LMC', 'Large Magellanic Cloud'],
    ['ESO 056-115', 'Large Magellanic Cloud'],
    ['h 3945', 'h 3945'],
    ['HIP 35210', 'h 3945'],
    ['HD 209458', 'HD 209458'],
    ['3C 273', '3C 273'],
    ['Mel 15', 'IC 1805'],
    ['Arp 273', 'Arp 273'],
    ['arp316', 'NGC 3189'],
    ['Lynds 1622', 'LDN 1622'],
    ['van den Bergh 142', 'vdB 142'],
    ['Abell 2199', 'Abell 2199'],
    // A cluster of galaxies is what its number names, not its brightest member.
    ['Abell 2151', 'Abell 2151'],
    ['Hercules galaxy cluster', 'Abell 2151'],
    ['trapezium', 'Trapezium'],
    ['Winter Hexagon', 'Winter Hexagon'],
    ["Hind's crimson star", 'R Lep'],
    ['Polarstern', 'Polaris'],
    ['Kleine Magellansche Wolke', 'NGC 292'],
    ["cat's eye", 'NGC 6543'],
    ["Barnard's Loop", 'Sh2-276'],
    ['kembles cascade', 'Kemble 1'],
    ['melotte 20', 'Mel 20'],
    ['alpha persei', 'Mirfak'],
    ['Leo Triplet', 'M 66'],
    ['M 97 (Owl Nebula)', 'M 97'],
    ['NGC 7331 (Deer Lick Galaxy) · spiral galaxy in Pegasus', 'NGC 7331'],
    ['the star Altair', 'Altair'],
    ['galaxy NGC 891', 'NGC 891'],
    ['ngc 7331 galaxy', 'NGC 7331'],
  ])('%s is %s', (text, name) => {
    expect(found(text).name).toBe(name);
  });

  it.each([
    ['Andromida', 'M 31'],
    ['Betelguese', 'Betelgeuse'],
    ['Beetlejuice', null],
    ['Aldeberan', 'Aldebaran'],
    ['Fomalhuat', 'Fomalhaut'],
    ['Arcturis', 'Arcturus'],
    ['Wirlpool galaxy', 'M 51'],
    ['Plieades', 'M 45'],
    ['Dumbel Nebula', 'M 27'],
    ['Polarris', 'Polaris'],
    ['Zubenelgenubbi', 'Zubenelgenubi'],
  ])('the misspelling %s is read as %s, and said so', (text, name) => {
    const result = resolveTarget(catalogue, text);
    if (name === null) {
      expect(!isProblem(result)).toBe(false);
    } else {
      expect(!isProblem(result) && result.target.name).toBe(name);
      expect(!isProblem(result) && result.note).toContain(text);
    }
  });

  it.each(['Vege', 'Mizer', 'Algoll', 'Regulsu'])('offers or takes the near name for %s', (text) => {
    const result = resolveTarget(catalogue, text);
    if (isProblem(result)) expect(result.problem === 'unknown-target' ? result.nearest.length : 0).toBeGreaterThan(0);
    else expect(result.note).toBeDefined();
  });
});

describe('an ambiguous name is asked about', () => {
  it('for a name that two objects share', () => {
    expect(candidates('butterfly nebula')).toEqual(['M 76', 'NGC 6302']);
    expect(candidates('spindle galaxy')).toEqual(['NGC 3115', 'NGC 5866']);
    expect(candidates('southern pinwheel')).toContain('M 83');
    expect(candidates('southern pinwheel')).toContain('NGC 300');
  });

  it('for a letter that two stars far apart share', () => {
    // α¹ and α² Capricorni: 6.3′ apart (common knowledge; the two Hipparcos places give it).
    expect(candidates('alpha Cap')).toEqual(['Algedi', 'α¹ Cap']);
  });

  it('for a Latin letter typed without minding its case', () => {
    expect(candidates('p pup')).toEqual(expect.arrayContaining(['p Pup', 'P Pup']));
    expect(found('P Pup').name).toBe('P Pup');
    expect(found('p Pup').name).toBe('p Pup');
  });

  it('but not for a star whose name a nebula bears too', () => {
    expect(found('Merope').id).toBe('hip17608');
  });

  it('but not for a close pair, where it says which star it took', () => {
    const result = resolveTarget(catalogue, 'α Cen');
    expect(!isProblem(result) && result.target.name).toBe('Rigil Kentaurus');
    expect(!isProblem(result) && result.note).toMatch(/close group/);
  });

  it('for a constellation, unless a galaxy bears its name', () => {
    expect(candidates('Orion')).toEqual(expect.arrayContaining(['M 42', 'Rigel', 'Betelgeuse']));
    expect(candidates('Lyra')).toContain('Vega');
    expect(found('Triangulum').name).toBe('M 33');
  });
});

describe('what cannot be found is said clearly', () => {
  it.each([
    ['', /Name a target/],
    ['   ', /Name a target/],
    ['???', /Name a target/],
    ['NGC 9999', /Found no target “NGC 9999”/],
    ['IC 67', /nonexistent/],
    ['M 111', /Found no target/],
    ['hip 999999', /Found no target/],
    ['SAO 308', /“SAO 308” is not here: of that list only the best known are. Type its name, its letter/],
    ['Sh2-254', /Type the NGC, IC or Messier number or the name that it also goes by; or its J2000/],
    ['3C 1', /of that list only the best known/],
    ['__proto__', /Found no target/],
    ['constructor', /Found no target/],
    ['toString', /Found no target/],
    ['Orion', /Orion is a constellation. Which target in it: .*Rigel/],
    ['Titan', /Titan goes with Saturn/],
    ['io', /goes with Jupiter/],
    ['comet Encke', /whoever runs this bot/],
    ['C/2023 A3', /whoever runs this bot/],
    ['ISS', /Satellites are not followed/],
    ['Ceres', /whoever runs this bot/],
    ['x'.repeat(10_000), /too long/],
    ['ngc '.repeat(100), /too long/],
  ])('case %#', (text, message) => {
    const result = resolveTarget(catalogue, text);
    if (!isProblem(result)) throw new Error('found');
    expect(targetProblemMessage(result)).toMatch(message);
  });

  it('never shows control, bidirectional, mention or markup characters back', () => {
    const result = resolveTarget(catalogue, '\u202e@everyone\u0007 **<b>`x`** nowhere');
    if (!isProblem(result)) throw new Error('found');
    expect(targetProblemMessage(result)).not.toMatch(/[\p{Cc}\p{Cf}@*<>`]/u);
  });

  it('reads a name through control and bidirectional characters', () => {
    expect(found('\u202eVe\u200bga\u202c').name).toBe('Vega');
  });

  it('never throws, and keeps every message to 400 characters', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const result = resolveTarget(catalogue, text);
        if (isProblem(result)) {
          const message = targetProblemMessage(result);
          expect(message.length).toBeGreaterThan(10);
          expect(message.length).toBeLessThanOrEqual(400);
        }
      }),
      { numRuns: 2000 },
    );
  });
});

describe('every name in the catalogue leads back to its target', () => {
  it('by the name it is shown under, alone', () => {
    const astray: string[] = [];
    const check = (id: string, name: string): void => {
      const result = resolveTarget(catalogue, name);
      if (isProblem(result) || result.target.id !== id || result.note !== undefined)
        astray.push(`${name} (${id}) → ${!isProblem(result) ? result.target.id : result.problem}`);
    };
    for (let i = 0; i < catalogue.sweep.length; i += 1) {
      const { id, name } = catalogue.targetAt(i);
      check(id, name);
      expect(catalogue.targetById(id)?.name).toBe(name);
    }
    for (const { id, name } of catalogue.solarSystem) check(id, name);
    expect(astray).toEqual([]);
  });

  it('by any other name, alone or among those asked about', () => {
    const astray: string[] = [];
    for (let i = 0; i < catalogue.sweep.length; i += 1) {
      const { id, name, aliases } = catalogue.targetAt(i);
      for (const alias of aliases) {
        const result = resolveTarget(catalogue, alias);
        const ids = idsOf(result);
        // A part of an object that bears the same name is told of beside it.
        const told = 'note' in result && result.note?.split(/[; ]+and |; | beside/u).includes(name) === true;
        if (!ids.includes(id) && !told) astray.push(`${alias} (${id}) → ${ids.join(' ')}`);
      }
    }
    expect(astray).toEqual([]);
  });

  it('however its letters are spaced and cased', () => {
    const any = fc.integer({ min: 0, max: catalogue.sweep.length - 1 });
    fc.assert(
      fc.property(any, fc.boolean(), fc.boolean(), (i, upper, tight) => {
        const { id, name } = catalogue.targetAt(i);
        const cased = upper ? name.toUpperCase() : name.toLowerCase();
        const result = resolveTarget(catalogue, tight ? cased.replaceAll(' ', '') : cased);
        const ids = idsOf(result);
        expect(ids).toContain(id);
      }),
      { numRuns: 1000 },
    );
  });
});

it('shows beside a number the name people use, and no further number', () => {
  const shown = (text: string): string => nameWithAlias(found(text));
  expect(shown('Arp 85')).toBe('M 51 (Whirlpool Galaxy)');
  expect(shown('M 78')).toBe('M 78');
  expect(shown('Arp 78')).toBe('NGC 772');
});
