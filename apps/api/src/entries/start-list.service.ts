import { competitions, competitors, type CompetitionRow, type CompetitorRow, type Tx } from '#persistence';
import { Injectable } from '@nestjs/common';
import type { Identity } from '../platform/identity/identity.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import { noteBesideDraw, noteOrderBesideDraw } from './drawn-list.js';
import { lockStartList, type Locked } from './start-list.js';

/** A line of a start list in its new place. */
export interface ArrangedLine {
  /** Of the competitor. */
  readonly id: string;
  readonly flight: string | null;
}

/** Start lists for those who make them as a whole: a draw, a qualification. */
@Injectable()
export class StartListService {
  constructor(private readonly changes: CompetitionChanges) {}

  /** Locks the competition if its start list may still be made anew, by this viewer. */
  lock(tx: Tx, competitionId: string, viewer: Identity, path: readonly string[]): Promise<Locked> {
    return lockStartList(tx, competitionId, viewer, path);
  }

  /** Puts everybody of the list where `lines` says, as a new version of the competition. */
  async arrange(
    tx: Tx,
    { organisationId, id }: CompetitionRow,
    lines: readonly ArrangedLine[],
  ): Promise<CompetitionRow> {
    await competitors.arrange(tx, organisationId, id, lines);
    await competitions.bumpVersion(tx, organisationId, id);
    return (await competitions.find(tx, organisationId, id))!;
  }

  /** Puts somebody at the end of a list that is in use; the entry that says so is the new version. */
  async addLate(tx: Tx, line: CompetitorRow, holder: string): Promise<void> {
    await competitors.insert(tx, [line]);
    await noteBesideDraw(tx, line, 'entered late', { holder });
  }

  /** Notes beside the competition's draw, if it has one, that the list was put into another order. */
  noteOrder(tx: Tx, competition: CompetitionRow, viewer: Pick<Identity, 'holder'>): Promise<void> {
    return noteOrderBesideDraw(tx, competition, viewer);
  }

  /** Tells the readers, after the commit. */
  announce({ id, version }: CompetitionRow): void {
    this.changes.announce({ competitionId: id, version });
  }
}
