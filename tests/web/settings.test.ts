import { describe, expect, it } from 'vitest';
import { isLoopback, readSettings, SettingsError } from '../../hub/settings.ts';

describe('settings from the command line and the environment', () => {
  it('listens on this machine only, unless told otherwise', () => {
    expect(readSettings([], {})).toMatchObject({
      bind: '127.0.0.1',
      mqttPort: 1883,
      simulated: false,
      brokerUrl: null,
    });
  });

  it('takes the environment, and the command line over it', () => {
    const env = { SOAKWATCH_HTTP_PORT: '8001', SOAKWATCH_MQTT_PORT: '8002' };
    expect(readSettings(['--http-port', '9000'], env)).toMatchObject({ httpPort: 9000, mqttPort: 8002 });
  });

  it('refuses to listen beyond loopback without the explicit flag, and says why', () => {
    expect(() => readSettings(['--bind', '0.0.0.0'], {})).toThrow(/nobody has to sign in/);
    expect(readSettings(['--bind', '0.0.0.0', '--open-to-network'], {}).bind).toBe('0.0.0.0');
    expect(() => readSettings([], { SOAKWATCH_BIND: '192.0.2.1' })).toThrow(SettingsError);
  });

  it('tells every fault at once, with where it stands and what was given', () => {
    const read = () =>
      readSettings(['--http-port', '70000', '--broker', 'http://x'], { SOAKWATCH_MQTT_PORT: 'abc' });
    expect(read).toThrow(/--http-port.*70000/s);
    expect(read).toThrow(/SOAKWATCH_MQTT_PORT.*abc/s);
    expect(read).toThrow(/--broker/);
  });

  it('refuses an unknown flag', () => {
    expect(() => readSettings(['--mqtt-prot', '1'], {})).toThrow(/mqtt-prot/);
  });

  it.each(['127.0.0.1', '127.8.9.1', '::1', 'localhost'])('knows %s as loopback', (address) => {
    expect(isLoopback(address)).toBe(true);
  });
});
