import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RealHub, realHub, temporaryFolder } from '../hub/real-hub.ts';
import { mailbox } from '../notify/servers.ts';
import { accessFaults, fitsWidth, openBrowser, type TestBrowser } from './browser.ts';

let folder: ReturnType<typeof temporaryFolder>;
let hub: RealHub;
let browser: TestBrowser;
let box: Awaited<ReturnType<typeof mailbox>>;
const PHONE = { width: 390, height: 844 };

beforeAll(async () => {
  folder = temporaryFolder();
  hub = await realHub(folder.path);
  box = await mailbox();
  browser = await openBrowser('light');
});
afterAll(async () => {
  await browser.close();
  await box.close();
  await hub.stop();
  folder.remove();
});

async function openPage(size?: { width: number; height: number }) {
  const page = await browser.open(`${hub.wallUrl}#/setup/notify`, size);
  await page.getByRole('table', { name: 'What was sent' }).waitFor();
  return page;
}

describe('reaching people', () => {
  it('adds a mailbox, shows the hub’s refusals beside their fields, and tests it', async () => {
    const page = await openPage();
    await page.getByText(/does not replace a certified alarm/).waitFor();
    await page.getByRole('button', { name: 'Add e-mail or webhook' }).click();
    const form = page.getByRole('dialog');
    await form.getByLabel('Name').fill('Smith');
    await form.getByLabel('Mail server').fill('127.0.0.1');
    await form.getByLabel('Port').fill(String(box.port));
    await form.getByLabel('Encryption').selectOption('none');
    await form.getByLabel('User').fill('hub');
    await form.getByLabel('From', { exact: true }).first().fill('hub@shop.example');
    await form.getByLabel('To', { exact: true }).first().fill('smith@shop.example');
    await form.getByRole('button', { name: 'Add this way' }).click();
    await page.locator('.field-wrong', { hasText: 'signing in needs a password' }).waitFor();
    await form.getByLabel('User').fill('');
    await form.getByRole('button', { name: 'Add this way' }).click();
    const row = page.getByRole('row', { name: /Smith/ }).first();
    await row.getByText('Never tried: press Test').waitFor();
    await page.getByRole('button', { name: 'Test Smith' }).click();
    await page.getByText(/Smith: The test did not get through: 127.0.0.1 is no public address/).waitFor();
    await row.getByText(/Failed \d/).waitFor();
    await page.getByLabel('Own networks that may be sent to').fill('127.0.0.1');
    await page.getByRole('button', { name: 'Save' }).click();
    await page.getByText('Saved.').waitFor();
    await page.getByRole('button', { name: 'Test Smith' }).click();
    await page.getByText('Smith: The test was taken over by the other side. See that it arrives.').waitFor();
    expect(box.mails).toHaveLength(1);
    expect(box.mails[0]?.text).toContain('Nothing is wrong.');
    expect(await accessFaults(page)).toEqual([]);
  });

  it('fits a phone, page and form, and stands up to axe there', async () => {
    const page = await openPage(PHONE);
    expect(await fitsWidth(page)).toBe(true);
    await page.getByRole('button', { name: 'Add e-mail or webhook' }).click();
    await page.getByLabel('Hours').selectOption('some');
    expect(await fitsWidth(page)).toBe(true);
    expect(await accessFaults(page)).toEqual([]);
  });

  it('has a worker that shows what is pushed, and says something even where the words are broken', async () => {
    await browser.context.grantPermissions(['notifications']);
    const page = await openPage();
    const devtools = await browser.context.newCDPSession(page);
    const registered = new Promise<string>((resolve) => {
      devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
        const [first] = registrations;
        if (first) resolve(first.registrationId);
      });
    });
    await devtools.send('ServiceWorker.enable');
    await page.evaluate(async () => {
      await navigator.serviceWorker.register('/push-worker.js');
      await navigator.serviceWorker.ready;
    });
    const registrationId = await registered;
    const origin = new URL(hub.wallUrl).origin;
    // A worker that has only just been made may miss a push: told again, a note of the same tag replaces itself.
    const pushed = async (data: string, count: number): Promise<string[]> => {
      for (;;) {
        await devtools.send('ServiceWorker.deliverPushMessage', { origin, registrationId, data });
        const notes = await page.evaluate(async () => {
          const registration = await navigator.serviceWorker.ready;
          return (await registration.getNotifications()).map(({ title, tag }) => `${tag}: ${title}`);
        });
        if (notes.length >= count) return notes;
        await page.waitForTimeout(200);
      }
    };
    const danger = JSON.stringify({ title: 'DANGER: Go out', body: 'CO 210 ppm', tag: 'shop-1', at: 1 });
    expect(await pushed(danger, 1)).toEqual(['shop-1: DANGER: Go out']);
    expect(await pushed('no words of ours', 2)).toContain('soakwatch: Soakwatch: look at the wall');
  });

  it('complained of nothing but the refusal that was provoked', () => {
    expect(browser.complaints.filter((text) => !text.includes('400'))).toEqual([]);
  });
});
