import type { OnModuleDestroy } from '@nestjs/common';
import type { LiveMessage } from './live-message.js';
import { ProcessTransport, type LiveReceiver, type LiveTransport } from './live-transport.js';

/** What this process and the others on the same database tell one another. */
export class LiveBus implements LiveReceiver, OnModuleDestroy {
  private readonly receivers = new Set<LiveReceiver>();

  constructor(private readonly transport: LiveTransport = new ProcessTransport()) {
    transport.start(this);
  }

  get reachesOthers(): boolean {
    return this.transport.reachesOthers;
  }

  /** A receiver must not throw and must not wait. Returns the function that ends it. */
  listen(receiver: LiveReceiver): () => void {
    this.receivers.add(receiver);
    return () => this.receivers.delete(receiver);
  }

  /** Tells everybody: here at once, elsewhere soon. */
  tell(message: LiveMessage): void {
    this.hear(message);
    this.transport.send(message);
  }

  /** Tells this process alone of what another one did. */
  hear(message: LiveMessage): void {
    for (const receiver of this.receivers) receiver.hear(message);
  }

  catchUp(): void {
    for (const receiver of this.receivers) receiver.catchUp();
  }

  async onModuleDestroy(): Promise<void> {
    await this.transport.close();
  }
}
