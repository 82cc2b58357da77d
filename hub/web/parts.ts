import type { Archive } from '../archive/types.ts';
import type { Clock } from '../time/clock.ts';
import type { ChangeBus } from '../watch/changes.ts';
import type { Watch } from '../watch/watch.ts';
import type { NotifyPort } from './notify-port.ts';

/** What the web layer is given by the composition root. */
export interface WebParts {
  readonly archive: Archive;
  readonly watch: Watch;
  readonly bus: ChangeBus;
  readonly clock: Clock;
  /** Reaches people who are not at the wall. */
  readonly notify: NotifyPort;
  /** Channels or bindings changed: intake reads its catalogue again. */
  readonly catalogueChanged: () => void;
  /** Where the MQTT side listens, for the first visit's explanation. */
  readonly mqttAddress: () => string;
  readonly dashboardDir: string;
  readonly version: string;
  /** False when a judge has failed lately. */
  readonly judging: () => boolean;
  readonly onFault: (fault: unknown) => void;
}
