const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 15_000;

/** Sends what waits, one device at a time and one page of it at a time, and tries again after longer and longer pauses. */
export class SendingLoop {
  private isRunning = false;
  private pauseMs = FIRST_PAUSE_MS;
  private timer: ReturnType<typeof setTimeout> | undefined;

  /** `lockName`: of two pages with the same one sends. `sendAll` says whether something is left to be tried again. */
  constructor(
    private readonly lockName: string,
    private readonly sendAll: () => Promise<'done' | 'later'>,
  ) {}

  /** Sends now, whatever pause was going on. */
  go(): void {
    clearTimeout(this.timer);
    if (this.isRunning) return;
    this.isRunning = true;
    const sent = navigator.locks
      ? navigator.locks.request(this.lockName, { ifAvailable: true }, (lock) =>
          lock ? this.sendAll() : 'later',
        )
      : this.sendAll();
    void sent.then((next) => {
      this.isRunning = false;
      if (next === 'later') this.pause();
    });
  }

  /** The server answered: the next pause is a short one again. */
  hasAnswer(): void {
    this.pauseMs = FIRST_PAUSE_MS;
  }

  private pause(): void {
    clearTimeout(this.timer);
    // Devices that lost the network together do not come back in the same moment.
    this.timer = setTimeout(() => this.go(), this.pauseMs * (0.5 + Math.random()));
    this.pauseMs = Math.min(this.pauseMs * 2, LONGEST_PAUSE_MS);
  }
}
