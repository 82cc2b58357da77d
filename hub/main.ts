import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { pino } from 'pino';
import { startHub } from './hub.ts';
import { readSettings, SettingsError } from './settings.ts';
import { systemClock } from './time/clock.ts';

/** The programme: reads settings, starts the hub, stops it on a signal. */
const here = dirname(fileURLToPath(import.meta.url));
const log = pino({ level: process.env.SOAKWATCH_LOG ?? 'info' }, pino.destination({ dest: 2, sync: true }));

async function run(): Promise<void> {
  const settings = readSettings(process.argv.slice(2), process.env);
  mkdirSync(settings.dataDir, { recursive: true });
  const hub = await startHub({
    settings,
    clock: systemClock,
    log,
    dashboardDir: process.env.SOAKWATCH_DASHBOARD ?? join(here, '..', 'dashboard'),
  });
  process.stdout.write(
    `Soakwatch is watching.\n  wall: ${hub.wallUrl}\n  nodes publish to: ${hub.mqttAddress}\n  archive: ${settings.dataDir}\n`,
  );
  let stopping = false;
  const stop = (): void => {
    if (stopping) return;
    stopping = true;
    hub.stop().then(
      () => process.exit(0),
      (fault: unknown) => {
        log.error(fault, 'the hub did not stop cleanly');
        process.exit(1);
      },
    );
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

run().catch((fault: unknown) => {
  if (fault instanceof SettingsError && fault.code === 'help') {
    process.stdout.write(`${fault.message}\n`);
    process.exit(0);
  }
  const code = fault instanceof Error && 'code' in fault ? String(fault.code) : 'internal-error';
  process.stderr.write(
    `Soakwatch did not start (${code}):\n${fault instanceof Error ? fault.message : String(fault)}\n`,
  );
  if (code === 'internal-error') log.error(fault);
  process.exit(1);
});
