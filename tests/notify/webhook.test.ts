import { afterEach, describe, expect, it } from 'vitest';
import { hmacSha256Hex, signatureOf } from '../../hub/notify/signature.ts';
import { sendWebhook } from '../../hub/notify/webhook.ts';
import { MORNING } from '../harness/shop.ts';
import { listener, MESSAGE, outside } from './servers.ts';

const SECRET = 'sixteen letters at least';
const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function open(...args: Parameters<typeof listener>) {
  const server = await listener(...args);
  closing.push(server.close);
  return server;
}

describe('the signature', () => {
  it('is HMAC-SHA256 as published', () => {
    // RFC 4231, test case 2.
    expect(hmacSha256Hex('Jefe', 'what do ya want for nothing?')).toBe(
      '5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843',
    );
  });

  it('covers the instant and the body', () => {
    const signed = signatureOf(SECRET, 1_772_438_400, '{"a":1}');
    expect(signed).toMatch(/^v1=[0-9a-f]{64}$/);
    expect(signatureOf(SECRET, 1_772_438_401, '{"a":1}')).not.toBe(signed);
    expect(signatureOf(SECRET, 1_772_438_400, '{"a":2}')).not.toBe(signed);
    expect(signed).toBe(`v1=${hmacSha256Hex(SECRET, '1772438400.{"a":1}')}`);
  });
});

describe('a webhook', () => {
  it('arrives with a signature that the receiver can work out from what it got', async () => {
    const server = await open();
    const target = { kind: 'webhook', url: `${server.url}/hook?k=1`, secret: SECRET } as const;
    expect(await sendWebhook(target, MESSAGE, outside())).toEqual({ ok: true });
    const [heard] = server.heard;
    const timestamp = String(heard?.headers['soakwatch-timestamp']);
    expect(heard).toMatchObject({ method: 'POST', path: '/hook?k=1' });
    expect(timestamp).toBe(String(MORNING / 1000));
    const expected = hmacSha256Hex(SECRET, `${timestamp}.${heard?.body.toString()}`);
    expect(heard?.headers['soakwatch-signature']).toBe(`v1=${expected}`);
    expect(heard?.headers['soakwatch-delivery']).toBe('shop-7');
    expect(JSON.parse(heard?.body.toString() ?? '')).toMatchObject({ version: 1, title: MESSAGE.title });
  });

  it.each([
    [500, 'other-side-failed', true],
    [503, 'other-side-failed', true],
    [429, 'other-side-failed', true],
    [400, 'other-side-refused', false],
    [401, 'other-side-refused', false],
    [404, 'gone', false],
    [410, 'gone', false],
    [301, 'redirect-refused', false],
    [307, 'redirect-refused', false],
  ])('takes an answer of %i for %s', async (status, code, passing) => {
    const server = await open((response) => {
      response.writeHead(status, { location: 'http://127.0.0.1:1/' }).end('whatever it says');
    });
    const outcome = await sendWebhook(
      { kind: 'webhook', url: server.url, secret: SECRET },
      MESSAGE,
      outside(),
    );
    expect(outcome).toMatchObject({ ok: false, code, passing });
    expect(JSON.stringify(outcome)).not.toContain('whatever');
    expect(server.heard).toHaveLength(1);
  });

  it('says that nobody answers, and is not held up by one who does not', async () => {
    const gone = await open();
    await gone.close();
    closing.pop();
    const target = { kind: 'webhook', url: gone.url, secret: SECRET } as const;
    expect(await sendWebhook(target, MESSAGE, outside())).toMatchObject({
      code: 'not-reached',
      passing: true,
    });
    const { clock, ...rest } = outside();
    const silent = await open(() => advance(10_000));
    const advance = (ms: number): void => {
      if ('advance' in clock && typeof clock.advance === 'function') clock.advance(ms);
    };
    const outcome = await sendWebhook({ ...target, url: silent.url }, MESSAGE, { ...rest, clock });
    expect(outcome).toMatchObject({ ok: false, code: 'not-reached', passing: true });
  });
});
