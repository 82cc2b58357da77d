/** How a first reading is sent to the hub by hand. Pure. */

export interface NodeAddress {
  readonly host: string;
  readonly port: string;
  readonly secure: boolean;
  /** True when only programs on the hub's own computer can reach it. */
  readonly loopback: boolean;
}

const DEFAULT_PORTS: Readonly<Record<string, string>> = { 'mqtt:': '1883', 'mqtts:': '8883' };
const LOOPBACK = /^(localhost|127(\.\d+){3}|\[?::1\]?)$/;

/** Reads `mqtt://host:port` or `mqtts://host:port`. Null when it is no such address. */
export function readAddress(address: string): NodeAddress | null {
  const match = /^(mqtts?:)\/\/(?:[^@/]*@)?(\[[^\]]+\]|[^:/]+)(?::(\d+))?(?:\/.*)?$/.exec(address);
  if (!match) return null;
  const [, scheme = '', host = '', port] = match;
  return {
    host: host.replace(/^\[|\]$/g, ''),
    port: port ?? DEFAULT_PORTS[scheme] ?? '',
    secure: scheme === 'mqtts:',
    loopback: LOOPBACK.test(host),
  };
}

export interface FirstReading {
  readonly node: string;
  readonly channel: string;
  readonly celsius: number;
}

/** The topic of a node's readings. */
export function readingsTopic(node: string): string {
  return `soakwatch/${node}/readings`;
}

/** A line for a POSIX shell that publishes one reading, acknowledged only once it is stored (QoS 1). */
export function publishLine(address: NodeAddress, { node, channel, celsius }: FirstReading): string {
  const pack = JSON.stringify([{ n: channel, u: 'Cel', v: celsius }]);
  const secure = address.secure ? ' --tls-use-os-certs' : '';
  return `mosquitto_pub -h ${address.host} -p ${address.port}${secure} -q 1 -t ${readingsTopic(node)} -m '${pack}'`;
}
