// npm run screenshots [-- URL [FOLDER]]: pictures of a running demonstration. The wall by day goes beside the
// README; the rest, desk and phone, day and night, go into a folder to be looked at.
import { mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { ROOT } from './prepare.mjs';

const base = process.argv[2] ?? 'http://127.0.0.1:7625/';
const folder = process.argv[3] ?? mkdtempSync(join(tmpdir(), 'soakwatch-pictures-'));
mkdirSync(folder, { recursive: true });

const SIZES = { desk: { width: 1920, height: 1080 }, phone: { width: 390, height: 844 } };
const firings = await (await fetch(`${base}api/v1/firings`)).json();
const reviewed = firings.find((firing) => firing.status === 'finished');
const { pieces } = await (await fetch(`${base}api/v1/pieces?limit=1`)).json();
const VIEWS = {
  wall: '',
  bench: '#/bench',
  pieces: '#/pieces',
  ...(pieces[0] ? { piece: `#/pieces/${pieces[0].id}` } : {}),
  firings: '#/firings',
  ...(reviewed ? { firing: `#/firings/${reviewed.id}` } : {}),
  compare: '#/compare',
  batches: '#/batches',
  schedules: '#/schedules',
  steel: '#/steel/1084',
  heat: '#/heat',
  air: '#/air',
  gas: '#/gas',
  alarms: '#/alarms',
  setup: '#/setup',
};
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

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: FLAGS });
for (const scheme of ['light', 'dark']) {
  for (const [size, viewport] of Object.entries(SIZES)) {
    const page = await browser.newPage({ viewport, colorScheme: scheme });
    for (const [view, hash] of Object.entries(VIEWS)) {
      await page.goto('about:blank');
      await page.goto(`${base}${hash}`);
      // The touch that lets the wall sound; then the curves have time to arrive.
      await page.mouse.click(2, 2);
      await page.waitForTimeout(2500);
      await page.screenshot({ path: join(folder, `${view}-${size}-${scheme}.png`) });
      if (view === 'wall' && size === 'desk' && scheme === 'dark') {
        await page.screenshot({ path: join(ROOT, 'dashboard', 'public', 'wall.png') });
      }
    }
    await page.close();
  }
}
await browser.close();
process.stdout.write(`Pictures are in ${folder}, the wall's in dashboard/public/wall.png\n`);
