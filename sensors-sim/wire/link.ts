/** How a node's messages travel. An interface, so that a test can collect them in memory. */

export interface PublishOptions {
  readonly qos: 0 | 1;
  readonly retain: boolean;
}

/** Sends one message; the promise of a QoS 1 message settles when the other side has acknowledged it. */
export interface Publisher {
  publish(topic: string, payload: string, options: PublishOptions): Promise<void>;
}

/** What a link tells about itself. */
export interface LinkEvents {
  readonly up: () => void;
  /** Whatever was not acknowledged by now never will be. */
  readonly down: () => void;
  /** The link could not be made; it will be tried again. */
  readonly trouble: (message: string) => void;
}

/** A link that comes and goes. */
export interface Link extends Publisher {
  readonly isUp: boolean;
  /** Starts connecting, and goes on trying. */
  open(events: LinkEvents): void;
  /** Vanishes from the network without a word, and stays away. */
  cut(): void;
  /** Comes back after a cut. */
  restore(): void;
  /** Says goodbye and stays away. */
  close(): Promise<void>;
}
