import { sql as shop } from './001-shop.ts';
import { sql as firings } from './002-firings.ts';
import { sql as readings } from './003-readings.ts';
import { sql as probes } from './004-probes.ts';
import { sql as fitsAndSteels } from './005-fits-and-steels.ts';
import { sql as pieces } from './006-pieces.ts';
import { sql as alarmJournal } from './007-alarm-journal.ts';
import { sql as air } from './008-air.ts';
import { sql as scheduleBasis } from './009-schedule-basis.ts';
import { sql as notify } from './010-notify.ts';
import { sql as gas } from './011-gas.ts';
import { sql as review } from './012-review.ts';
import { sql as firingVerdicts } from './013-firing-verdicts.ts';

/** In order: the n-th brings a file to version n. Released migrations never change; add the next one. */
export const MIGRATIONS: readonly string[] = [
  shop,
  firings,
  readings,
  probes,
  fitsAndSteels,
  pieces,
  alarmJournal,
  air,
  scheduleBasis,
  notify,
  gas,
  review,
  firingVerdicts,
];
