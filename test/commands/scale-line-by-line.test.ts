/**
 * A camera's scale whose numbers come line by line. Expected: 206265″ to the radian (IAU), so 3.76 µm at 800 mm are 0.97″, at 600 mm 1.29″; 2.9 µm at
 * 1000 mm 0.60″; 4.63 µm at 530 mm 1.80″.
 */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);
const last = async (lines: readonly string[]): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  let told = '';
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, EVENING + i * 20_000);
    told = isProblem(outcome) ? outcome.message : `${outcome.title}. ${outcome.summary}`;
  }
  return told;
};

describe('the scale of a picture', () => {
  it.each([
    [['what scale do i get', '800mm', '3.76um'], /^0\.97″/u],
    [['what scale do i get', '3.76um', '800mm'], /^0\.97″/u],
    [['what scale do i get', '800', '3.76'], /^0\.97″/u],
    [['what scale do i get', 'its 800mm', 'and 3.76 microns'], /^0\.97″/u],
    [['what pixel scale do i get with my camera', '800mm focal length', 'pixels are 3.76 um'], /^0\.97″/u],
    [['my scope is 800mm', 'camera has 3.76 um pixels', 'what scale do i get'], /^0\.97″/u],
    [['whats my sampling at 1000mm', 'pixels are 2.9 microns'], /^0\.6″/u],
    [['camera 4.63um', '530mm'], /^1\.8″/u],
    [['what scale do i get', '800mm', '3.76um', 'and with 600mm?'], /^1\.29″/u],
    [['what scale do i get', 'is saturn up', '800mm', '3.76um'], /^0\.97″/u],
    [['my tube is 200/1000', '2.9um pixels, what scale'], /^0\.6″/u],
    [['what image scale do i get with 2.9um', '1000mm'], /^0\.6″/u],
    [['work out the arcsec per pixel', '800mm 3.76um'], /^0\.97″/u],
  ] as const)('%s', async (lines, told) => expect(await last(lines)).toMatch(told));

  it.each([
    [['what scale do i get'], /focal length and the camera's pixel size/u],
    [['what scale do i get', '800mm'], /Tell me the camera's pixel size/u],
    [['what scale do i get', '3.76um'], /Tell me the telescope's focal length/u],
  ] as const)('what is missing is asked for: %s', async (lines, told) => expect(await last(lines)).toMatch(told));

  it.each([
    [['what scale is the map']],
    [['which seeing scale do you use']],
    [['what scale is bortle']],
    [['800mm']],
    [['is saturn up', '22:30']],
    [['25mm eyepiece in 1000mm', 'and with a 10mm']],
    [['what scale do i get', 'is saturn up at 10']],
    [['what scale do i get', 'my usb cable is 3 m']],
  ] as const)('is not spoken of: %s', async (lines) =>
    expect(await last(lines)).not.toMatch(/″ a pixel|scale of a picture/u),
  );
});
