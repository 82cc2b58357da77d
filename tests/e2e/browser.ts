import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import { type BrowserContext, chromium, type Page } from 'playwright-core';

/** Debian's Chromium, without anything that would reach beyond this machine. */
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

export interface TestBrowser {
  readonly context: BrowserContext;
  /** What pages complained of: a refused script or style shows here. */
  readonly complaints: string[];
  open(url: string, size?: { width: number; height: number }): Promise<Page>;
  close(): Promise<void>;
}

export async function openBrowser(colorScheme: 'light' | 'dark' = 'dark'): Promise<TestBrowser> {
  const profile = mkdtempSync(join(tmpdir(), 'soakwatch-browser-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: '/usr/bin/chromium',
    args: FLAGS,
    colorScheme,
    viewport: { width: 1920, height: 1080 },
    reducedMotion: 'reduce',
  });
  const complaints: string[] = [];
  context.on('weberror', (fault) => complaints.push(String(fault.error())));
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  return {
    context,
    complaints,
    async open(url, size) {
      const page = await context.newPage();
      if (size) await page.setViewportSize(size);
      await page.goto(url);
      return page;
    },
    async close() {
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
}

/** Faults by WCAG 2.2 A and AA, each with where it stands; empty when there are none. */
export async function accessFaults(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page })
    .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'])
    .analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')}: ${node.failureSummary ?? ''}`),
  );
}

/** True when nothing sticks out of the page sideways. */
export function fitsWidth(page: Page): Promise<boolean> {
  return page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);
}
