import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext, type Locator, type Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { CHART_WIDTH } from '../../bot/reply/chart-frame.js';
import { startPage } from './start-page.js';

const CHROMIUM = process.env['CHROMIUM'] ?? '/usr/bin/chromium';
const isThere = existsSync(CHROMIUM);
if (!isThere) process.stdout.write(`No browser at ${CHROMIUM} (Debian: chromium): the page's tests are left out.\n`);
const FLAGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
/** Where pictures of the page are wanted for looking at. */
const SHOTS = process.env['PIERHAND_SHOTS'];

describe.skipIf(!isThere)('the page, in a browser', () => {
  const profile = mkdtempSync(path.join(tmpdir(), 'pierhand-browser-'));
  let bot: Awaited<ReturnType<typeof startPage>>;
  let browser: BrowserContext;
  let page: Page;
  let errors: string[];

  beforeAll(async () => {
    bot = await startPage();
    browser = await chromium.launchPersistentContext(profile, { executablePath: CHROMIUM, args: FLAGS });
    browser.setDefaultTimeout(60_000);
  });
  afterAll(async () => {
    await browser?.close();
    await bot?.stop();
    rmSync(profile, { recursive: true, force: true });
  });
  beforeEach(async () => {
    for (const old of browser.pages().slice(1)) await old.close();
    page = await browser.newPage();
    errors = [];
    page.on('pageerror', ({ message }) => errors.push(message));
    page.on('console', (said) => void (said.type() === 'error' && errors.push(said.text())));
    await page.setViewportSize({ width: 1280, height: 860 });
    await page.goto(bot.address);
  });

  const seen = (name: string): Locator => page.getByRole('log', { name: `What ${name} sees` });
  const ask = async (name: string, text: string): Promise<void> => {
    await page.getByRole('textbox', { name: `Ask as ${name}` }).fill(text);
    await page.keyboard.press('Enter');
  };
  const answered = async (name: string, text: string | RegExp): Promise<Locator> => {
    const found = seen(name).locator('li.answer').filter({ hasText: text }).last();
    await found.waitFor();
    return found;
  };
  const shot = async (name: string): Promise<void> => {
    if (SHOTS !== undefined) await page.screenshot({ path: path.join(SHOTS, `${name}.png`) });
  };

  it('answers by keyboard alone, with a chart as a picture that has words beside it, seen by both members', async () => {
    await ask('Tamsin', 'up NGC 7331 site:52.71,0.12');
    const own = await answered('Tamsin', 'NGC 7331');
    await answered('Wilf', 'NGC 7331');
    expect(await seen('Wilf').getByText('up NGC 7331 site:52.71,0.12').count()).toBe(1);
    const image = own.getByRole('img');
    await image.scrollIntoViewIfNeeded();
    expect(((await image.getAttribute('alt')) ?? '').length).toBeGreaterThan(40);
    await expect
      .poll(() => image.evaluate((element: unknown) => (element as { naturalWidth: number }).naturalWidth))
      .toBe(CHART_WIDTH);
    await shot('wide');
    expect(errors).toEqual([]);
  });

  it('shows what is a member’s own to that member alone, the question with it', async () => {
    await ask('Wilf', 'site add name:Orchard position:52.7113,0.1236');
    const saved = await answered('Wilf', 'Orchard');
    expect(await saved.textContent()).toContain('Only Wilf sees this');
    await ask('Tamsin', 'help up');
    await answered('Tamsin', 'up');
    expect(await seen('Tamsin').textContent()).not.toContain('Orchard');
    // Nor has the page it for Tamsin's part by another way.
    const stream = await page.evaluate(`(async () => {
      const reader = (await fetch('/events?member=tamsin')).body.getReader();
      let text = '';
      while (!text.includes('help up')) text += new TextDecoder().decode((await reader.read()).value);
      return text;
    })()`);
    expect(stream).not.toContain('Orchard');
    await shot('private');
  });

  it('walks by buttons, and takes a pasted text in a form', async () => {
    await ask('Tamsin', 'triage new');
    const first = await answered('Tamsin', /\?/u);
    await first.getByRole('button', { name: 'Paste or write' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    const field = dialog.getByRole('textbox').first();
    await field.fill('usb 1-1: device descriptor read/64, error -71');
    await shot('form');
    await dialog.getByRole('button', { name: 'Send' }).press('Enter');
    const second = await answered('Tamsin', /descriptor|cable|power/iu);
    await second.getByRole('button').first().press('Enter');
    await expect.poll(() => seen('Tamsin').locator('li.answer').count()).toBeGreaterThan(3);
    expect(errors).toEqual([]);
  });

  it('takes a log file with a line, and puts what comes on the page as text, never as markup', async () => {
    await page.getByLabel('File or picture from Wilf').setInputFiles({
      name: '<img src=x onerror=alert(1)>.log',
      mimeType: 'text/plain',
      buffer: Buffer.from('kernel: usb 1-1: USB disconnect, device number 7'),
    });
    await ask('Wilf', 'triage new <b>bold</b> it vanishes');
    await answered('Wilf', /\?/u);
    expect(await seen('Wilf').textContent()).toContain('<b>bold</b>');
    expect(await seen('Wilf').locator('b, script, img[src=x]').count()).toBe(0);
    expect(errors).toEqual([]);
  });

  it('names every control, and every one is reached with the Tab key (WCAG 2.2: 4.1.2, 2.1.1)', async () => {
    const nameless = await page.evaluate(`[...document.querySelectorAll('button, textarea, input')].filter(
      (control) => !control.closest('dialog') && !control.getAttribute('aria-label') &&
        !control.textContent.trim() && !control.labels?.length).length`);
    expect(nameless).toBe(0);
    const reached = new Set<string>();
    expect(await page.evaluate('document.activeElement.id')).toBe('text-tamsin');
    for (let i = 0; i < 120; i++) {
      await page.keyboard.press('Tab');
      reached.add(String(await page.evaluate('document.activeElement.tagName + " " + document.activeElement.id')));
    }
    for (const control of ['TEXTAREA text-tamsin', 'TEXTAREA text-wilf', 'OL ', 'SUMMARY '])
      expect(reached).toContain(control);
  });

  it('fits a phone 375 pixels wide: one member at a time, nothing beside the edge, targets of 44 pixels (WCAG 2.2: 1.4.10, 2.5.5)', async () => {
    await page.setViewportSize({ width: 375, height: 740 });
    await ask('Tamsin', 'tonight site:52.71,0.12');
    await answered('Tamsin', /tonight/iu);
    await shot('phone');
    expect(await seen('Wilf').isVisible()).toBe(false);
    await page.getByRole('group', { name: 'Whose view' }).getByRole('button', { name: 'Wilf' }).click();
    expect(await seen('Wilf').isVisible()).toBe(true);
    const wide = await page.evaluate('document.documentElement.scrollWidth');
    const small = await page.evaluate(`[...document.querySelectorAll('button')]
      .map((button) => button.getBoundingClientRect().height).filter((height) => height > 0 && height < 44).length`);
    expect(wide).toBeLessThanOrEqual(375);
    expect(small).toBe(0);
    await shot('phone-wilf');
    expect(errors).toEqual([]);
  });
});
