import { describe, expect, it } from 'vitest';
import { found, placeDeg, separationDeg } from './loaded.js';

/**
 * Name, right ascension and declination in degrees (ICRS, epoch 2000.0), Bayer letter and constellation.
 * Source: IAU Catalog of Star Names, IAU Division C Working Group on Star Names, 2018-09-07.
 */
const IAU_STARS: readonly (readonly [string, number, number, string])[] = [
  ['Acamar', 44.565311, -40.304672, 'θ¹ Eri'],
  ['Achernar', 24.428523, -57.236753, 'α Eri'],
  ['Albireo', 292.680351, 27.959692, 'β¹ Cyg'],
  ['Aldebaran', 68.980163, 16.509302, 'α Tau'],
  ['Algol', 47.042215, 40.955648, 'β Per'],
  ['Alphard', 141.896847, -8.658602, 'α Hya'],
  ['Altair', 297.695827, 8.868321, 'α Aql'],
  ['Ankaa', 6.570939, -42.306084, 'α Phe'],
  ['Arcturus', 213.9153, 19.182409, 'α Boo'],
  ['Atria', 252.166229, -69.027712, 'α TrA'],
  ['Canopus', 95.987958, -52.695661, 'α Car'],
  ['Deneb', 310.35798, 45.280339, 'α Cyg'],
  ['Denebola', 177.26491, 14.572058, 'β Leo'],
  ['Diphda', 10.897379, -17.986606, 'β Cet'],
  ['Errai', 354.836655, 77.632313, 'γ Cep'],
  ['Fomalhaut', 344.412693, -29.622237, 'α PsA'],
  ['Hamal', 31.793357, 23.462418, 'α Ari'],
  ['Keid', 63.817999, -7.652872, 'ο² Eri'],
  ['Kochab', 222.676357, 74.155504, 'β UMi'],
  ['Mizar', 200.981429, 54.925362, 'ζ UMa'],
  ['Nunki', 283.81636, -26.296724, 'σ Sgr'],
  ['Polaris', 37.954561, 89.264109, 'α UMi'],
  ['Polaris Australis', 317.195164, -88.956499, 'σ Oct'],
  ['Pollux', 116.328958, 28.026199, 'β Gem'],
  ['Ran', 53.232687, -9.458259, 'ε Eri'],
  ['Regulus', 152.092962, 11.967209, 'α Leo'],
  ['Rigel', 78.634467, -8.201638, 'β Ori'],
  ['Sadalsuud', 322.889715, -5.571176, 'β Aqr'],
  ['Spica', 201.298247, -11.161319, 'α Vir'],
  ['Vega', 279.234735, 38.783689, 'α Lyr'],
  ['Zubenelgenubi', 222.719638, -16.041777, 'α² Lib'],
  ['Rigil Kentaurus', 219.902066, -60.833975, 'α¹ Cen'],
];

/** Name, right ascension (h m s) and declination (° ′ ″), J2000, to the second. Source: NASA/IPAC Extragalactic Database (values from memory). */
const NED: readonly (readonly [
  string,
  readonly [number, number, number],
  readonly [number, number, number, number],
])[] = [
  ['NGC 7331', [22, 37, 4.1], [1, 34, 24, 56]],
  ['M 31', [0, 42, 44.3], [1, 41, 16, 9]],
  ['M 81', [9, 55, 33.2], [1, 69, 3, 55]],
  ['M 104', [12, 39, 59.4], [-1, 11, 37, 23]],
  ['NGC 253', [0, 47, 33.1], [-1, 25, 17, 18]],
  ['NGC 5128', [13, 25, 27.6], [-1, 43, 1, 9]],
];

describe('targets are where they are', () => {
  it('agrees with the IAU list of star names on place and letter', () => {
    let worst = { arcsec: 0, name: '' };
    for (const [name, raDeg, decDeg, letter] of IAU_STARS) {
      const star = found(name);
      const arcsec = separationDeg(...placeDeg(star), raDeg, decDeg) * 3600;
      if (arcsec > worst.arcsec) worst = { arcsec, name };
      // Half an arc second: the list mixes Hipparcos's two reductions, which part on the orbits of close binaries (Ankaa).
      if (arcsec > 0.05) console.log(`${name} ${arcsec.toFixed(3)}″`);
      expect(arcsec, name).toBeLessThan(0.5);
      expect(star.aliases, name).toContain(letter);
      expect(found(letter).id, letter).toBe(star.id);
    }
    console.log(`worst of ${IAU_STARS.length} named stars: ${worst.arcsec.toFixed(3)}″ (${worst.name})`);
  });

  it('agrees with NED on galaxies', () => {
    let worst = 0;
    for (const [name, [h, m, s], [sign, d, arcmin, arcsec]] of NED) {
      const off =
        separationDeg(
          ...placeDeg(found(name)),
          15 * (h + m / 60 + s / 3600),
          sign * (d + arcmin / 60 + arcsec / 3600),
        ) * 3600;
      worst = Math.max(worst, off);
      expect(off, name).toBeLessThan(3);
    }
    console.log(`worst of ${NED.length} galaxies: ${worst.toFixed(2)}″`);
  });

  it('carries proper motion and parallax as Hipparcos has them', () => {
    // van Leeuwen 2007 (CDS I/311), HIP 91262: 200.94 and 286.23 mas/yr, 130.23 mas.
    expect(found('HIP 91262').body).toMatchObject({
      pmRaCosDecMasPerYear: 200.94,
      pmDecMasPerYear: 286.23,
      parallaxMas: 130.23,
    });
    // The same, HIP 87937 (Barnard's Star): the fastest of all. Over 8.75 years its motion itself turns by some 0.2 mas/yr.
    const { body } = found("Barnard's Star");
    if (body.kind !== 'fixed') throw new Error('not fixed');
    expect(Math.hypot(body.pmRaCosDecMasPerYear ?? 0, body.pmDecMasPerYear ?? 0)).toBeGreaterThan(10_300);
    expect(Math.hypot(body.pmRaCosDecMasPerYear ?? 0, body.pmDecMasPerYear ?? 0)).toBeLessThan(10_420);
    // Its place at 2000.0 (SIMBAD, 17 57 48.498 +04 41 36.21; value from memory) shows that the epoch was carried on from
    // 1991.25: it moved 90″ in between.
    expect(separationDeg(...placeDeg(found("Barnard's Star")), 269.452075, 4.693392) * 3600).toBeLessThan(0.2);
  });

  it('gives visual magnitudes near those of the Bright Star Catalogue', () => {
    // Values from memory of the Bright Star Catalogue, 5th ed.
    const known: Readonly<Record<string, number>> = {
      Vega: 0.03,
      Sirius: -1.46,
      Polaris: 2.02,
      Alkaid: 1.86,
      Hamal: 2.0,
      Alpheratz: 2.06,
      Kochab: 2.08,
      Rasalhague: 2.08,
      Nunki: 2.02,
      Thuban: 3.65,
      '61 Cyg': 5.21,
    };
    for (const [name, magnitude] of Object.entries(known))
      expect(Math.abs((found(name).magnitude ?? 99) - magnitude), name).toBeLessThan(0.1);
  });
});
