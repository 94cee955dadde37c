import { randomUUID } from 'node:crypto';
import { execute, type DocumentNode, type ExecutionArgs, type ExecutionResult } from 'graphql';
import type { LiveSource } from '../live/live-source.js';
import type { LiveFrame, LiveSubscription } from '../live/live-subscription.js';
import type { RequestContext } from './request-context.js';

const RETRY_MS = 1_000;

export interface TopicParts {
  readonly source: LiveSource;
  readonly args: ExecutionArgs;
  /** The subscription's field, as the document names it. */
  readonly field: string;
  readonly document: DocumentNode;
  readonly onFailure: (error: unknown) => void;
}

/**
 * The same subscription of any number of subscribers: read once, executed once and written out once a version. While
 * one version is being made, newer ones wait as one.
 */
export class LiveTopic {
  readonly subscriptions = new Set<LiveSubscription>();
  private frame: LiveFrame | null = null;
  private isDue = false;
  private isMaking = false;
  private isClosed = false;

  constructor(private readonly parts: TopicParts) {}

  get competitionId(): string {
    return this.parts.source.of.competitionId;
  }

  add(subscription: LiveSubscription): void {
    this.subscriptions.add(subscription);
    if (this.frame) subscription.offer(this.frame);
    else this.touch();
  }

  /** Something may be newer. */
  touch(): void {
    this.isDue = true;
    if (!this.isMaking) void this.make();
  }

  close(): void {
    this.isClosed = true;
    for (const subscription of this.subscriptions) subscription.end();
  }

  private async make(): Promise<void> {
    this.isMaking = true;
    while (this.isDue && !this.isClosed) {
      this.isDue = false;
      try {
        await this.makeOne();
      } catch (error) {
        this.parts.onFailure(error);
        await new Promise((resolve) => setTimeout(resolve, RETRY_MS).unref());
        this.isDue = true;
      }
    }
    this.isMaking = false;
  }

  private async makeOne(): Promise<void> {
    const { source, args, field, document } = this.parts;
    const snapshot = await source.read();
    if (!snapshot) return this.close();
    if (this.frame && snapshot.version <= this.frame.version) return;
    // In nobody's name, and anew for each version: loaders remember for as long as their context lives.
    const contextValue: Omit<RequestContext, 'connection'> = {
      identity: source.reader,
      traceId: randomUUID(),
      ...{ address: '', origin: '' },
    };
    const result = await execute({
      ...args,
      document,
      contextValue,
      rootValue: { [field]: snapshot.value },
    });
    const frame = frameOf(snapshot.version, result);
    this.frame = frame;
    for (const subscription of this.subscriptions) subscription.offer(frame);
  }
}

function frameOf(version: number, result: ExecutionResult): LiveFrame {
  if (result.errors) throw result.errors[0]!;
  const text = JSON.stringify(result);
  return { version, text, bytes: Buffer.from(text) };
}
