import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { BenchNode, furnishShop } from './bench-node.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let node: BenchNode;
let browser: TestBrowser;

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  await furnishShop(hub);
  node = await BenchNode.connect(hub);
  await node.set('co', 12, '[ppm]');
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await node.leave();
  await hub.stop();
  folder.remove();
});

/** The page asks every ten seconds, on a machine that does other things too. */
const PATIENT = { timeout: 20_000 };

const open = async () => {
  const page = await browser.open(`${hub.wallUrl}#/air`);
  await page.getByRole('heading', { name: 'Against the limits' }).waitFor();
  return { page, plate: page.locator('.air-plate').first() };
};

describe('the page about the air', () => {
  it('shows the level as it comes, and loudly above the second limit', async () => {
    const { page, plate } = await open();
    await expect.poll(() => plate.textContent()).toContain('12 ppm');
    await node.set('co', 75, '[ppm]');
    await expect.poll(() => plate.textContent()).toContain('ABOVE the second limit, 60 ppm');
    expect(await plate.getAttribute('class')).toContain('air-plate-danger');
    await page.getByText('Everyone out of the building, now.').waitFor();
    await node.set('co', 12, '[ppm]');
    expect(browser.complaints).toEqual([]);
  });

  it('holds what was breathed in against each limit, with the share that was measured', async () => {
    const { page } = await open();
    for (const limit of ['The day', 'Short', 'Danger to life']) {
      expect(await page.getByRole('img', { name: new RegExp(`^${limit}: .* ppm`) }).count()).toBe(1);
    }
    expect(await page.getByText('never a certified CO alarm').count()).toBe(1);
    expect(await page.getByText(/typical adult at work.*Not a medical statement/).count()).toBe(1);
    expect(await page.getByText(/measured \d+ % of the time|nothing was measured/).count()).toBeGreaterThan(
      0,
    );
  });

  it('takes how the shop stands at one press, and an own word for it', async () => {
    const { page } = await open();
    await page.getByText('Nobody has said').waitFor();
    const door = page.getByRole('button', { name: 'door open' });
    await door.click();
    await expect.poll(() => door.getAttribute('aria-pressed')).toBe('true');
    await page.getByLabel('Something else').fill('skylight up');
    await page.getByRole('button', { name: 'Add' }).click();
    await expect
      .poll(async () => (await hub.api('GET', 'air')).ventilation.tags, PATIENT)
      .toEqual(['door open', 'skylight up']);
    await page.getByRole('button', { name: 'All shut' }).click();
    await expect.poll(async () => (await hub.api('GET', 'air')).ventilation.tags, PATIENT).toEqual([]);
  });

  it('has no fault by WCAG 2.2 AA that axe finds, day and night, and fits a phone in width', async () => {
    const { page } = await open();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await accessFaults(page)).toEqual([]);
    }
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await fitsWidth(page)).toBe(true);
  });

  it('reads the curve by keyboard', async () => {
    const { page } = await open();
    const chart = page.getByRole('slider');
    await chart.focus();
    await page.keyboard.press('ArrowLeft');
    await expect
      .poll(() => chart.getAttribute('aria-valuetext'))
      .toMatch(/\d\d:\d\d: (\d+ ppm|not measured)/);
  });

  it('says in place what the hub did not answer, and still shows the reading of the feed', async () => {
    const page = await browser.context.newPage();
    await page.route('**/api/v1/air', (route) => route.abort());
    await page.goto(`${hub.wallUrl}#/air`);
    await page.getByText('Code: hub-unreachable').waitFor();
    await expect.poll(() => page.locator('.air-plate').first().textContent()).toContain('12 ppm');
    expect(await page.getByText('Against the limits').count()).toBe(0);
    await page.close();
    browser.complaints.length = 0;
  });

  it('says in Setup whose limits they are, in which edition, and keeps another choice', async () => {
    const page = await browser.open(`${hub.wallUrl}#/setup/limits`);
    await page.getByRole('cell', { name: 'TRGS 900, January 2024', exact: true }).waitFor();
    await page.getByLabel('Limits of').selectOption('osha');
    await page.getByRole('cell', { name: '29 CFR 1910.1000 Table Z-1' }).waitFor();
    expect(await page.getByLabel('How hard the work is').locator('option[value="rest"]').count()).toBe(0);
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    expect((await hub.api('GET', 'air')).profile).toBe('osha');
  });

  it('is blind aloud when nobody measures, and keeps no figure as if it were of now', async () => {
    const { page } = await open();
    const channels: { id: string; name: string }[] = await hub.api('GET', 'channels');
    const co = channels.find(({ name }) => name === 'co');
    await hub.api('DELETE', `channels/${co?.id}`);
    await page.getByText('NOBODY WATCHES').waitFor();
    expect(await page.locator('.air-plate').count()).toBe(1);
    expect(await accessFaults(page)).toEqual([]);
  });
});
