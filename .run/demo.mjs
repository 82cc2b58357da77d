// npm run demo: the hub, and the simulated shop as a separate process that reaches it over MQTT alone. This
// programme plays the smith at the wall: it sets the shop up, records the past firings, presses Start, Confirm
// and Finish when the simulated operator lights a furnace or takes the steel out. It speaks the public API.
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { prepare, ROOT } from './prepare.mjs';

const DATA = join(ROOT, 'demo-data');
const SEED = Number(process.env.SOAKWATCH_DEMO_SEED ?? 7);
const extra = process.argv.slice(2);

/** The usual port, or any free one when another program has it. */
function freePort(wanted) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => freePort(0).then(resolve));
    probe.listen(wanted, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

function start(name, args) {
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'inherit'] });
  child.on('exit', (code, signal) => {
    if (!stopping) {
      process.stderr.write(`The ${name} ended (${signal ?? `code ${code}`}): stopping.\n`);
      stopAll(1);
    }
  });
  return child;
}

const children = [];
let stopping = false;
let smith = null;
function stopAll(code) {
  if (stopping) return;
  stopping = true;
  smith?.goHome();
  const alive = children.filter((child) => child.exitCode === null && child.signalCode === null);
  const ended = alive.map((child) => new Promise((resolve) => child.on('exit', resolve)));
  for (const child of alive.reverse()) child.kill('SIGTERM');
  void Promise.all(ended).then(() => {
    process.stdout.write('Stopped.\n');
    process.exit(code);
  });
}
process.on('SIGINT', () => stopAll(0));
process.on('SIGTERM', () => stopAll(0));

async function healthy(base) {
  for (let attempt = 0; attempt < 100; attempt += 1) {
    const ok = await fetch(`${base}/healthz`).then(
      (answer) => answer.ok,
      () => false,
    );
    if (ok) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('the hub did not answer within ten seconds');
}

await prepare();
// Reads the built simulator's plans, so it is loaded only once there is a build.
const { Smith } = await import('./smith.mjs');
// An invented shop is made anew each time; a real shop's data lies elsewhere and is never touched from here.
rmSync(DATA, { recursive: true, force: true });
const httpPort = await freePort(Number(process.env.SOAKWATCH_HTTP_PORT ?? 7625));
const mqttPort = await freePort(Number(process.env.SOAKWATCH_MQTT_PORT ?? 1883));
const base = `http://127.0.0.1:${httpPort}`;
const ports = ['--http-port', String(httpPort), '--mqtt-port', String(mqttPort)];
const hub = start('hub', [
  'dist/hub/main.js',
  '--data',
  DATA,
  '--simulated',
  '--bind',
  '127.0.0.1',
  ...ports,
]);
children.push(hub);
hub.stdout.resume();
await healthy(base);

smith = new Smith(base);
await smith.furnish();
const liveMs = Math.floor(Date.now() / 1000) * 1000;
const mqtt = `mqtt://127.0.0.1:${mqttPort}`;
const sim = start('simulated shop', [
  'dist/sensors-sim/main.js',
  '--mqtt',
  mqtt,
  '--seed',
  String(SEED),
  '--now-ms',
  String(liveMs),
  ...extra,
]);
children.push(sim);
createInterface({ input: sim.stdout }).on('line', (line) => smith.hear(line));

process.stdout.write(`
The simulated shop is running. Nothing in it is real.

  wall     ${base}/
  MQTT     ${mqtt}
  try      mosquitto_pub -p ${mqttPort} -q 1 -t soakwatch/my-node/readings -m '[{"n":"chamber","u":"Cel","v":861.5}]'

Ctrl-C stops everything.
`);
