import type { Request } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let browser: TestBrowser;

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  await hub.api('POST', 'furnaces', { name: 'Oven', kind: 'electric-oven', ratedCelsius: 1150 });
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await hub.stop();
  folder.remove();
});

/** The hub answers some thirty questions in turn, on a machine that does other things too. */
const PATIENT = { timeout: 20_000 };

const open = async () => {
  const page = await browser.open(`${hub.wallUrl}#/heat`);
  const headline = page.locator('.heat-headline');
  await headline.waitFor();
  await page.getByRole('table', { name: 'Every way, read off' }).waitFor();
  const settled = () => expect.poll(() => page.locator('.heat-old').count(), PATIENT).toBe(0);
  await settled();
  return { page, headline, settled };
};

describe('the page on heat in a piece', () => {
  it('answers in a sentence, for thinner and thicker too, and anew in °F', async () => {
    const { page, headline, settled } = await open();
    expect(await headline.textContent()).toMatch(/within 10.°C of 850.°C after about \d+.min/);
    const sections = page.getByRole('table', { name: /other sections/ });
    expect(await sections.getByRole('row').count()).toBe(6);
    await page.getByLabel('Temperatures in').selectOption('[degF]');
    await settled();
    expect(await headline.textContent()).toMatch(/within 18.°F of 1562.°F/);
    expect(await page.getByLabel('Target').inputValue()).toBe('1562');
    expect(browser.complaints).toEqual([]);
  });

  it('reads the curves by keyboard', async () => {
    const { page } = await open();
    const chart = page.getByRole('slider');
    await chart.focus();
    for (let press = 0; press < 5; press += 1) await page.keyboard.press('ArrowRight');
    await expect.poll(() => chart.getAttribute('aria-valuetext')).toMatch(/skin \d+ °C, core \d+ °C/);
  });

  it('never shows a late answer to older figures as the answer to the newest', async () => {
    const { page, headline, settled } = await open();
    let release = () => {};
    const gate = new Promise<void>((resolve) => {
      release = resolve;
    });
    // The last of the questions about 200 mm is that about the sections beside it: once it is answered, all is.
    const isLast = (request: Request) => request.postDataJSON()?.alsoThicknessMm?.includes(400) === true;
    await page.route('**/compute/soak-time', async (route) => {
      if (isLast(route.request()) && route.request().postDataJSON().thicknessMm === 100) await gate;
      await route.continue();
    });
    const held = page.waitForRequest(
      (request) => isLast(request) && request.postDataJSON().thicknessMm === 100,
    );
    await page.getByLabel('Diameter').fill('200');
    await held;
    expect(await page.getByText('is to the figures before').first().isVisible()).toBe(true);
    await page.getByLabel('Diameter').fill('50');
    await settled();
    const newest = await headline.textContent();
    const late = page.waitForResponse((answer) => isLast(answer.request()));
    release();
    await (await late).finished();
    // Two frames: whatever the late answer would change has been drawn by then.
    await page.evaluate(
      () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
    );
    expect(await page.getByText('50 mm').count()).toBeGreaterThan(0);
    expect(await headline.textContent()).toBe(newest);
    expect(await page.locator('.heat-old').count()).toBe(0);
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

  it('says what is wrong beside its field and keeps the older answer marked as older', async () => {
    const { page } = await open();
    await page.getByLabel('Diameter').fill('2500');
    await page
      .getByText(/section is 2.5 m, outside/)
      .first()
      .waitFor();
    expect(await page.getByLabel('Diameter').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('.heat-old').count()).toBeGreaterThan(0);
  });
});
