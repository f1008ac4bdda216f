/**
 * Makes the screenshots in test/pictures/screens with a real browser (Debian's chromium) and a real terminal (xterm on
 * Xvfb), two a text, each in another look: fonts, dark and light, scaled, as JPEG, tilted by 2°.
 * Needs chromium, xvfb, xterm and imagemagick. Run: npx tsx scripts/pictures/make-screenshots.ts
 */
import { execFileSync, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { SCREEN_TEXTS, type ScreenText } from './screen-texts.js';

const FOLDER = 'test/pictures/screens';
const CONVERT = '/usr/bin/convert';
const DISPLAY = ':87';

interface Look {
  readonly font: string;
  readonly sizePx: number;
  readonly isDark: boolean;
  readonly scale: number;
  readonly after: 'png' | 'jpeg' | 'tilt' | 'webp';
}

const MONO = ['DejaVu Sans Mono', 'Liberation Mono', 'Noto Mono'];
const SANS = ['Liberation Sans', 'DejaVu Sans', 'Noto Sans'];

const looks = (text: ScreenText, index: number): readonly Look[] => {
  const fonts = text.look === 'terminal' ? MONO : SANS;
  const afters = ['png', 'jpeg', 'tilt', 'webp'] as const;
  return [0, 1].map((turn) => ({
    font: fonts[(index + turn) % fonts.length]!,
    sizePx: 12 + ((index + 2 * turn) % 4),
    isDark: (index + turn) % 2 === 0,
    scale: [1, 1.25, 1.5, 2][(index + turn) % 4]!,
    after: afters[(index + 2 * turn) % 4]!,
  }));
};

const escaped = (text: string): string => text.replace(/&/gu, '&amp;').replace(/</gu, '&lt;').replace(/>/gu, '&gt;');

const page = ({ look, title, text }: ScreenText, { font, sizePx, isDark }: Look): string => {
  const [paper, ink, bar] = isDark ? ['#1c1d20', '#d8d8d0', '#33363d'] : ['#fbfbfa', '#1b1b1b', '#dfe3ea'];
  const buttons =
    look === 'window' ? '<p style="text-align:right"><button>OK</button> <button>Cancel</button></p>' : '';
  return `<html><body style="margin:0;background:${paper};color:${ink};font:${sizePx}px '${font}'">
<div style="background:${bar};padding:6px 10px;font:13px 'Liberation Sans'">${escaped(title)}</div>
<pre style="margin:12px;font:inherit;line-height:1.35">${escaped(text)}</pre>${buttons}</body></html>`;
};

const scratch = mkdtempSync(path.join(tmpdir(), 'screens-'));

const inBrowser = (text: ScreenText, look: Look, file: string): void => {
  const source = path.join(scratch, 'page.html');
  writeFileSync(source, page(text, look));
  const lines = text.text.split('\n');
  const widthPx = Math.round(Math.max(420, Math.max(...lines.map(({ length }) => length)) * look.sizePx * 0.65 + 40));
  const heightPx = Math.round(lines.length * look.sizePx * 1.5 + 110);
  execFileSync(
    'chromium',
    [
      ...['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run'],
      ...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
      `--user-data-dir=${path.join(scratch, 'profile')}`,
      `--force-device-scale-factor=${look.scale}`,
      `--window-size=${widthPx},${heightPx}`,
      `--screenshot=${file}`,
      `file://${source}`,
    ],
    { stdio: 'ignore' },
  );
};

const inTerminal = async (text: ScreenText, look: Look, file: string): Promise<void> => {
  const source = path.join(scratch, 'lines.txt');
  writeFileSync(source, text.text);
  const [paper, ink] = look.isDark ? ['black', 'grey85'] : ['white', 'black'];
  const columns = Math.max(60, ...text.text.split('\n').map(({ length }) => length + 2));
  const terminal = spawn(
    'xterm',
    [
      ...['-fa', look.font, '-fs', String(Math.round(look.sizePx * 0.75 * look.scale)), '-bg', paper, '-fg', ink],
      ...['-geometry', `${columns}x${text.text.split('\n').length + 3}+0+0`, '-title', text.title],
      ...['-e', 'sh', '-c', `cat ${source}; sleep 20`],
    ],
    { env: { ...process.env, DISPLAY }, stdio: 'ignore' },
  );
  await sleep(2500);
  execFileSync('/usr/bin/import', ['-window', 'root', '-trim', file], { env: { ...process.env, DISPLAY } });
  terminal.kill();
};

const finish = (png: string, look: Look, stem: string): string => {
  const paper = look.isDark ? '#202020' : '#f4f4f4';
  const made = {
    png: () => [`${stem}.png`, ['-strip', '-colors', '64']] as const,
    jpeg: () => [`${stem}.jpg`, ['-strip', '-quality', '62']] as const,
    tilt: () => [`${stem}.jpg`, ['-strip', '-background', paper, '-rotate', '2', '-quality', '75']] as const,
    webp: () => [`${stem}.webp`, ['-strip', '-quality', '70']] as const,
  };
  const [file, options] = made[look.after]();
  execFileSync(CONVERT, [png, ...options, file]);
  return path.basename(file);
};

mkdirSync(FOLDER, { recursive: true });
const screen = spawn('Xvfb', [DISPLAY, '-screen', '0', '1600x700x24'], { stdio: 'ignore' });
await sleep(1500);
const made: { readonly file: string; readonly facts: ScreenText['facts'] }[] = [];
for (const [index, text] of SCREEN_TEXTS.entries()) {
  for (const [turn, look] of looks(text, index).entries()) {
    const png = path.join(scratch, 'shot.png');
    if (text.look === 'terminal' && turn === 1) await inTerminal(text, look, png);
    else inBrowser(text, look, png);
    made.push({ file: finish(png, look, path.join(FOLDER, `${text.id}-${turn + 1}`)), facts: text.facts });
  }
}
screen.kill();
rmSync(scratch, { recursive: true, force: true });
writeFileSync(path.join(FOLDER, 'screens.json'), `${JSON.stringify(made, null, 2)}\n`);
process.stdout.write(`${made.length} screenshots\n`);
