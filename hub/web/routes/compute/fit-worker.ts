/**
 * Entry of a worker thread: fits one furnace, says what it found or why it refuses, and ends. The only thing here
 * that may take seconds, and so the only one that may not share the thread that judges firings.
 */
import { parentPort, workerData } from 'node:worker_threads';
import { PhysicsError } from '../../../physics/errors.ts';
import { fitFurnace } from '../../../physics/heat/furnace-fit.ts';
import { WatchError } from '../../../watch/errors.ts';
import { workMeter } from './bounds.ts';
import type { FitOrder, FitReply } from './fit-order.ts';
import { bodyOf } from './pieces.ts';

/** Three to six seconds of one core: a thin piece in a chamber that swings for an hour still gets through. */
const MOST_SETTLED = 12_000_000;
/** Half of the usual control volumes move the core of a 100 mm bar by less than the thermometer's step. */
const INTERVALS = 8;

function replyTo({ piece, run, loadAt }: FitOrder): FitReply {
  try {
    const body = bodyOf(piece, workMeter(MOST_SETTLED), INTERVALS);
    return { fit: fitFurnace({ body, run, loadAt }), refusal: null };
  } catch (fault) {
    if (!(fault instanceof PhysicsError || fault instanceof WatchError)) throw fault;
    return { fit: null, refusal: { code: fault.code, message: fault.message } };
  }
}

parentPort?.postMessage(replyTo((workerData as { readonly order: FitOrder }).order));
