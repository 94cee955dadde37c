import { openNotices, type Notices } from '#persistence';
import type { Log } from '../log.js';
import { readMessage, writeMessage, type LiveMessage } from './live-message.js';
import type { LiveReceiver, LiveTransport } from './live-transport.js';

const CHANNEL = 'sectorline_live';

/**
 * Through the database itself: LISTEN and NOTIFY on a connection of its own. Sent right after the commit and not in it,
 * because a transaction that notifies commits alone: PostgreSQL takes one lock for the whole server from before the
 * commit is written to disk until after it.
 */
export class PostgresTransport implements LiveTransport {
  readonly reachesOthers = true;
  private notices: Notices | null = null;

  constructor(
    private readonly url: string,
    private readonly log: Log,
  ) {}

  start(receiver: LiveReceiver): void {
    this.notices = openNotices({
      url: this.url,
      channel: CHANNEL,
      onNotice: (text) => {
        const message = readMessage(text);
        if (message) receiver.hear(message);
      },
      onOpen: () => receiver.catchUp(),
      onLost: (error) => this.log.failure('live bus lost its connection', error),
    });
  }

  send(message: LiveMessage): void {
    this.notices?.send(`${message.about} ${message.id}`, writeMessage(message));
  }

  async close(): Promise<void> {
    await this.notices?.close();
  }
}
