import type { Server } from 'node:net';
import { BrokerError } from './types.ts';

/**
 * Starts listening and answers with the address as an MQTT URL, the real port in it.
 * Errors: BrokerError `port-in-use`, `cannot-listen`.
 */
export function listen(server: Server, bind: string, port: number): Promise<string> {
  return new Promise((resolve, reject) => {
    server.once('error', (fault: NodeJS.ErrnoException) => reject(listenError(fault, bind, port)));
    server.listen(port, bind, () => {
      const address = server.address();
      const taken = typeof address === 'object' && address ? address.port : port;
      resolve(`mqtt://${bind.includes(':') ? `[${bind}]` : bind}:${taken}`);
    });
  });
}

function listenError(fault: NodeJS.ErrnoException, bind: string, port: number): BrokerError {
  const cause = { cause: fault };
  if (fault.code === 'EADDRINUSE') {
    const what = `MQTT port ${port} on ${bind} is taken by another program`;
    const todo = 'end that one, or choose another port with --mqtt-port (SOAKWATCH_MQTT_PORT)';
    return new BrokerError('port-in-use', `${what}: ${todo}`, cause);
  }
  const todo = 'check --bind and --mqtt-port (ports below 1024 need special rights)';
  return new BrokerError(
    'cannot-listen',
    `MQTT cannot listen on ${bind} port ${port} (${fault.code}): ${todo}`,
    cause,
  );
}
