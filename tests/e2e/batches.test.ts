import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { type Batch, batchShop } from './batch-shop.ts';
import { BenchNode } from './bench-node.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

const PHONE = { width: 390, height: 844 };
let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let node: BenchNode;
let browser: TestBrowser;
let batch: Batch;

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  node = await BenchNode.connect(hub);
  batch = await batchShop(hub, node, 10, 5);
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await node.leave();
  await hub.stop();
  folder.remove();
});

describe('firings compared', () => {
  it('lie over each other, and a reference is chosen that the others are held against', async () => {
    const page = await browser.open(`${hub.wallUrl}#/compare`);
    await page.locator('canvas').waitFor();
    const table = page.getByRole('table', { name: /Differences in Soak at 830/ });
    await table.waitFor();
    expect(await table.getByRole('row').count()).toBe(7);
    await page.getByRole('button', { name: /Make Batch 3.* the reference/ }).click();
    await page.getByText('In brackets beside a figure').waitFor();
    const reference = await hub.api('GET', `schedules/${batch.scheduleId}/reference`);
    expect(reference.firingId).toBe(batch.firings[2]);
    expect(browser.complaints).toEqual([]);
  });

  it('are read by keyboard, and chosen by their boxes; the address keeps the choice', async () => {
    const page = await browser.open(
      `${hub.wallUrl}#/compare/${batch.scheduleId}/${batch.firings.slice(0, 2).join()}`,
    );
    const chart = page.getByRole('slider');
    await chart.focus();
    for (let press = 0; press < 5; press += 1) await page.keyboard.press('ArrowRight');
    await expect.poll(() => chart.getAttribute('aria-valuetext')).toMatch(/Ramp to 830 °C.*median \d+ °C of/);
    await page.getByRole('checkbox', { name: /Batch 1,/ }).uncheck();
    await expect.poll(() => page.url()).not.toContain(batch.firings[0]);
    expect(page.url()).toContain(batch.firings[1]);
  });

  it('have no fault that axe finds, day and night, and fit a phone', async () => {
    const page = await browser.open(`${hub.wallUrl}#/compare`);
    await page.getByRole('table', { name: /Differences/ }).waitFor();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await accessFaults(page)).toEqual([]);
    }
    await page.setViewportSize(PHONE);
    expect(await fitsWidth(page)).toBe(true);
  });
});

describe('batches', () => {
  it('chart the firings, mark what changed with its shift, and say why there is no capability', async () => {
    const page = await browser.open(`${hub.wallUrl}#/batches`);
    await page.getByRole('img', { name: /Soak mean, °C, firing by firing/ }).waitFor();
    await page.getByText('it wants 25 firings or more').waitFor();
    const changes = page.getByRole('table', { name: 'What changed when' });
    expect(await changes.textContent()).toMatch(
      /New thermocouple type N in place of type K.*\+\d.\d °C.*more than chance/,
    );
    await page.getByLabel('What is charted').selectOption('soak-time');
    await page.getByText('Tolerance of the schedule: at least 10.0 min.').waitFor();
    expect(browser.complaints).toEqual([]);
  });

  it('take a note of a change', async () => {
    const page = await browser.open(`${hub.wallUrl}#/batches`);
    await page.getByText('Note a change').click();
    await page.getByLabel('In your words').fill('relined');
    await page.getByRole('button', { name: 'Note it now' }).click();
    await page.getByText('Noted.').waitFor();
    const noted: { text: string }[] = await hub.api('GET', 'shop-changes');
    expect(noted.map(({ text }) => text)).toContain('relined');
  });

  it('have no fault that axe finds, day and night, and fit a phone', async () => {
    const page = await browser.open(`${hub.wallUrl}#/batches`);
    await page.getByRole('table', { name: 'What changed when' }).waitFor();
    await page.getByText('Note a change').click();
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect(await accessFaults(page)).toEqual([]);
    }
    await page.setViewportSize(PHONE);
    expect(await fitsWidth(page)).toBe(true);
  });
});

describe('the list of firings', () => {
  it('is searched, and its address keeps the search', async () => {
    const page = await browser.open(`${hub.wallUrl}#/firings`);
    await page.getByRole('link', { name: 'Batch 8' }).waitFor();
    await page.getByRole('searchbox').fill('batch 3');
    await expect.poll(() => page.locator('.firing-link').allTextContents()).toEqual(['Batch 3']);
    await expect.poll(() => page.url()).toContain('q=batch+3');
    await page.reload();
    await expect.poll(() => page.locator('.firing-link').allTextContents()).toEqual(['Batch 3']);
    expect(await accessFaults(page)).toEqual([]);
    await page.setViewportSize(PHONE);
    expect(await fitsWidth(page)).toBe(true);
  });
});
