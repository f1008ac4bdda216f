import { describe, expect, it } from 'vitest';
import { NO_KIND, TARGET_KINDS } from '../../bot/catalogue/index.js';
import { catalogue, found } from './loaded.js';

const at = (name: string): number => {
  const { id } = found(name);
  for (let i = 0; i < catalogue.sweep.length; i += 1) if (catalogue.targetAt(i).id === id) return i;
  throw new Error(name);
};

describe('what an observer means by an object', () => {
  // Common practice, no source: what each is looked at as.
  it.each([
    ['M 42', 'nebula', null],
    ['IC 1805', 'nebula', 'open-cluster'],
    ['NGC 2244', 'open-cluster', null],
    ['NGC 2264', 'open-cluster', 'nebula'],
    ['NGC 2237', 'nebula', null],
  ])('%s is a %s (also asked for as: %s)', (name, kind, also) => {
    const target = found(name);
    expect([target.kind, target.alsoKind]).toEqual([kind, also]);
    const i = at(name);
    expect(TARGET_KINDS[catalogue.sweep.kindIndex[i] ?? 0]).toBe(kind);
    expect(catalogue.sweep.alsoKindIndex[i]).toBe(also === null ? NO_KIND : TARGET_KINDS.indexOf(also as 'nebula'));
  });

  it('counts a pair, or a nebula and its cluster, as one stop', () => {
    for (const [one, other] of [
      ['M 42', 'M 43'],
      ['NGC 869', 'NGC 884'],
      ['NGC 869', 'Double Cluster'],
      ['NGC 2244', 'NGC 2237'],
      ['M 51', 'NGC 5195'],
      ['M 16', 'IC 4703'],
      ['ε¹ Lyr', 'ε² Lyr'],
    ] as const) {
      expect(found(one).groupId, one).toBe(found(other).groupId);
      expect(found(one).groupId, one).not.toBeNull();
      expect(catalogue.sweep.group[at(one)]).toBe(catalogue.sweep.group[at(other)]);
    }
    expect(found('M 13').groupId).toBeNull();
    expect(catalogue.sweep.group[at('M 13')]).toBe(0);
  });

  it('ranks every Messier and Caldwell object, and nothing that has no name and no list', () => {
    for (let n = 1; n <= 110; n += 1)
      if (n !== 102) expect(found(`M ${n}`).showpieceRank, `M ${n}`).toBeLessThanOrEqual(3);
    for (let n = 1; n <= 109; n += 1) expect(found(`C ${n}`).showpieceRank, `C ${n}`).toBeLessThanOrEqual(4);
    expect(found('M 42').showpieceRank).toBe(1);
    expect(found('NGC 1').showpieceRank).toBeNull();
    const first = catalogue.sweep.showpieceRank.reduce((sum, rank) => sum + (rank === 1 ? 1 : 0), 0);
    expect(first).toBeGreaterThan(30);
    expect(first).toBeLessThan(90);
  });

  // Washington Double Star Catalog, published measures (from memory).
  it.each([
    ['Albireo', 34.5, 54],
    ['Mizar', 14.4, 153],
    ['Almach', 9.7, 63],
    ['61 Cygni', 32, 153],
    ['94 Aqr', 12.4, 351],
  ])('%s is parted by %d″ at %d°', (name, separationArcsec, positionAngleDeg) => {
    const { double, kind, showpieceRank } = found(name);
    expect(kind).toBe('double-star');
    expect(showpieceRank).not.toBeNull();
    expect(Math.abs((double?.separationArcsec ?? 0) - separationArcsec)).toBeLessThan(0.6);
    expect(Math.abs((double?.positionAngleDeg ?? 0) - positionAngleDeg)).toBeLessThan(3);
    expect(catalogue.sweep.separationArcsec[at(name)]).toBeCloseTo(double?.separationArcsec ?? 0, 4);
  });

  // Integrated V of W. E. Harris's catalogue of globular clusters, and of the Third Reference Catalogue for galaxies (from memory).
  it.each([
    ['M 10', 6.6],
    ['M 14', 7.6],
    ['M 22', 5.1],
    ['M 71', 8.2],
    ['M 106', 8.4],
    ['NGC 253', 7.2],
    ['NGC 4945', 8.6],
    ['M 20', 6.3],
  ])('%s has visual magnitude %d', (name, magnitude) => {
    expect(Math.abs((found(name).magnitude ?? 99) - magnitude)).toBeLessThan(0.3);
  });

  it('has no galaxy fainter in visual light than in blue by more than measuring allows, among the bright', () => {
    // Galaxies have B − V between 0.3 and 1.1 (Third Reference Catalogue): NGC 253 at V 11.1 beside B 7.9 was one of hundreds.
    expect(found('NGC 253').magnitude).toBeLessThan(7.94);
    expect(found('NGC 4945').magnitude).toBeLessThan(9.28);
    expect(found('NGC 157').magnitude).toBeLessThan(11.07);
    expect(found('NGC 6164').magnitude).toBeNull();
  });

  // M 33's mean surface brightness is given as 14.2 magnitudes a square arcminute (23.1 a square arcsecond) in observers' handbooks (from memory).
  it('gives the mean surface brightness of M 33 within 0.3 of the handbooks', () => {
    expect(found('M 33').surfaceBrightness).toBeGreaterThan(22.8);
    expect(found('M 33').surfaceBrightness).toBeLessThan(23.4);
  });
});

describe('what members type', () => {
  // Numbers from the catalogues named (facts, from memory): Bright Star Catalogue, Henry Draper, Arp 1966, Sharpless 1959, Abell 1958, van den Bergh 1966.
  it.each([
    ['N891', 'ngc891'],
    ['et cluster', 'ngc457'],
    ['E.T. cluster', 'ngc457'],
    ['HR 7001', 'hip91262'],
    ['HD 172167', 'hip91262'],
    ['Arp 85', 'ngc5194'],
    ['arp244', 'ngc4038'],
    ['Sh2-275', 'ngc2237'],
    ['Abell 1656', 'abell1656'],
    ['vdB 139', 'ngc7023'],
    ['Trapezium', 'hip26221'],
    ['veil east', 'ngc6992'],
    ['West Veil', 'ngc6960'],
    ['Plejaden', 'mel22'],
    ['Orionnebel', 'ngc1976'],
    ["Galaxie d'Andromède", 'ngc224'],
    ['Mond', 'moon'],
    ['Barnard 72', 'barnard72'],
    ['snake nebula', 'barnard72'],
  ])('“%s” is %s', (typed, id) => {
    expect(found(typed).id).toBe(id);
  });

  it.each(['Plough', 'Big Dipper', 'Summer Triangle', 'Southern Cross', 'Great Square', 'Teapot'])(
    'knows the star pattern %s, shown by its name',
    (typed) => {
      const target = found(typed);
      expect(target.kind).toBe('asterism');
      expect(target.name).not.toMatch(/Asterism/);
      expect(found(target.name).id).toBe(target.id);
    },
  );

  it('does not take one star’s number for a slip of another’s', () => {
    expect(() => found('HR 7002')).toThrow();
    expect(() => found('HD 172168')).toThrow();
  });
});
