/** Screen readers drop or queue what comes faster. */
const PAUSE_MS = 5_000;

/** Says one thing at a time, the latest, and nothing more often than every five seconds. */
export class News {
  private saidAt = -Infinity;
  private waiting: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly say: (text: string) => void) {}

  tell(text: string): void {
    clearTimeout(this.waiting);
    const pause = this.saidAt + PAUSE_MS - Date.now();
    if (pause > 0) this.waiting = setTimeout(() => this.out(text), pause);
    else this.out(text);
  }

  end(): void {
    clearTimeout(this.waiting);
  }

  private out(text: string): void {
    this.saidAt = Date.now();
    this.say(text);
  }
}
