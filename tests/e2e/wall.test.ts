import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { BenchNode, furnishShop } from './bench-node.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let node: BenchNode;
let browser: TestBrowser;

beforeEach(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  await furnishShop(hub);
  node = await BenchNode.connect(hub);
  await node.set('forge', 845);
  await node.set('oven', 24);
  await node.set('co', 3, 'ppm');
  browser = await openBrowser();
});
afterEach(async () => {
  await browser.close();
  await node.leave();
  await hub.stop();
  folder.remove();
});

const lane = (page: Page, name: string) =>
  page
    .getByRole('region', { name })
    .or(page.locator('section', { hasText: name }))
    .first();

async function startFiring(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Start a firing in Gas forge' }).click();
  await page.getByRole('button', { name: 'Anneal 860' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Start', exact: true }).click();
}

describe('the wall', () => {
  it('starts a firing in three presses, follows it, and finishes it', async () => {
    const page = await browser.open(hub.wallUrl);
    await startFiring(page);
    await page.getByText(/^Hold: /).waitFor();
    await node.set('forge', 852);
    await page.getByText('852', { exact: false }).first().waitFor();
    expect(await page.getByText(/soak clock/).count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: 'Finish', exact: true }).click();
    await page.getByRole('button', { name: 'Finish it' }).click();
    await page.getByRole('button', { name: 'Start a firing in Gas forge' }).waitFor();
    expect(await hub.api('GET', 'firings')).toEqual([expect.objectContaining({ status: 'finished' })]);
    expect(browser.complaints).toEqual([]);
  });

  it('shows danger in words and shape, and one press acknowledges it', async () => {
    const page = await browser.open(hub.wallUrl);
    await startFiring(page);
    await page.getByText(/^Hold: /).waitFor();
    await node.set('co', 85, 'ppm');
    const banner = page.getByRole('region', { name: 'Alarms' });
    await banner
      .getByText(/85 ppm/)
      .first()
      .waitFor();
    expect(await banner.locator('svg').count()).toBeGreaterThan(0);
    // The first limit's alarm follows a moment later and is a second alarm of its own: this press is for this one.
    const press = banner.getByRole('button', { name: 'Acknowledge: Carbon monoxide above the second limit' });
    await press.click();
    await press.waitFor({ state: 'detached' });
    const alarms: { kind: string; state: string; acknowledgedBy: string | null; guidance: string[] }[] =
      await hub.api('GET', 'alarms?state=open');
    const danger = alarms.filter((alarm) => alarm.kind === 'unsafe-air-second');
    expect(danger).toEqual([expect.objectContaining({ state: 'acknowledged', acknowledgedBy: 'wall' })]);
    expect(alarms.every((alarm) => alarm.guidance.length > 2)).toBe(true);
  });

  it('holds the next move and the temperature at twenty minutes of arc for the screen that is set', async () => {
    const page = await browser.open(hub.wallUrl);
    await startFiring(page);
    await page.getByText(/^Hold: /).waitFor();
    // 43 inch at 1920 px wide has a pixel pitch of 0.496 mm; 20' at 5 m is a cap height of 29.09 mm = 59 px
    // (NUREG-0700 rev. 2, 1.3.1-4). The cap height is measured off the font, not taken from its size.
    const heights = await page.evaluate(() => {
      const capHeight = (element: Element): number => {
        const context = document.createElement('canvas').getContext('2d');
        const style = getComputedStyle(element);
        if (!context) return 0;
        context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
        return context.measureText('H').actualBoundingBoxAscent;
      };
      const biggest = [...document.querySelectorAll('main *')].filter(
        (element) =>
          element.childElementCount === 0 && /^(Hold: |845$)/.test(element.textContent?.trim() ?? ''),
      );
      return biggest.map(capHeight);
    });
    expect(heights.length).toBeGreaterThanOrEqual(2);
    for (const height of heights) expect(height).toBeGreaterThanOrEqual(58.5);
  });

  it('gives gloves targets of twenty millimetres', async () => {
    const page = await browser.open(hub.wallUrl);
    await startFiring(page);
    const finish = page.getByRole('button', { name: 'Finish', exact: true });
    await finish.waitFor();
    const box = await finish.boundingBox();
    // 20 mm at 0.496 mm a pixel: 40.3 px.
    expect(box?.height ?? 0).toBeGreaterThanOrEqual(40);
    expect(box?.width ?? 0).toBeGreaterThanOrEqual(40);
  });

  it('does not scroll on the wall, and fits a phone in width', async () => {
    const wall = await browser.open(hub.wallUrl);
    await startFiring(wall);
    await wall.getByText(/^Hold: /).waitFor();
    const scrolls = await wall.evaluate(() => document.documentElement.scrollHeight > window.innerHeight + 1);
    expect(scrolls).toBe(false);
    const phone = await browser.open(hub.wallUrl, { width: 390, height: 844 });
    await phone.getByText(/^Hold: /).waitFor();
    expect(await fitsWidth(phone)).toBe(true);
    expect(await lane(phone, 'Oven').count()).toBeGreaterThan(0);
  });

  it('covers the top of the screen and greys its values when the hub is gone, and comes back', async () => {
    const page = await browser.open(hub.wallUrl);
    await page.getByText('845', { exact: false }).first().waitFor();
    const ports = ['--http-port', new URL(hub.wallUrl).port, '--mqtt-port', String(hub.mqttPort)];
    await hub.stop();
    // The wall has five seconds to say so (and then the watch of this test some more for a busy machine).
    await page.getByText('NOT CONNECTED').waitFor({ timeout: 15_000 });
    expect(await page.getByText('Nothing on this screen is current').count()).toBeGreaterThan(0);
    const band = await page.getByRole('alert').filter({ hasText: 'NOT CONNECTED' }).boundingBox();
    expect(band?.y ?? 999).toBeLessThan(5);
    expect(band?.width ?? 0).toBeGreaterThan(1900);
    const struck = await page.evaluate(() => {
      const isStruck = (element: Element | null): boolean =>
        element !== null &&
        (getComputedStyle(element).textDecorationLine.includes('line-through') ||
          isStruck(element.parentElement));
      const values = [...document.querySelectorAll('main *')].filter(
        (element) =>
          element.childElementCount === 0 && /^(845|24|3)( |$)/.test(element.textContent?.trim() ?? ''),
      );
      return values.map(isStruck);
    });
    expect(struck.length).toBeGreaterThan(2);
    expect(struck).not.toContain(false);
    hub = await realHub(folder.path, ports);
    await page.getByText('NOT CONNECTED').waitFor({ state: 'detached', timeout: 45_000 });
    await node.set('forge', 851);
    await page.getByText('851', { exact: false }).first().waitFor();
  });

  it.each(['light', 'dark'] as const)('has no fault by WCAG 2.2 AA that axe finds (%s)', async (scheme) => {
    await browser.close();
    browser = await openBrowser(scheme);
    const page = await browser.open(hub.wallUrl);
    await startFiring(page);
    await page.getByText(/^Hold: /).waitFor();
    await node.set('co', 85, 'ppm');
    await page.getByRole('region', { name: 'Alarms' }).waitFor();
    expect(await accessFaults(page)).toEqual([]);
  });
});
