import { Worker } from 'node:worker_threads';
import type { FurnaceFit } from '../../../physics/heat/furnace-fit.ts';
import { WatchError } from '../../../watch/errors.ts';
import type { FitOrder, FitReply } from './fit-order.ts';

/** Fits in a thread of their own, one after the other: two cores, and one of them belongs to the firings. */

/** Fits that may wait for the one under way; a person presses once and waits, so more is a fault or an attack. */
const MOST_WAITING = 4;

let waiting = 0;
let last: Promise<unknown> = Promise.resolve();

/**
 * Fits a furnace in a worker thread.
 *
 * @throws WatchError with the code of the refusal, `too-much-work` when too many fits wait already
 */
export async function fitApart(order: FitOrder): Promise<FurnaceFit> {
  if (waiting > MOST_WAITING) {
    throw new WatchError('too-much-work', 'several furnaces are being fitted already: ask again in a moment');
  }
  waiting += 1;
  const turn = last.then(() => inThread(order));
  last = turn.catch(() => undefined);
  try {
    const { fit, refusal } = await turn;
    if (refusal === null) return fit;
    throw new WatchError(refusal.code, refusal.message);
  } finally {
    waiting -= 1;
  }
}

function inThread(order: FitOrder): Promise<FitReply> {
  return new Promise((resolve, reject) => {
    const worker = startWorker(order);
    // A hub that stops does not wait for a fit that nobody will read.
    worker.unref();
    worker.once('message', resolve);
    worker.once('error', reject);
    worker.once('exit', (code) => reject(new Error(`the fitting thread ended with ${code} and no answer`)));
  });
}

/** Built, the entry is a JavaScript file. From source (tests, dev:hub) the thread must learn TypeScript first. */
function startWorker(order: FitOrder): Worker {
  if (!import.meta.url.endsWith('.ts')) {
    return new Worker(new URL('./fit-worker.js', import.meta.url), { workerData: { order }, execArgv: [] });
  }
  const entry = new URL('./fit-worker.ts', import.meta.url).href;
  const start = `import('tsx/esm/api').then(({ register }) => { register(); return import('${entry}'); })`;
  return new Worker(start, { eval: true, workerData: { order }, execArgv: [] });
}
