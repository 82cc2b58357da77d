import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { BenchNode, furnishShop } from './bench-node.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let node: BenchNode;
let browser: TestBrowser;
let firingId: string;
const MINUTE = 60_000;

/** The heat of a step as a shop plans it: up, hold for 25 minutes, out into still air. */
const SEGMENTS = [
  { kind: 'ramp', targetCelsius: 905, toleranceCelsius: 15 },
  { kind: 'soak', targetCelsius: 905, toleranceCelsius: 15, durationSeconds: 1500 },
  { kind: 'cool', targetCelsius: 300, medium: 'still-air' },
];

async function piece(mark: string, grade: string, thicknessMm: number) {
  const made = await hub.api('POST', 'pieces', {
    mark,
    steel: { grade },
    section: { shape: 'plate', thicknessMm, massKilograms: null },
    route: [{ kind: 'heat', step: 'normalise' }],
  });
  return { pieceId: made.id, routeStepId: made.route[0].id };
}

/** Two hours that are over: a knife, a bar and a thick block in one oven, and carbon monoxide in the room. */
async function recordFiring(): Promise<string> {
  const { ovenId } = await furnishShop(hub);
  const schedule = await hub.api('POST', 'schedules', { name: 'Normalise 905', segments: SEGMENTS });
  const pieces = [
    await piece('KNIFE-6', '1095', 6),
    await piece('BAR-20', '1045', 20),
    await piece('BLOCK-90', '1045', 90),
  ];
  for (const mark of ['A-1', 'A-2', 'A-3', 'A-4', 'A-5']) pieces.push(await piece(mark, '1084', 12));
  const endedAt = Math.floor(Date.now() / 1000) * 1000 - MINUTE;
  const startedAt = endedAt - 120 * MINUTE;
  const pack = [];
  for (let at = startedAt; at <= endedAt; at += 10_000) {
    const minute = (at - startedAt) / MINUTE;
    pack.push({ n: 'oven', u: 'Cel', t: at / 1000, v: Math.min(905, 30 + minute * 20) });
    pack.push({ n: 'co', u: '[ppm]', t: at / 1000, v: minute > 30 && minute < 50 ? 22 : 6 });
  }
  await node.backfill(pack);
  const confirmations = [{ segment: 1, at: startedAt + 110 * MINUTE }];
  const draft = { furnaceId: ovenId, scheduleId: schedule.id, startedAt, endedAt, confirmations, pieces };
  const { id } = await hub.api('POST', 'firings', { ...draft, title: 'Three sections' });
  for (let note = 1; note <= 10; note += 1) {
    const text = `${note}. Turned the bar, drew it forward, and put the block further back where it is hotter`;
    await hub.api('POST', `firings/${id}/notes`, { text, by: 'Kim' });
  }
  return id;
}

/** Pages of a printed file: one object each. */
function pagesOf(pdf: Buffer): number {
  return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? []).length;
}

async function addByHand(page: Page, mark: string, thicknessMm: string): Promise<void> {
  await page.goto(`${hub.wallUrl}#/pieces`);
  await page.getByRole('button', { name: 'Add a piece' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Mark', { exact: true }).fill(mark);
  await dialog.getByLabel('Steel', { exact: true }).fill('1045');
  await dialog.getByRole('button', { name: 'Take 1045' }).click();
  await dialog.getByLabel('Thickness').fill(thicknessMm);
  await dialog.getByRole('button', { name: 'Add the piece' }).click();
  await page.getByRole('heading', { level: 1, name: mark }).waitFor();
}

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  node = await BenchNode.connect(hub);
  firingId = await recordFiring();
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await node.leave();
  await hub.stop();
  folder.remove();
});

const address = (): string => `${hub.wallUrl}#/firings/${firingId}`;

describe('the record of a load', () => {
  it('shows each with its verdict and its reason, and leads to the piece', async () => {
    const page = await browser.open(address());
    const cards = page.locator('.piece-finding');
    await cards.first().waitFor();
    expect(await cards.count()).toBe(8);
    const block = cards.filter({ hasText: 'BLOCK-90' });
    expect(await block.getByText('Not met').count()).toBe(1);
    expect(await cards.filter({ hasText: 'BAR-20' }).getByText('Not met').count()).toBe(0);
    expect(await block.locator('.piece-why').textContent()).toMatch(/Its middle|Held at/);
    await block.getByRole('link', { name: 'BLOCK-90' }).click();
    await page.waitForURL(/#\/pieces\//);
    expect(browser.complaints).toEqual([]);
  });

  it('draws the computed middles as vectors on paper', async () => {
    const page = await browser.open(address());
    const cores = page.locator('.paper-core');
    await expect.poll(() => cores.count()).toBe(2);
    expect((await cores.first().getAttribute('d'))?.length ?? 0).toBeGreaterThan(200);
  });

  it.each(['A4', 'Letter'])('prints on at most two pages of %s', async (format) => {
    const page = await browser.open(address());
    await page.locator('.paper-core').first().waitFor({ state: 'attached' });
    const drawn = page.locator('.paper-watched').first();
    await expect.poll(async () => (await drawn.getAttribute('d'))?.length ?? 0).toBeGreaterThan(200);
    const pages = pagesOf(await page.pdf({ format, printBackground: true }));
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(2);
  });

  it('has no fault by WCAG 2.2 AA that axe finds, day and night, and fits a phone in width', async () => {
    for (const scheme of ['light', 'dark'] as const) {
      const page = await browser.open(address());
      await page.emulateMedia({ colorScheme: scheme });
      await page.locator('.piece-finding details').first().waitFor();
      for (const more of await page.locator('.piece-finding summary').all()) await more.click();
      expect(await accessFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await fitsWidth(page)).toBe(true);
    }
  });
});

describe('from adding pieces to a printed record', () => {
  it('two pieces are added, go through one firing, and the paper says of each what came of it', async () => {
    const page = await browser.open(`${hub.wallUrl}#/pieces`);
    await addByHand(page, 'THIN-6', '6');
    await addByHand(page, 'THICK-90', '90');
    const { pieces } = await hub.api('GET', 'pieces?limit=2');
    const load = pieces.map(({ id }: { id: string }) => ({ pieceId: id }));
    const { id, furnaceId, schedule, startedAt, endedAt } = await hub.api('GET', `firings/${firingId}`);
    expect(id).toBe(firingId);
    const confirmations = [{ segment: 1, at: startedAt + 110 * MINUTE }];
    const draft = { furnaceId, scheduleId: schedule.id, startedAt, endedAt, confirmations, pieces: load };
    await hub.api('POST', 'firings', { ...draft, title: 'Two of mine' });

    await page.goto(`${hub.wallUrl}#/pieces/by-mark/THICK-90`);
    await page.getByRole('link', { name: 'Two of mine' }).click();
    const cards = page.locator('.piece-finding');
    await expect.poll(() => cards.count()).toBe(2);
    expect(await cards.filter({ hasText: 'THICK-90' }).getByText('Not met').count()).toBe(1);
    await page.locator('.paper-core').first().waitFor({ state: 'attached' });
    await page.emulateMedia({ media: 'print' });
    for (const mark of ['THIN-6', 'THICK-90']) {
      expect(await page.getByText(mark).and(page.locator(':visible')).count()).toBeGreaterThan(0);
    }
    const pages = pagesOf(await page.pdf({ format: 'A4', printBackground: true }));
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(2);
  });
});
