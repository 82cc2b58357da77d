import { createNotifyDesk } from '../../hub/notify/desk.ts';
import { Notifier } from '../../hub/notify/notifier.ts';
import { createApp } from '../../hub/web/app.ts';
import { makeShop, type TestShop } from '../harness/shop.ts';

export interface ApiAnswer {
  readonly status: number;
  readonly type: string;
  // biome-ignore lint/suspicious/noExplicitAny: a test reads answers of many shapes; each assertion checks its own
  readonly body: any;
}

export interface Api extends TestShop {
  call(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<ApiAnswer>;
  /** The answer as it comes, for what is no JSON. */
  raw(method: string, path: string, body?: Buffer, headers?: Record<string, string>): Promise<Response>;
  readonly catalogueChanges: () => number;
  /** The content security policy that answers carry. */
  policy(): Promise<string>;
}

/** The whole HTTP application over a shop under a virtual clock, without a socket. */
export function makeApi(): Api {
  const shop = makeShop();
  let changed = 0;
  const notifier = new Notifier({
    ...shop,
    lookup: async () => [],
    jitter: () => 0,
    healthy: () => true,
    onFault: (fault) => shop.faults.push(fault),
  });
  const app = createApp(
    {
      archive: shop.archive,
      watch: shop.watch,
      bus: shop.bus,
      clock: shop.clock,
      notify: createNotifyDesk(notifier, shop.archive, shop.clock),
      catalogueChanged: () => {
        changed += 1;
      },
      mqttAddress: () => 'mqtt://127.0.0.1:1883',
      dashboardDir: 'nowhere',
      version: 'test',
      judging: () => true,
      onFault: (fault) => shop.faults.push(fault),
    },
    { hostNames: [] },
  );
  async function call(
    method: string,
    path: string,
    body?: unknown,
    headers: Record<string, string> = {},
  ): Promise<ApiAnswer> {
    const response = await app.request(`http://localhost${path}`, {
      method,
      headers: { host: 'localhost', 'content-type': 'application/json', ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    const type = response.headers.get('content-type') ?? '';
    return { status: response.status, type, body: type.includes('json') && text ? JSON.parse(text) : text };
  }
  const raw: Api['raw'] = async (method, path, body, headers = {}) =>
    app.request(`http://localhost${path}`, {
      method,
      headers: { host: 'localhost', ...headers },
      ...(body === undefined ? {} : { body: new Uint8Array(body) }),
    });
  const policy = async (): Promise<string> => {
    const response = await app.request('http://localhost/healthz', { headers: { host: 'localhost' } });
    return response.headers.get('content-security-policy') ?? '';
  };
  return { ...shop, call, raw, policy, catalogueChanges: () => changed };
}
