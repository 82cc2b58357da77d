import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let browser: TestBrowser;
const PHONE = { width: 390, height: 844 };

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await hub.stop();
  folder.remove();
});

/** The page of a steel with every answer on it. */
async function openSteel(name: string, size?: { width: number; height: number }) {
  const page = await browser.open(`${hub.wallUrl}#/steel/${name}`, size);
  await page.getByRole('img', { name: /Temperatures of this steel/ }).waitFor();
  await page.getByRole('img', { name: /Hardness in HRC/ }).waitFor();
  return page;
}

describe('the page of a steel', () => {
  it('is found by any of its names and says what a magnet means for it', async () => {
    const page = await browser.open(`${hub.wallUrl}#/steel`);
    await page.getByLabel('Grade, by any of its names').fill('42crmo');
    await page.getByText('1 of 24 grades').waitFor();
    await page.getByRole('link', { name: /^4140/ }).click();
    await page.getByRole('heading', { level: 1, name: '4140' }).waitFor();
    await page.getByText(/^Magnet plus about 100\u00a0°C takes 4140 to about/).waitFor();
    const windows = page.getByRole('table', { name: 'Windows of each step' });
    expect(await windows.getByRole('row', { name: /Austenitise/ }).textContent()).toContain('845 to 870');
    expect(await windows.getByText('From memory: recalled, not looked up').count()).toBeGreaterThan(0);
    expect(browser.complaints).toEqual([]);
  });

  it('turns every temperature into °F, in its drawing and in its tables', async () => {
    const page = await openSteel('1045');
    await page.getByLabel('Temperatures in').selectOption('°F');
    await page.getByText(/^Magnet plus about 180\u00a0°F takes 1045 to about 1580\u00a0°F/).waitFor();
    const drawn = page.getByRole('img', { name: /Temperatures of this steel/ });
    expect(await drawn.textContent()).not.toContain('°C');
    const table = page.getByRole('table', { name: 'Temperatures of the steel' });
    expect(await table.getByRole('row', { name: /^Curie/ }).textContent()).toContain('1418\u00a0°F');
  });

  it('answers for the bar of a certificate, and shows what the hub refuses beside its field', async () => {
    const page = await openSteel('1045');
    await page.getByText('Enter its mill certificate').click();
    const form = page.locator('form');
    await form.getByLabel('C', { exact: true }).fill('3');
    await form.getByRole('button', { name: 'Work it out for this composition' }).click();
    const carbon = page.locator('.field-wrong', { hasText: 'cast iron' });
    await carbon.waitFor();
    expect(await carbon.locator('label').textContent()).toBe('C');
    await form.getByLabel('C', { exact: true }).fill('0,47');
    await form.getByLabel('Mn', { exact: true }).fill('0.7');
    await form.getByRole('button', { name: 'Work it out for this composition' }).click();
    await page.getByRole('heading', { level: 1, name: /by its certificate/ }).waitFor();
    await page.getByText('C 0.47, Mn 0.7 %').waitFor();
    await page.getByRole('img', { name: /Temperatures of this steel/ }).waitFor();
  });

  it('offers the certificates that the shop keeps of a steel', async () => {
    await hub.api('POST', 'steels/1060/certificates', {
      heatNumber: 'K 4711',
      composition: { C: 0.62, Mn: 0.8 },
    });
    const page = await openSteel('1060');
    await page.getByText('Enter its mill certificate').click();
    await page.getByRole('button', { name: 'Heat K 4711' }).click();
    await page.getByText('C 0.62, Mn 0.8 %').waitFor();
  });

  it('says what it does not know of a steel, and is never blank', async () => {
    const page = await browser.open(`${hub.wallUrl}#/steel/D2`);
    await page.getByText('Do not judge D2 by a magnet.').waitFor();
    await page
      .getByText(/No formula for Ac1 covers this steel/)
      .first()
      .waitFor();
    await page.getByText(/Whether D2, 25\u00a0mm round.*is not known/).waitFor();
    await page.goto(`${hub.wallUrl}#/steel/unobtainium`);
    await page.getByText('The catalogue holds no steel called "unobtainium".').waitFor();
    expect(await page.getByRole('link', { name: /^1084/ }).count()).toBe(1);
  });

  it.each(['light', 'dark'] as const)(
    'has no fault by WCAG 2.2 AA that axe finds, all unfolded (%s)',
    async (scheme) => {
      const page = await openSteel('1084');
      await page.emulateMedia({ colorScheme: scheme });
      await page.evaluate(() => {
        for (const each of document.querySelectorAll('details')) each.open = true;
      });
      expect(await accessFaults(page)).toEqual([]);
    },
  );

  it.each(['', '1084', 'D2'])('fits a phone in width: #/steel/%s', async (name) => {
    const page = await browser.open(`${hub.wallUrl}#/steel/${name}`, PHONE);
    await page
      .getByRole(name === '' ? 'link' : 'table')
      .first()
      .waitFor();
    await page.evaluate(() => {
      for (const each of document.querySelectorAll('details')) each.open = true;
    });
    expect(await fitsWidth(page)).toBe(true);
  });
});

describe('the places', () => {
  it('unfold on a phone with a button and fold when one goes somewhere', async () => {
    const page = await openSteel('1084', PHONE);
    const list = page.locator('#places');
    expect(await list.isVisible()).toBe(false);
    const button = page.getByRole('button', { name: /Pages: Steel/ });
    await button.click();
    expect(await button.getAttribute('aria-expanded')).toBe('true');
    expect(await fitsWidth(page)).toBe(true);
    expect(await accessFaults(page)).toEqual([]);
    await list.getByRole('link', { name: 'Firings' }).click();
    await page.getByRole('heading', { level: 1, name: 'Firings' }).waitFor();
    await expect.poll(() => list.isVisible()).toBe(false);
  });

  it('stand in one line on a wide screen', async () => {
    const page = await browser.open(hub.wallUrl, { width: 1920, height: 1080 });
    const links = page.locator('#places a');
    await links.first().waitFor();
    const tops = await links.evaluateAll((all) => all.map((link) => link.getBoundingClientRect().top));
    expect(new Set(tops).size).toBe(1);
    expect(await page.getByRole('button', { name: /^Pages/ }).isVisible()).toBe(false);
  });
});
