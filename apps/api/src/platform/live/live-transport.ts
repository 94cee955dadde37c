import type { LiveMessage } from './live-message.js';

export interface LiveReceiver {
  hear(message: LiveMessage): void;
  /** Messages may have been lost: everything remembered has to be looked at again. */
  catchUp(): void;
}

/** How instances on one database hear of one another. What is told may get lost; nobody may depend on it alone. */
export interface LiveTransport {
  /** Whether there are other instances to be heard of, so that a poll has to stand behind what gets lost. */
  readonly reachesOthers: boolean;
  start(receiver: LiveReceiver): void;
  /** Neither waits nor throws. The sender's own receiver does not hear it. */
  send(message: LiveMessage): void;
  close(): Promise<void>;
}

/** For one process alone on its database: there is nobody to tell. */
export class ProcessTransport implements LiveTransport {
  readonly reachesOthers = false;

  start(): void {
    // Nobody will be heard.
  }

  send(): void {
    // Nobody listens.
  }

  close(): Promise<void> {
    return Promise.resolve();
  }
}
