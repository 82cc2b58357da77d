import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
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

/** A firing of an hour that is over, its readings handed in afterwards as from a node that had buffered. */
async function recordFiring(): Promise<string> {
  const { forgeId, scheduleId } = await furnishShop(hub);
  const endedAt = Math.floor(Date.now() / 1000) * 1000 - MINUTE;
  const startedAt = endedAt - 60 * MINUTE;
  const celsius = (minute: number): number => (minute < 30 ? 60 + minute * 27 : minute < 33 ? 884 : 861);
  const pack = [];
  for (let at = startedAt; at <= endedAt; at += 10_000) {
    pack.push({ n: 'forge', u: 'Cel', t: at / 1000, v: celsius((at - startedAt) / MINUTE) });
  }
  await node.backfill(pack);
  const confirmations = [{ segment: 2, at: endedAt }];
  const title = '=Chisels, "first" batch';
  const firing = await hub.api('POST', 'firings', {
    furnaceId: forgeId,
    scheduleId,
    title,
    startedAt,
    endedAt,
    confirmations,
  });
  await hub.api('POST', `firings/${firing.id}/notes`, { text: '<b>scale</b> on one', by: 'Kim' });
  return firing.id;
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

describe('a firing reviewed', () => {
  it('is found in the list with its verdict, and opens with chart, segments and notes', async () => {
    const page = await browser.open(`${hub.wallUrl}#/firings`);
    const row = page.getByRole('row', { name: /Chisels/ });
    await row.waitFor();
    expect(await row.textContent()).toContain('Not met');
    await page
      .getByRole('link', { name: /Chisels/ })
      .first()
      .click();
    await page.locator('canvas').first().waitFor();
    await page.getByText('<b>scale</b> on one').filter({ visible: true }).first().waitFor();
    const segments = page.getByRole('table', { name: /Segments/ }).first();
    expect(await segments.getByRole('row').count()).toBe(4);
    expect(browser.complaints).toEqual([]);
  });

  it('keeps a note that is added', async () => {
    const page = await browser.open(`${hub.wallUrl}#/firings/${firingId}`);
    await page.getByLabel('New note').fill('hard enough for a file');
    await page.getByRole('button', { name: 'Add the note' }).click();
    await page.getByText('hard enough for a file').filter({ visible: true }).first().waitFor();
    const notes: { text: string }[] = await hub.api('GET', `firings/${firingId}/notes`);
    expect(notes.map((note) => note.text)).toContain('hard enough for a file');
  });

  it('zooms and reads values by keyboard, and gives the whole firing back', async () => {
    const page = await browser.open(`${hub.wallUrl}#/firings/${firingId}`);
    await page.locator('canvas').first().waitFor();
    const chart = page.getByRole('slider');
    const span = async (): Promise<number> =>
      Number(await chart.getAttribute('aria-valuemax')) - Number(await chart.getAttribute('aria-valuemin'));
    await expect.poll(span).toBeGreaterThan(59 * MINUTE);
    const whole = await span();
    await chart.focus();
    await page.keyboard.press('+');
    await expect.poll(span).toBeCloseTo(whole / 2, -3);
    await page.keyboard.press('ArrowRight');
    // The steel stands at 861 °C for most of the hour, and the cursor says what the curve says there.
    await expect.poll(() => chart.getAttribute('aria-valuetext')).toMatch(/Forge chamber.*\d{3} °C/);
    await page.getByRole('button', { name: 'Whole firing' }).click();
    await expect.poll(span).toBe(whole);
    expect(browser.complaints).toEqual([]);
  });

  it('exports every reading as CSV and the whole record as JSON', async () => {
    const page = await browser.open(`${hub.wallUrl}#/firings/${firingId}`);
    const csvLink = page.getByRole('link', { name: /^CSV/ }).first();
    await csvLink.waitFor();
    const address = new URL((await csvLink.getAttribute('href')) ?? '', hub.wallUrl);
    const csv = await (await fetch(address)).text();
    expect(csv.split('\r\n')).toHaveLength(1 + 361 + 1);
    const jsonLink = page.getByRole('link', { name: /^JSON/ }).first();
    const record = await (
      await fetch(new URL((await jsonLink.getAttribute('href')) ?? '', hub.wallUrl))
    ).json();
    expect(record).toMatchObject({ format: 'soakwatch-firing-record', firing: { id: firingId } });
  });

  it.each(['A4', 'Letter'])('prints on at most two pages of %s', async (format) => {
    const page = await browser.open(`${hub.wallUrl}#/firings/${firingId}`);
    await page.locator('canvas').first().waitFor();
    // On paper the measured curve must be there, not only the plan: its path is long once the readings have come.
    const drawn = page.locator('.paper-watched').first();
    await expect.poll(async () => (await drawn.getAttribute('d'))?.length ?? 0).toBeGreaterThan(200);
    const pdf = await page.pdf({ format, printBackground: true });
    const kept = process.env.SOAKWATCH_KEEP_PDF;
    if (kept) writeFileSync(join(kept, `firing-${format}.pdf`), pdf);
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.length).toBeLessThanOrEqual(2);
  });

  it.each(['firings', 'schedules', 'schedules/new', 'setup', 'setup/channels', 'setup/limits'])(
    'has no fault by WCAG 2.2 AA that axe finds on #/%s, and fits a phone in width',
    async (view) => {
      const page = await browser.open(`${hub.wallUrl}#/${view}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      expect(await accessFaults(page)).toEqual([]);
      await page.setViewportSize({ width: 390, height: 844 });
      expect(await fitsWidth(page)).toBe(true);
    },
  );

  it('has no fault that axe finds on the page of a firing, day and night', async () => {
    for (const scheme of ['light', 'dark'] as const) {
      const page = await browser.open(`${hub.wallUrl}#/firings/${firingId}`);
      await page.emulateMedia({ colorScheme: scheme });
      await page.locator('canvas').first().waitFor();
      expect(await accessFaults(page)).toEqual([]);
    }
  });
});

describe('a schedule written by hand', () => {
  it('draws its curve while it is written, says what is wrong where it is, and is kept', async () => {
    const page = await browser.open(`${hub.wallUrl}#/schedules/new`);
    await page.getByLabel('Name').fill('Temper 200');
    const ramp = page.getByRole('group', { name: /Segment 1/ });
    if ((await ramp.count()) === 0) await page.getByRole('button', { name: 'Add a ramp' }).click();
    await ramp.getByLabel('Target').fill('200');
    await page.getByRole('button', { name: 'Add a soak' }).click();
    const soak = page.getByRole('group', { name: /soak/i }).last();
    await soak.getByLabel('Hold at').fill('900');
    await soak.getByLabel('Time inside tolerance').fill('2:00');
    await page.getByRole('button', { name: 'Save as version 1' }).click();
    await page
      .getByText(/does not follow|put a ramp/)
      .first()
      .waitFor();
    await soak.getByLabel('Hold at').fill('200');
    await page.locator('canvas').first().waitFor();
    await page.getByRole('button', { name: 'Save as version 1' }).click();
    await expect
      .poll(async () => (await hub.api('GET', 'schedules')).map((s: { name: string }) => s.name))
      .toContain('Temper 200');
    const made = (await hub.api('GET', 'schedules')).find((s: { name: string }) => s.name === 'Temper 200');
    expect(made.segments).toMatchObject([
      { kind: 'ramp', targetCelsius: 200 },
      { kind: 'soak', targetCelsius: 200, durationSeconds: 7200 },
    ]);
  });
});
