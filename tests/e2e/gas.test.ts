import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { BenchNode } from './bench-node.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';
import { gasShop } from './gas-shop.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let node: BenchNode;
let browser: TestBrowser;
const PHONE = { width: 390, height: 844 };
const DESK = { width: 1920, height: 1080 };

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  node = await BenchNode.connect(hub);
  await gasShop(hub, node, 5);
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await node.leave();
  await hub.stop();
  folder.remove();
});

describe('the gas page', () => {
  it('shows what is left and for how long as ranges, and what each firing burned', async () => {
    const page = await browser.open(`${hub.wallUrl}#/gas`, DESK);
    await page.getByRole('heading', { name: 'Supply: Forge' }).waitFor();
    // A cell of ten seconds has to be full, and the page to ask again.
    await page.getByText('by the scale,').waitFor({ timeout: 40_000 });
    await page.getByText('0.41 bar').waitFor({ timeout: 40_000 });
    const text = (await page.locator('main').textContent()) ?? '';
    expect(text).toContain('by the scale');
    expect(text).toMatch(/Lasts\d+ h.* to \d+ h/);
    expect(text).toContain('€');
    expect(text).toContain('soapy water');
    expect(text).not.toMatch(/relight|gas is safe[^.]*\byes/i);
    await page.close();
  });

  it('takes a cylinder change by its form, and takes it back', async () => {
    const page = await browser.open(`${hub.wallUrl}#/gas`, DESK);
    await page.getByLabel('Gas on the line').fill('9,1');
    await page.getByRole('button', { name: 'Note it' }).click();
    const row = page.getByRole('row').filter({ hasText: '9.1 kg' });
    await row.waitFor();
    await row.getByRole('button').click();
    await row.waitFor({ state: 'detached' });
    expect(await hub.api('GET', 'gas').then(({ changes }) => changes.length)).toBe(1);
    await page.close();
  });

  it('takes the burner of a furnace in the set-up, and keeps it when the name changes', async () => {
    const page = await browser.open(`${hub.wallUrl}#/setup/furnaces`, DESK);
    await page.getByRole('button', { name: /Edit Forge/ }).click();
    await page.getByLabel('Bore of each jet').fill('1.1');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    const [forge] = await hub.api('GET', 'furnaces');
    expect(forge.gas).toMatchObject({ boreMm: 1.1, lowPascals: 14_000 });
    await page.close();
  });

  it.each([PHONE, DESK])('fits $width px, and axe finds no fault by day or night', async (size) => {
    for (const scheme of ['light', 'dark'] as const) {
      const page = await browser.open(`${hub.wallUrl}#/gas`, size);
      await page.emulateMedia({ colorScheme: scheme });
      await page.getByRole('heading', { name: 'Supply: Forge' }).waitFor();
      expect(await fitsWidth(page)).toBe(true);
      expect(await accessFaults(page)).toEqual([]);
      const shots = process.env.GAS_SHOTS;
      if (shots)
        await page.screenshot({
          path: `${shots}/gas-${size.width}-${scheme}.png`,
          fullPage: size.width < 500,
        });
      await page.close();
    }
  });
});
