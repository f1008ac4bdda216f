/** What looks at guiding, gears and feet answer, and what looks at things that sleep, hide or answer in another's name. */
import { starves } from '../chain.js';
import { falls, type World } from '../world.js';

const guiding = (w: World): string => {
  if (w.sky.mount !== 'altaz' && w.sky.polarOffDeg > 2 && falls(w, 'guides with the axis off', 0.4)) return 'one-way';
  return w.program.tracking === 'another' && falls(w, 'guides at another rate', 0.3) ? 'one-way' : 'none';
};

const gearSound = (w: World): string => {
  if (!w.program.clutchFirm && falls(w, 'a loose axis stays', 0.35)) return 'alone';
  if (starves(w)) return falls(w, 'starved motors stall', 0.5) ? 'grates' : 'even';
  const still = w.program.type === 'simulator' || w.program.parked || (w.program.buttonsSlow && falls(w, 'too slow'));
  return still ? 'silent' : 'even';
};

const secondTry = (w: World): string => {
  const later = (w.settings.noRetries || w.settings.timeOutShort) && falls(w, 'a later try gets through', 0.4);
  return later ? 'works' : 'same';
};

const platformOthers = ({ driver, ...w }: World): string =>
  !driver.serviceRuns || (!driver.componentOn && falls({ driver, ...w }, 'all want the component', 0.7))
    ? 'all-fail'
    : 'open';

const northBy = (w: World): string => {
  if (falls(w, 'north by a star', w.sky.polarOffDeg > 2 ? 0.35 : 0.75)) return 'star';
  return falls(w, 'north by compass', 0.5) ? 'clear' : 'eye';
};

export const HIDDEN_RULES: Readonly<Record<string, (w: World) => string>> = {
  guiding,
  'axis-play': (w) => (falls(w, 'a little play', w.program.clutchFirm ? 0.1 : 0.6) ? 'play' : 'tight'),
  feet: (w) => (falls(w, 'stands on grass', 0.2) ? 'soft' : 'firm'),
  'old-points': (w) => (falls(w, 'old points without harm', 0.12) ? 'old' : 'fresh'),
  'tube-firm': (w) => (falls(w, 'a focuser with some give', 0.05) ? 'shifts' : 'firm'),
  balance: (w) => (falls(w, 'a little heavy', w.program.clutchFirm ? 0.08 : 0.4) ? 'heavy' : 'balanced'),
  'gear-sound': gearSound,
  'guider-running': (w) => (falls(w, 'a guider runs without harm', 0.12) ? 'running' : 'stopped'),
  'game-stick': (w) => (falls(w, 'a stick lies there without harm', 0.07) ? 'there' : 'none'),
  'own-suspicion': () => 'same',
  'tube-doubts': (w) => (falls(w, 'a doubt at the tube', 0.12) ? 'optics' : 'none'),
  'diagonal-turned': (w) => (falls(w, 'no diagonal', 0.4) ? 'none' : 'stays'),
  'star-out-of-focus': (w) => (falls(w, 'a little out of line', 0.1) ? 'lopsided' : 'round'),
  'aligned-through': (w) => (falls(w, 'by the finder, and it agrees', 0.06) ? 'finder' : 'main'),
  'leads-free': (w) => (w.leads.snags ? 'catches' : 'free'),
  'north-by': northBy,
  'axes-light': (w) => (falls(w, 'a stiff axis without harm', 0.05) ? 'stiff' : 'light'),
  'wireless-saving': (w) => (falls(w, 'may sleep without harm', 0.4) ? 'may-sleep' : 'stays-on'),
  'answers-when-off': () => 'silent',
  proxy: (w) => (falls(w, 'a proxy without harm', 0.04) ? 'set' : 'none'),
  'inside-another': (w) => (falls(w, 'inside another', w.adapter.machineTakes ? 0.3 : 0.04) ? 'inside' : 'ordinary'),
  'fresh-profile': () => 'same',
  'platform-others': platformOthers,
  'suite-log': ({ network, ...w }) =>
    network.firewall === 'suite-blocks' && falls({ network, ...w }, 'the suite notes it') ? 'took-it' : 'nothing',
  'second-try': secondTry,
  'controller-present': (w) => (falls(w, 'runs without a controller', 0.07) ? 'missing' : 'there'),
  'separate-supplies': (w) => (falls(w, 'several supplies', 0.4) ? 'several' : 'one'),
};
