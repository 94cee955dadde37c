import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { Doorkeeper } from '../platform/identity/doorkeeper.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { Log } from '../platform/log.js';
import type { EventStream, StreamEvent } from './event-stream.js';
import { SnapshotsService } from './snapshots.service.js';

const HEARTBEAT_MS = 15_000;
/** Whoever has read nothing for so long is gone. */
const STALLED_MS = 30_000;
const RETRY_MS = 1_000;

interface Topic {
  readonly streams: Set<EventStream>;
  readonly unwatch: () => void;
  event: StreamEvent | null;
  isDue: boolean;
  isMaking: boolean;
}

/** The crowd that listens: each version of a competition is written out once and sent to all. */
@Injectable()
export class EventStreams implements OnModuleDestroy {
  private readonly topics = new Map<string, Topic>();
  private readonly beating: NodeJS.Timeout;

  constructor(
    private readonly snapshots: SnapshotsService,
    private readonly memory: CompetitionMemory,
    private readonly doorkeeper: Doorkeeper,
    private readonly log: Log,
    changes: CompetitionChanges,
  ) {
    changes.listen(({ competitionId }) => this.touch(competitionId));
    this.beating = setInterval(() => this.beat(), HEARTBEAT_MS).unref();
  }

  onModuleDestroy(): void {
    clearInterval(this.beating);
    for (const { streams } of this.topics.values()) for (const stream of streams) stream.end();
  }

  /** Streams that are open now. */
  get count(): number {
    let sum = 0;
    for (const { streams } of this.topics.values()) sum += streams.size;
    return sum;
  }

  /** Tells a stream of a competition from now on; call what is returned when the reader has gone. */
  add(competitionId: string, stream: EventStream): () => void {
    const topic = this.topics.get(competitionId) ?? this.open(competitionId);
    topic.streams.add(stream);
    if (topic.event) stream.offer(topic.event);
    else this.touch(competitionId);
    return () => {
      topic.streams.delete(stream);
      if (topic.streams.size > 0 || this.topics.get(competitionId) !== topic) return;
      this.topics.delete(competitionId);
      topic.unwatch();
    };
  }

  private open(competitionId: string): Topic {
    const unwatch = this.memory.watch(this.doorkeeper.everybody.organisationId, competitionId);
    const topic: Topic = { streams: new Set(), unwatch, event: null, isDue: false, isMaking: false };
    this.topics.set(competitionId, topic);
    return topic;
  }

  private touch(competitionId: string): void {
    const topic = this.topics.get(competitionId);
    if (!topic) return;
    topic.isDue = true;
    if (!topic.isMaking) void this.make(competitionId, topic);
  }

  private async make(competitionId: string, topic: Topic): Promise<void> {
    topic.isMaking = true;
    while (topic.isDue && topic.streams.size > 0) {
      topic.isDue = false;
      try {
        await this.makeOne(competitionId, topic);
      } catch (error) {
        this.log.failure('a public table could not be made', error);
        await new Promise((resolve) => setTimeout(resolve, RETRY_MS).unref());
        topic.isDue = true;
      }
    }
    topic.isMaking = false;
  }

  private async makeOne(competitionId: string, topic: Topic): Promise<void> {
    const shown = await this.snapshots.competition(competitionId);
    if (!shown) {
      for (const stream of topic.streams) stream.end();
      return;
    }
    const { version } = shown;
    if (topic.event && version <= topic.event.version) return;
    const bytes = Buffer.from(`id: ${version}\nevent: competition\ndata: ${JSON.stringify(shown)}\n\n`);
    topic.event = { version, bytes };
    for (const stream of topic.streams) stream.offer(topic.event);
  }

  private beat(): void {
    const since = Date.now() - STALLED_MS;
    for (const { streams } of this.topics.values()) {
      for (const stream of streams) {
        stream.cutIfBlockedSince(since);
        stream.beat();
      }
    }
  }
}
