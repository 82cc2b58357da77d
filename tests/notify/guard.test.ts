import { describe, expect, it } from 'vitest';
import { admit, type Network, readNetwork } from '../../hub/notify/guard.ts';

const allow = (...texts: string[]): Network[] =>
  texts.map((text) => {
    const read = readNetwork(text);
    if ('refusal' in read) throw new Error(read.refusal);
    return read.network;
  });
const noLookup = () => Promise.reject(new Error('a literal is not looked up'));

/** Special ranges of RFC 6890 and its successors (from memory), and IPv4 inside IPv6 in every spelling. */
const INSIDE = [
  '0.0.0.0',
  '10.1.2.3',
  '100.64.0.1',
  '127.0.0.1',
  '127.255.255.254',
  '169.254.169.254',
  '172.16.0.1',
  '172.31.255.255',
  '192.0.2.1',
  '192.168.1.1',
  '198.18.0.1',
  '224.0.0.1',
  '240.0.0.1',
  '255.255.255.255',
  '[::]',
  '[::1]',
  '[fe80::1]',
  '[fc00::1]',
  '[fd12:3456::1]',
  '[ff02::1]',
  '[::ffff:10.0.0.1]',
  '[::ffff:7f00:1]',
  '[64:ff9b::a00:1]',
  '[2002:a00:1::]',
];

describe('addresses', () => {
  it.each(INSIDE)('refuses %s', async (host) => {
    expect(await admit(host, [], noLookup)).toMatchObject({
      ok: false,
      code: 'network-refused',
      passing: false,
    });
  });

  it.each(['8.8.8.8', '172.32.0.1', '192.169.0.1', '[2606:4700::1111]'])('lets %s through', async (host) => {
    expect(await admit(host, [], noLookup)).toMatchObject({ ok: true });
  });

  it('reads numbers as a URL does: every spelling of 127.0.0.1 is 127.0.0.1', async () => {
    for (const spelled of ['2130706433', '0x7f000001', '0177.0.0.1', '127.1']) {
      const { hostname } = new URL(`http://${spelled}/`);
      expect(hostname).toBe('127.0.0.1');
      expect((await admit(hostname, [], noLookup)).ok).toBe(false);
    }
  });

  it('refuses a name with one bad answer among good ones, and connects to the one that was checked', async () => {
    const mixed = await admit('mixed.example', [], async () => ['8.8.8.8', '10.0.0.1']);
    expect(mixed).toMatchObject({ ok: false, code: 'network-refused' });
    const good = await admit('good.example', [], async () => ['8.8.8.8', '2606:4700::1111']);
    expect(good).toEqual({ ok: true, address: '8.8.8.8', family: 4 });
  });

  it('tells a name that nobody knows from one that is refused', async () => {
    expect(await admit('nowhere.example', [], async () => [])).toMatchObject({
      code: 'name-not-found',
      passing: true,
    });
    expect(await admit('nowhere.example', [], noLookup)).toMatchObject({ code: 'name-not-found' });
    expect(await admit('odd.example', [], async () => ['not an address'])).toMatchObject({ ok: false });
  });
});

describe('the networks of the shop', () => {
  it('opens what is allowed and nothing beside it', async () => {
    const networks = allow('192.168.1.0/24', 'fd00:1::/32', '127.0.0.1');
    for (const host of ['192.168.1.77', '[fd00:1::9]', '127.0.0.1', '[::ffff:192.168.1.5]'])
      expect((await admit(host, networks, noLookup)).ok, host).toBe(true);
    for (const host of ['192.168.2.1', '[fd00:2::9]', '127.0.0.2', '10.0.0.1'])
      expect((await admit(host, networks, noLookup)).ok, host).toBe(false);
  });

  it('never opens link-local addresses and the metadata of a cloud', async () => {
    const networks = allow('100.64.0.0/10', 'fd00::/8');
    for (const host of ['169.254.169.254', '100.100.100.200', '[fd00:ec2::254]'])
      expect((await admit(host, networks, noLookup)).ok, host).toBe(false);
  });

  it.each([
    '0.0.0.0/0',
    '10.0.0.0/7',
    '8.8.8.0/24',
    '169.254.0.0/16',
    '::/0',
    'fe80::/10',
    'shop.local',
    '192.168.1.0/33',
    '192.168.1.0/',
    '192.168.1.0/24/2',
    '192.168.1',
    '',
  ])('refuses "%s" as a network of the shop', (text) => {
    expect(readNetwork(text)).toHaveProperty('refusal');
  });
});
