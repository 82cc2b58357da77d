/** The simulated shop as a program: `node sensors-sim/main.js --help`. */
import { listBehaviours } from './behaviours/behaviour.ts';
import { SimError } from './errors.ts';
import { historyPlan } from './history.ts';
import { LiveShop } from './live.ts';
import { NODE_NAMES, type NodeName } from './node-names.ts';
import { HELP, readSettings, type SimSettings } from './options.ts';
import { TruthFeed } from './truth/truth-feed.ts';
import { MqttLink } from './wire/mqtt-link.ts';
import { statusTopic } from './wire/pack.ts';
import { Uplink } from './wire/uplink.ts';

/** How often the shop catches up with the clock. */
const TICK_MS = 200;
const CAUGHT_UP_WITHIN_MS = 600_000;
/** A farewell that takes longer than this is cut short. */
const FAREWELL_MS = 2000;

function say(text: string): void {
  process.stdout.write(`${text}\n`);
}

function buildUplinks(settings: SimSettings): ReadonlyMap<NodeName, Uplink> {
  return new Map(
    NODE_NAMES.map((node) => {
      const will = { topic: statusTopic(node), payload: 'offline' };
      const link = new MqttLink({ url: settings.mqttUrl, clientId: `soakwatch-sim-${node}`, will });
      const { bufferLimit } = settings;
      return [node, new Uplink({ node, link, bufferLimit, report: onChange(node) })] as const;
    }),
  );
}

/** A hub that is away for an hour would otherwise fill the terminal with the same line. */
function onChange(node: NodeName): (message: string) => void {
  let last = '';
  return (message) => {
    if (message !== last) process.stderr.write(`${node}: ${message}\n`);
    last = message;
  };
}

function run(settings: SimSettings): void {
  const liveMs = settings.liveMs ?? Math.floor(Date.now() / 1000) * 1000;
  const { historyHours: hours, forgePlan, ovenPlan, seed } = settings;
  const history = {
    hours,
    ...(forgePlan === undefined ? {} : { forgePlan }),
    ...(ovenPlan === undefined ? {} : { ovenPlan }),
  };
  const plan = historyPlan(seed, liveMs, history);
  if (settings.printPlan) {
    say(JSON.stringify(plan));
    return;
  }
  say(`history-plan ${JSON.stringify(plan)}`);
  const uplinks = buildUplinks(settings);
  const { speed, behaviours, fittings, historyEverySeconds } = settings;
  const shop = new LiveShop({
    seed,
    liveMs,
    speed,
    behaviours,
    history,
    historyEverySeconds,
    uplinks,
    fittings,
  });
  shop.publishHistory();
  for (const uplink of uplinks.values()) uplink.start();
  say(`Simulated shop, seed ${seed}, speed ${speed}, publishing to ${settings.mqttUrl}`);
  const link = new MqttLink({ url: settings.mqttUrl, clientId: 'soakwatch-sim-truth', will: null });
  const truth = settings.truth ? new TruthFeed(link) : null;
  truth?.start();
  goLive(shop, uplinks, truth, behind(liveMs));
}

/** A start just given or just now is caught up with; any other instant is a clock of its own. */
function behind(liveMs: number): number {
  const behindMs = Date.now() - liveMs;
  return behindMs >= 0 && behindMs < CAUGHT_UP_WITHIN_MS ? behindMs : 0;
}

/** @param behindMs how much of the live time has passed already while the past was computed */
function goLive(
  shop: LiveShop,
  uplinks: ReadonlyMap<NodeName, Uplink>,
  truth: TruthFeed | null,
  behindMs: number,
): void {
  // The monotonic clock: a shop must not jump when somebody sets the computer's time.
  const beganMs = performance.now() - behindMs;
  let told = shop.events.length;
  const timer = setInterval(() => {
    shop.advance(performance.now() - beganMs);
    truth?.tell(shop);
    // For whoever plays the smith beside the simulated shop: the demonstration presses the wall's buttons.
    for (; told < shop.events.length; told += 1) say(`event ${JSON.stringify(shop.events[told])}`);
  }, TICK_MS);
  let stopping = false;
  const stop = async () => {
    if (stopping) return;
    stopping = true;
    clearInterval(timer);
    setTimeout(() => process.exit(0), FAREWELL_MS).unref();
    await Promise.all([...[...uplinks.values()].map((uplink) => uplink.stop()), truth?.stop()]);
    process.exit(0);
  };
  process.on('SIGINT', () => void stop());
  process.on('SIGTERM', () => void stop());
}

function main(): void {
  try {
    const settings = readSettings(process.argv.slice(2));
    if (settings.help) say(HELP);
    else if (settings.listBehaviours) say(listBehaviours());
    else run(settings);
  } catch (error) {
    if (!(error instanceof SimError)) throw error;
    process.stderr.write(`sensors-sim: ${error.code}: ${error.message}\n`);
    process.exitCode = 2;
  }
}

main();
