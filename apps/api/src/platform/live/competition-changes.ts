import { Injectable } from '@nestjs/common';

export interface CompetitionChange {
  readonly competitionId: string;
  readonly version: number;
}

export type Listener = (change: CompetitionChange) => void;

/**
 * Tells readers in this process that a competition has a new version; they read again. Announce after the commit and
 * before the answer, so that whoever recorded something finds it in the next table.
 */
@Injectable()
export class CompetitionChanges {
  private readonly listeners = new Set<Listener>();

  announce(change: CompetitionChange): void {
    for (const listener of this.listeners) listener(change);
  }

  /** Returns the function that ends it. A listener must not throw and must not wait. */
  listen(listener: Listener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
