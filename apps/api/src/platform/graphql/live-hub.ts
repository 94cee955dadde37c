import { Injectable, type OnModuleDestroy } from '@nestjs/common';
import {
  createSourceEventStream,
  getOperationAST,
  GraphQLError,
  Kind,
  visit,
  type DocumentNode,
  type ExecutionArgs,
  type ExecutionResult,
  type FieldNode,
} from 'graphql';
import { CompetitionMemory } from '../competition/competition-memory.js';
import { forbidden } from '../errors/api-error.js';
import { AccessMemory } from '../identity/access-memory.js';
import { CompetitionChanges } from '../live/competition-changes.js';
import { tooManyListeners } from '../live/live-connections.js';
import { LiveSource } from '../live/live-source.js';
import { LiveSubscription } from '../live/live-subscription.js';
import { Log } from '../log.js';
import { LiveTopic } from './live-topic.js';
import type { RequestContext } from './request-context.js';

/** How often is looked for subscribers that read nothing and for tokens that have run out. */
const SWEEP_MS = 5_000;
/** A subscriber for whom something has waited for so long is gone, whatever his connection says. */
const STALLED_MS = 30_000;

/** Everybody who is told of competitions as they change, and what they share. */
@Injectable()
export class LiveHub implements OnModuleDestroy {
  private readonly topics = new Map<string, LiveTopic>();
  private readonly ofCompetition = new Map<string, Set<LiveTopic>>();
  /** With what ends the connection of each. */
  private readonly subscriptions = new Map<LiveSubscription, () => void>();
  private readonly unwatch = new Map<LiveTopic, () => void>();
  private readonly sweeping: NodeJS.Timeout;

  constructor(
    private readonly memory: CompetitionMemory,
    private readonly log: Log,
    changes: CompetitionChanges,
    access: AccessMemory,
  ) {
    changes.listen(({ competitionId }) => {
      for (const topic of this.ofCompetition.get(competitionId) ?? []) topic.touch();
    });
    access.onChange(() => this.check());
    this.sweeping = setInterval(() => {
      this.check();
      this.cutStalled(Date.now() - STALLED_MS);
    }, SWEEP_MS).unref();
  }

  onModuleDestroy(): void {
    clearInterval(this.sweeping);
    for (const topic of [...this.topics.values()]) topic.close();
  }

  /** Subscriptions that are open now. */
  get count(): number {
    return this.subscriptions.size;
  }

  /** Serves a subscription that has been validated. An error that is found here is its result. */
  async subscribe(args: ExecutionArgs): Promise<AsyncIterable<ExecutionResult> | ExecutionResult> {
    const source: unknown = await createSourceEventStream(args);
    if (!(source instanceof LiveSource)) return source as ExecutionResult;
    const context = args.contextValue as RequestContext;
    const release = context.connection.hold();
    if (!release) return { errors: [tooManyListeners('streams')] };
    const field = rootFieldOf(args);
    const key = this.keyOf(source, args, field);
    const topic = this.topics.get(key) ?? this.open(key, source, args, field);
    const subscription: LiveSubscription = new LiveSubscription(
      source.since,
      context.identity.isPublic ? null : () => refusalOf(source, context),
      () => {
        this.leave(key, topic, subscription);
        release();
      },
    );
    this.subscriptions.set(subscription, () => context.connection.cut());
    topic.add(subscription);
    return subscription;
  }

  /** Asks for all who are not simply the public whether they may go on. */
  private check(): void {
    for (const subscription of this.subscriptions.keys()) void subscription.check();
  }

  private cutStalled(beforeMs: number): void {
    for (const [subscription, cut] of this.subscriptions) {
      if ((subscription.waitingSinceMs ?? Infinity) >= beforeMs) continue;
      subscription.end();
      cut();
    }
  }

  private open(key: string, source: LiveSource, args: ExecutionArgs, field: FieldNode): LiveTopic {
    const { organisationId, competitionId } = source.of;
    const topic = new LiveTopic({
      source,
      args,
      document: args.document,
      field: field.name.value,
      onFailure: (error) => this.log.failure('a live table could not be made', error),
    });
    this.topics.set(key, topic);
    const topics = this.ofCompetition.get(competitionId) ?? new Set();
    this.ofCompetition.set(competitionId, topics.add(topic));
    this.unwatch.set(topic, this.memory.watch(organisationId, competitionId));
    return topic;
  }

  private leave(key: string, topic: LiveTopic, subscription: LiveSubscription): void {
    this.subscriptions.delete(subscription);
    topic.subscriptions.delete(subscription);
    if (topic.subscriptions.size > 0) return;
    if (this.topics.get(key) === topic) this.topics.delete(key);
    this.unwatch.get(topic)?.();
    this.unwatch.delete(topic);
    const topics = this.ofCompetition.get(topic.competitionId);
    topics?.delete(topic);
    if (topics?.size === 0) this.ofCompetition.delete(topic.competitionId);
    topic.close();
  }

  /** What two subscriptions must have in common to be told the same. */
  private keyOf(
    { of, audience }: LiveSource,
    { document, operationName, variableValues }: ExecutionArgs,
    field: FieldNode,
  ): string {
    const { [ownVariable(document, field) ?? '']: _own, ...shared } = variableValues ?? {};
    return JSON.stringify([document.loc?.source.body, operationName, of, audience, shared]);
  }
}

async function refusalOf(source: LiveSource, context: RequestContext): Promise<GraphQLError | null> {
  try {
    const identity = await context.connection.identify();
    if (source.isStillOf(identity)) return null;
    return forbidden('The right to see this has ended.');
  } catch (error) {
    context.connection.refuse();
    return error instanceof GraphQLError ? error : forbidden('The right to see this has ended.');
  }
}

/** A subscription has one field; the rules of GraphQL have seen to it. */
function rootFieldOf({ document, operationName }: ExecutionArgs): FieldNode {
  const operation = getOperationAST(document, operationName);
  let found: FieldNode | undefined;
  visit(document, { Field: (node) => ((found ??= node), false) });
  const own = operation?.selectionSet.selections.find(({ kind }) => kind === Kind.FIELD);
  return (own as FieldNode | undefined) ?? found!;
}

/** The variable that says what a subscriber has already, if it says nothing else: in it subscribers may differ. */
function ownVariable(document: DocumentNode, { arguments: given = [] }: FieldNode): string | null {
  const value = given.find(({ name }) => name.value === 'sinceVersion')?.value;
  if (value?.kind !== Kind.VARIABLE) return null;
  const name = value.name.value;
  let uses = 0;
  // Once where it is declared, once where it is used.
  visit(document, { Variable: (node) => void (uses += node.name.value === name ? 1 : 0) });
  return uses === 2 ? name : null;
}
