import ipaddr from 'ipaddr.js';

/**
 * Where the hub may send to. A way's address is typed in by whoever may set up the shop, and the hub stands inside the
 * shop's network: without this it could be made to knock at routers, printers and cloud metadata (OWASP SSRF cheat
 * sheet: resolve once, check every answer, connect to what was checked, follow no redirect).
 */

type Address = ipaddr.IPv4 | ipaddr.IPv6;
export type Network = readonly [Address, number];

/** Every address of a name. May reject with what the resolver says. */
export type Lookup = (host: string) => Promise<readonly string[]>;

export type Admitted =
  | { readonly ok: true; readonly address: string; readonly family: 4 | 6 }
  | { readonly ok: false; readonly code: GuardCode; readonly detail: string; readonly passing: boolean };
/** - `network-refused`: an address that is not public and not allowed. - `name-not-found`: nobody knows the name. */
export type GuardCode = 'network-refused' | 'name-not-found';

/** Ranges that a shop may allow: its own networks. Everything else that is not public stays refused. */
const ALLOWABLE = ['private', 'loopback', 'uniqueLocal', 'carrierGradeNat'];
/** Where clouds keep the credentials of their machines (vendors' manuals, from memory). Never allowed. */
const METADATA = ['169.254.169.254', '100.100.100.200', 'fd00:ec2::254'];
const LEAST_PREFIX = { ipv4: 8, ipv6: 7 };

/** IPv4 inside IPv6 (::ffff:10.0.0.1) is that IPv4 address. Null: no address. */
function parse(text: string): Address | null {
  const bare = text.replace(/^\[|\]$/g, '').replace(/%.*$/, '');
  return ipaddr.isValid(bare) && (bare.includes(':') || ipaddr.IPv4.isValidFourPartDecimal(bare))
    ? ipaddr.process(bare)
    : null;
}

/** A network of the allow list ("192.168.1.0/24", "10.0.0.7"), or why it is none. */
export function readNetwork(text: string): { readonly network: Network } | { readonly refusal: string } {
  const [host = '', size, ...more] = text.trim().split('/');
  const address = parse(host);
  if (address === null || more.length > 0 || (size !== undefined && !/^\d{1,3}$/.test(size)))
    return { refusal: `"${text}" is no network: write an address or 192.168.1.0/24` };
  const most = address.kind() === 'ipv4' ? 32 : 128;
  const prefix = size === undefined ? most : Number(size);
  if (prefix > most || prefix < LEAST_PREFIX[address.kind()])
    return { refusal: `"${text}" is too wide or no network: /${LEAST_PREFIX[address.kind()]} to /${most}` };
  if (!ALLOWABLE.includes(address.range()))
    return { refusal: `"${text}" is not a shop's own network: private and loopback addresses only` };
  return { network: [address, prefix] };
}

function mayReach(address: Address, allowed: readonly Network[]): boolean {
  if (METADATA.includes(address.toString())) return false;
  if (address.range() === 'unicast') return true;
  return (
    ALLOWABLE.includes(address.range()) &&
    allowed.some(([network, prefix]) => network.kind() === address.kind() && address.match(network, prefix))
  );
}

/**
 * Looks the host up once and hands out the one address to connect to. A name with one bad answer among good ones is
 * refused as a whole: which one a later connection would take is not in our hands.
 */
export async function admit(host: string, allowed: readonly Network[], lookup: Lookup): Promise<Admitted> {
  const literal = parse(host);
  let found: readonly string[];
  try {
    found = literal === null ? await lookup(host) : [literal.toString()];
  } catch {
    found = [];
  }
  const addresses = found.map(parse);
  const [first] = addresses;
  if (!first)
    return { ok: false, code: 'name-not-found', detail: `no address is known for ${host}`, passing: true };
  const refused = addresses.find((address) => address === null || !mayReach(address, allowed));
  if (refused !== undefined) {
    const where = literal === null ? `${host} stands at ${refused?.toString() ?? 'no address'}, which` : host;
    const detail = `${where} is no public address (${refused?.range() ?? 'unknown'}): a network of the shop must be allowed first`;
    return { ok: false, code: 'network-refused', detail, passing: false };
  }
  return { ok: true, address: first.toString(), family: first.kind() === 'ipv4' ? 4 : 6 };
}
