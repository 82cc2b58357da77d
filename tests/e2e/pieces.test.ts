import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let browser: TestBrowser;
const PHONE = { width: 390, height: 844 };
const DESK = { width: 1920, height: 1080 };

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  const oven = await hub.api('POST', 'furnaces', {
    name: 'Oven',
    kind: 'electric-oven',
    ratedCelsius: 1150,
  });
  await hub.api('POST', 'channels', {
    node: 'oven-node',
    name: 'chamber',
    quantity: 'temperature',
    furnaceId: oven.id,
    role: 'chamber',
  });
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await hub.stop();
  folder.remove();
});

/** The answers of a real hub, on a machine that does other things too. */
const PATIENT = { timeout: 20_000 };

async function open(hash: string, size = PHONE): Promise<Page> {
  const page = await browser.open(`${hub.wallUrl}#/${hash}`, size);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return page;
}

async function addPiece(mark: string, more: object = {}): Promise<{ id: string; route: { id: string }[] }> {
  return await hub.api('POST', 'pieces', {
    mark,
    title: 'Chisel',
    steel: { grade: '1084' },
    section: { shape: 'bar', thicknessMm: 12 },
    ...more,
  });
}

const addInDialog = async (page: Page, mark: string): Promise<void> => {
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Mark', { exact: true }).fill(mark);
  await dialog.getByLabel('What it is').fill('Cold chisel');
  await dialog.getByLabel('Steel', { exact: true }).fill('5160');
  await dialog.getByRole('button', { name: 'Take 5160' }).click();
  await dialog.getByLabel('Thickness').fill('12');
  await dialog.getByLabel('Route').selectOption('Tool from annealed bar');
  await dialog.getByRole('button', { name: 'Add the piece' }).click();
};

describe('a piece, on a telephone', () => {
  it('is added, ticked, measured, and tells it all in its history', async () => {
    const page = await open('pieces');
    await page.getByRole('button', { name: 'Add a piece' }).click();
    await addInDialog(page, 'CC1');
    await page.getByRole('heading', { level: 1, name: 'CC1' }).waitFor();

    const route = page.getByRole('region', { name: 'Route' });
    await route.getByText('Leave extra steel at a thin tip').waitFor();
    await route.getByRole('button', { name: 'Tick Shape as done' }).click();
    await route.getByText('1 step behind it').waitFor();
    await route.getByRole('button', { name: 'Skip Stamp' }).click();
    await route.getByText('2 steps behind it').click();
    await route.getByText(/^skipped, /).waitFor();

    const seeing = page.getByRole('region', { name: 'Note what you see' });
    await seeing.getByRole('button', { name: 'Hardness' }).click();
    await seeing.getByLabel('Reading 1', { exact: true }).fill('615');
    await seeing.getByRole('button', { name: 'Note it' }).click();
    await seeing.getByText(/615 HRC cannot be/).waitFor();
    await seeing.getByLabel('Reading 1', { exact: true }).fill('61,5');
    await seeing.getByLabel('Where 1', { exact: true }).fill('edge');
    await seeing.getByLabel('Reading 2', { exact: true }).fill('60');
    await seeing.getByRole('button', { name: 'Note it' }).click();
    const history = page.getByRole('region', { name: 'History' });
    // (61.5 + 60) / 2 = 60.75.
    await history.getByText('61.5 (edge), 60 HRC: mean 60.8 HRC, from 60 to 61.5, 2 readings').waitFor();
    expect(await fitsWidth(page)).toBe(true);
    expect(await accessFaults(page)).toEqual([]);
    expect(browser.complaints).toEqual([]);
  });

  it('is offered the next mark, and a mark that is taken is refused beside its field', async () => {
    await addPiece('AB-09');
    const page = await open('pieces');
    await page.getByRole('button', { name: 'Add a piece' }).click();
    const dialog = page.getByRole('dialog');
    await expect.poll(() => dialog.getByLabel('Mark', { exact: true }).inputValue()).toBe('AB-10');
    await addInDialog(page, 'ab-09');
    await page.locator('.field-wrong', { hasText: 'the mark ab-09 is on another piece' }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(await fitsWidth(page)).toBe(true);
    // The browser itself reports the refused request; nothing else may.
    expect(browser.complaints.splice(0).every((line) => line.includes('409'))).toBe(true);
  });

  it('takes a magnet in one tap, a file, a crack and a photo', async () => {
    const { id } = await addPiece('M1');
    const page = await open(`pieces/${id}`);
    const seeing = page.getByRole('region', { name: 'Note what you see' });
    const history = page.getByRole('region', { name: 'History' });
    await seeing.getByRole('button', { name: 'Magnet let go' }).click();
    await seeing.getByRole('button', { name: 'Let go now, in Oven' }).click();
    await history.getByText('No fresh reading of the furnace').waitFor();
    await seeing.getByRole('button', { name: 'File test' }).click();
    await seeing.getByRole('button', { name: 'File skates: hard' }).click();
    await history.getByText('File skates: hard').waitFor();
    await seeing.getByRole('button', { name: 'Photo or file' }).click();
    const buffer = readFileSync('dashboard/public/wall.png');
    await seeing
      .getByLabel('Photo or file')
      .setInputFiles({ name: 'edge.png', mimeType: 'image/png', buffer });
    await seeing.getByRole('button', { name: 'Attach it' }).click();
    const photo = history.getByRole('img', { name: 'Photo: edge.png' });
    await photo.scrollIntoViewIfNeeded();
    await expect.poll(() => photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0);
    await history.getByRole('button', { name: 'Delete: File skates: hard' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Delete' }).click();
    await expect.poll(() => history.getByText('File skates: hard').count()).toBe(0);
    expect(await fitsWidth(page)).toBe(true);
    expect(browser.complaints).toEqual([]);
  });

  it('is found by its mark, as its label says, until it is put away', async () => {
    const { id } = await addPiece('LB-1');
    const page = await open('pieces/by-mark/lb-1');
    await page.getByRole('heading', { level: 1, name: 'LB-1' }).waitFor();
    await page.getByRole('link', { name: 'Label' }).click();
    const address = `${hub.wallUrl}#/pieces/by-mark/LB-1`;
    await page.getByRole('img', { name: `QR code of ${address}` }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await page.goto(`${hub.wallUrl}#/pieces/${id}`);
    await page.getByRole('button', { name: 'Put away' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Put away' }).click();
    await page.getByText('This piece is put away.').waitFor();
    await page.goto(`${hub.wallUrl}#/pieces`);
    await page.getByRole('heading', { level: 1, name: 'Pieces' }).waitFor();
    await page.getByLabel('Search').fill('lb-1');
    await page.getByText('No piece fits.').waitFor();
    await page.getByLabel('Show').selectOption('put away');
    await page.getByRole('link', { name: /LB-1/ }).waitFor();
  });

  it('prints its label on a page of the size of the label', async () => {
    const { id } = await addPiece('PR-1');
    const page = await open(`pieces/${id}/label`);
    await page.getByRole('img', { name: /^QR code/ }).waitFor();
    const boxOf = async () =>
      /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(
        (await page.pdf({ preferCSSPageSize: true })).toString('latin1'),
      );
    const points = (mm: number) => (mm / 25.4) * 72;
    const [, width, height] = (await boxOf()) ?? [];
    expect(Number(width)).toBeCloseTo(points(62), -0.5);
    expect(Number(height)).toBeCloseTo(points(29), -0.5);
    await page.getByLabel('Size').selectOption('A6 sheet');
    expect(await fitsWidth(page)).toBe(true);
    const [, sheetWidth, sheetHeight] = (await boxOf()) ?? [];
    // ISO 216: A6 is 105 mm by 148 mm.
    expect(Number(sheetWidth)).toBeCloseTo(points(105), -0.5);
    expect(Number(sheetHeight)).toBeCloseTo(points(148), -0.5);
  });
});

describe('the bench', () => {
  it('proposes a firing, makes its schedule from the steel, and starts it once its faults were read', async () => {
    const route = [{ kind: 'heat', step: 'normalise' }];
    for (const mark of ['BN1', 'BN2']) await addPiece(mark, { route });
    const page = await open('bench', DESK);
    const batch = page.locator('.batch', { hasText: 'BN1' });
    await batch.getByRole('link', { name: 'BN2' }).waitFor();
    if (!(await batch.getByText(/suits all of them/).isVisible())) await batch.getByText('Why').click();
    await batch.getByText(/suits all of them/).waitFor();
    await batch.getByRole('button', { name: /^Make a schedule/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Name').fill('Normalise the chisels');
    await dialog.getByRole('button', { name: 'Keep this schedule' }).click();
    await batch.getByText('Schedule: Normalise the chisels').waitFor(PATIENT);

    await batch.getByRole('button', { name: /^Look and start/ }).click();
    await dialog.getByText('What speaks against it').waitFor();
    const start = dialog.getByRole('button', { name: 'Start now' });
    await start.waitFor();
    const sure = dialog.getByLabel('I have read this and start all the same');
    if ((await sure.count()) > 0) {
      expect(await start.isDisabled()).toBe(true);
      await sure.check();
    }
    expect(await accessFaults(page)).toEqual([]);
    await start.click();
    await expect.poll(async () => (await hub.api('GET', 'firings')).length, PATIENT).toBe(1);
    const [firing] = await hub.api('GET', 'firings');
    expect(firing.marks).toEqual(['BN1', 'BN2']);
    await page.goto(`${hub.wallUrl}#/bench`);
    await page.getByText('in the fire now').first().waitFor();
  });

  it('turns its temperatures into °F', async () => {
    await addPiece('FH1', { route: [{ kind: 'heat', step: 'normalise' }] });
    const page = await open('bench');
    await page
      .getByText(/\d °C to \d+ °C, by its steel/)
      .first()
      .waitFor();
    await page.getByLabel('Temperatures in').selectOption('°F');
    await page
      .getByText(/\d °F to \d+ °F, by its steel/)
      .first()
      .waitFor();
  });
});

describe('the routes', () => {
  it('are written, put in order with buttons, and offered to the next piece', async () => {
    const page = await open('routes/new');
    await page.getByLabel('Name').fill('Punch');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.locator('.field-error').first().waitFor();
    await page.getByRole('button', { name: 'Add a heat' }).click();
    await page.getByRole('button', { name: 'Add a check' }).click();
    await page.getByRole('button', { name: 'Move step 2 up' }).click();
    expect(await accessFaults(page)).toEqual([]);
    expect(await fitsWidth(page)).toBe(true);
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByRole('heading', { level: 1, name: 'Routes' }).waitFor();
    await page.getByRole('link', { name: 'Punch', exact: true }).waitFor();
    const templates: { name: string; steps: { kind: string }[] }[] = await hub.api('GET', 'route-templates');
    const punch = templates.find(({ name }) => name === 'Punch');
    expect(punch?.steps.map(({ kind }) => kind)).toEqual(['check', 'heat']);
  });
});

describe.each(['bench', 'pieces', 'routes', 'routes/new'])('the page %s', (hash) => {
  it.each([PHONE, DESK])('fits $width px, and axe finds no fault by day or night', async (size) => {
    const page = await open(hash, size);
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      expect(await accessFaults(page)).toEqual([]);
    }
    expect(await fitsWidth(page)).toBe(true);
  });
});
