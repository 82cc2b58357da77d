import { createDecipheriv, createECDH, createPublicKey, hkdfSync, verify } from 'node:crypto';
import { afterEach, describe, expect, it } from 'vitest';
import { newPushKeys, sendPush } from '../../hub/notify/push.ts';
import { listener, MESSAGE, outside } from './servers.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});

async function open(...args: Parameters<typeof listener>) {
  const server = await listener(...args);
  closing.push(server.close);
  return server;
}

/** A phone with its keys (RFC 8291 section 3.1). */
function phone() {
  const ecdh = createECDH('prime256v1');
  ecdh.generateKeys();
  const auth = Buffer.from('0123456789abcdef');
  const keys = { p256dh: ecdh.getPublicKey('base64url'), auth: auth.toString('base64url') };
  return { ecdh, auth, keys };
}

/** RFC 8188 section 2.1 and RFC 8291 section 3.4, worked out here on its own: one record, as a browser reads it. */
function read(body: Buffer, { ecdh, auth }: ReturnType<typeof phone>): string {
  const salt = body.subarray(0, 16);
  const size = body.readUInt8(20);
  const sender = body.subarray(21, 21 + size);
  const sealed = body.subarray(21 + size);
  const info = Buffer.concat([Buffer.from('WebPush: info\0'), ecdh.getPublicKey(), sender]);
  const input = Buffer.from(hkdfSync('sha256', ecdh.computeSecret(sender), auth, info, 32));
  const key = hkdfSync('sha256', input, salt, 'Content-Encoding: aes128gcm\0', 16);
  const nonce = hkdfSync('sha256', input, salt, 'Content-Encoding: nonce\0', 12);
  const decipher = createDecipheriv('aes-128-gcm', Buffer.from(key), Buffer.from(nonce));
  decipher.setAuthTag(sealed.subarray(-16));
  const plain = Buffer.concat([decipher.update(sealed.subarray(0, -16)), decipher.final()]);
  return plain.subarray(0, plain.lastIndexOf(2)).toString();
}

function jwtOf(authorization: string) {
  const [, token = '', key = ''] = /^vapid t=([^,]+), ?k=(.+)$/.exec(authorization) ?? [];
  const [head = '', claims = '', signature = ''] = token.split('.');
  return {
    signed: `${head}.${claims}`,
    claims: JSON.parse(Buffer.from(claims, 'base64url').toString()),
    signature,
    key,
  };
}

function publicKeyOf(raw: string) {
  const point = Buffer.from(raw, 'base64url');
  const [x, y] = [point.subarray(1, 33), point.subarray(33)].map((part) => part.toString('base64url'));
  return createPublicKey({ key: { kty: 'EC', crv: 'P-256', x: x ?? '', y: y ?? '' }, format: 'jwk' });
}

describe('a push to a phone', () => {
  it('can be read by that phone alone, with the same tag for every attempt', async () => {
    const server = await open((response) => response.writeHead(201).end());
    const mine = phone();
    const subscription = { endpoint: `${server.url}/p/abc`, keys: mine.keys };
    const keys = newPushKeys();
    expect(
      await sendPush({ kind: 'push', subscription }, MESSAGE, keys, 'smith@shop.example', outside()),
    ).toEqual({
      ok: true,
    });
    const [heard] = server.heard;
    expect(heard?.headers).toMatchObject({ 'content-encoding': 'aes128gcm', urgency: 'high', ttl: '3600' });
    expect(JSON.parse(read(heard?.body ?? Buffer.alloc(0), mine))).toMatchObject({
      title: MESSAGE.title,
      body: MESSAGE.text,
      tag: 'shop-7',
    });
    expect(() => read(heard?.body ?? Buffer.alloc(0), phone())).toThrow();
  });

  it('is signed for that push service, for a day at most, with whom to write to (RFC 8292)', async () => {
    const server = await open((response) => response.writeHead(201).end());
    const subscription = { endpoint: `${server.url}/p/abc`, keys: phone().keys };
    const keys = newPushKeys();
    await sendPush({ kind: 'push', subscription }, MESSAGE, keys, 'smith@shop.example', outside());
    const { signed, claims, signature, key } = jwtOf(String(server.heard[0]?.headers.authorization));
    expect(claims).toMatchObject({ aud: server.url, sub: 'mailto:smith@shop.example' });
    expect(claims.exp - Date.now() / 1000).toBeLessThanOrEqual(86_400);
    expect(key).toBe(keys.publicKey);
    const proof = Buffer.from(signature, 'base64url');
    const how = { key: publicKeyOf(key), dsaEncoding: 'ieee-p1363' } as const;
    expect(verify('sha256', Buffer.from(signed), how, proof)).toBe(true);
    expect(verify('sha256', Buffer.from(`${signed}x`), how, proof)).toBe(false);
  });

  it('tells a phone that has unsubscribed, and keys that are none', async () => {
    const server = await open((response) => response.writeHead(410).end());
    const subscription = { endpoint: server.url, keys: phone().keys };
    const send = (to: typeof subscription, contact: string | null = 'smith@shop.example') =>
      sendPush({ kind: 'push', subscription: to }, MESSAGE, newPushKeys(), contact, outside());
    expect(await send(subscription)).toMatchObject({ ok: false, code: 'gone', passing: false });
    const broken = { ...subscription, keys: { ...subscription.keys, p256dh: 'AAAA' } };
    expect(await send(broken)).toMatchObject({ ok: false, code: 'other-side-refused' });
    expect(await send(subscription, null)).toMatchObject({ ok: false });
    expect(server.heard).toHaveLength(1);
  });
});
