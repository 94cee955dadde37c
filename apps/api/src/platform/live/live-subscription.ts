import type { ExecutionResult, GraphQLError } from 'graphql';
import { LatestOnly } from './latest-only.js';

/** One version written out, for all who are told it. */
export interface LiveFrame {
  readonly version: number;
  /** The whole result as JSON. */
  readonly text: string;
  readonly bytes: Buffer;
}

/** A result that is written out already. */
export interface WrittenResult extends ExecutionResult {
  readonly frame?: LiveFrame;
  readonly stringify?: () => string;
}

/** What one subscriber is sent, newest only. Every push asks first whether he may still see it. */
export class LiveSubscription implements AsyncGenerator<WrittenResult, undefined, undefined> {
  private readonly queue = new LatestOnly<LiveFrame>();
  private sent: number;
  private refusal: GraphQLError | null = null;
  private isOver = false;

  constructor(
    since: number | null,
    /** Gives the reason, once he may not. */
    private readonly refusalOf: (() => Promise<GraphQLError | null>) | null,
    private readonly onEnd: () => void,
  ) {
    this.sent = since ?? -1;
  }

  get waitingSinceMs(): number | null {
    return this.queue.waitingSinceMs;
  }

  /** Versions never fall: what is no newer than what he had is left out. */
  offer(frame: LiveFrame): void {
    if (frame.version > this.sent) this.queue.offer(frame);
  }

  /** Looks whether he may still see it, without anything to push. */
  async check(): Promise<void> {
    const refusal = await this.refusalOf?.();
    if (refusal) this.refuse(refusal);
  }

  end(): void {
    if (this.isOver) return;
    this.isOver = true;
    this.queue.end();
    this.onEnd();
  }

  async next(): Promise<IteratorResult<WrittenResult, undefined>> {
    const frame = await this.queue.take();
    if (this.refusal === null && frame !== null && this.refusalOf) this.refusal = await this.refusalOf();
    const { refusal } = this;
    if (refusal !== null) {
      this.refusal = null;
      this.end();
      return { done: false, value: { errors: [refusal] } };
    }
    if (frame === null) return { done: true, value: undefined };
    this.sent = frame.version;
    return { done: false, value: { frame, stringify: () => frame.text } };
  }

  return(): Promise<IteratorResult<WrittenResult, undefined>> {
    this.end();
    return Promise.resolve({ done: true, value: undefined });
  }

  throw(error: unknown): Promise<never> {
    this.end();
    return Promise.reject(error instanceof Error ? error : new Error(String(error)));
  }

  [Symbol.asyncIterator](): this {
    return this;
  }

  async [Symbol.asyncDispose](): Promise<void> {
    await this.return();
  }

  private refuse(refusal: GraphQLError): void {
    this.refusal = refusal;
    // Whoever waits for the next version hears of this instead.
    this.queue.end();
  }
}
