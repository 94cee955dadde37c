import type { Identity } from '../identity/identity.js';

/** What a subscription shows at one version. */
export interface LiveSnapshot {
  readonly version: number;
  /** What the subscription's field is resolved from. */
  readonly value: object;
}

/**
 * What the resolver of a subscription gives: what is to be told, to whom, and how to read it. Everybody who asks for the
 * same as the same audience shares one reading, one execution and one text a version.
 */
export class LiveSource implements AsyncIterable<never> {
  constructor(
    readonly of: { readonly organisationId: string; readonly competitionId: string },
    /** What somebody else must have in common to be told the same. */
    readonly audience: string,
    /** In whose name it is read: somebody who may see what this audience may, and no more. */
    readonly reader: Identity,
    /** Whether somebody is still of this audience. */
    readonly isStillOf: (identity: Identity) => boolean,
    /** What the subscriber has already: nothing of this version or an older one is sent. */
    readonly since: number | null,
    /** As it is now; null: it is no longer there to be seen. */
    readonly read: () => Promise<LiveSnapshot | null>,
  ) {}

  /** It is never iterated: whoever serves subscriptions knows it by its class. */
  [Symbol.asyncIterator](): AsyncIterator<never> {
    throw new Error('A live source is shared, not read.');
  }
}
