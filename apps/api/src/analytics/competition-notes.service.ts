import { athletes, notebook, observations, type AthleteRow, type CountingObservation } from '#persistence';
import { isTechniqueEvent } from '#technique';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { Database } from '../platform/database/database.js';
import type { Identity } from '../platform/identity/identity.js';
import { globalId } from '../platform/inputs/global-id.js';
import { handOf } from '../technique/hand.js';
import { notebookAthlete } from '../technique/notebook-view.js';
import { isReleased } from '../technique/notebook.service.js';
import { observationObject } from '../technique/practice.types.js';
import { shown } from '../technique/words-for.js';
import type { CompetitionNotes, NotedTrial } from './competition-notes.types.js';
import { historyThrow } from './history.types.js';
import { throwsOf, usualVariant, type MeetThrow } from './meet-throws.js';

/** What coaches saw at a competition, beside what officials recorded. */
@Injectable()
export class CompetitionNotesService {
  constructor(
    private readonly database: Database,
    private readonly memory: CompetitionMemory,
  ) {}

  /** Null: there is no such competition, or nobody in it whom the viewer follows. */
  async notes(competitionId: string, viewer: Identity): Promise<CompetitionNotes | null> {
    const { organisationId } = viewer;
    const loaded = await this.memory.current(organisationId, competitionId);
    if (!loaded || !isTechniqueEvent(loaded.row.event)) return null;
    const lines = loaded.roster.flatMap(({ competitor: { id, athleteId } }) =>
      athleteId !== null && viewer.follows(athleteId) ? [{ competitorId: id, athleteId }] : [],
    );
    if (lines.length === 0) return null;
    const ids = lines.map(({ athleteId }) => athleteId);
    const [rows, seen, entries] = await this.database.read(async (at) => [
      await athletes.byIds(at, organisationId, ids),
      await observations.ofCompetition(at, organisationId, competitionId),
      await notebook.ofAthletes(at, organisationId, ids),
    ]);
    const throws = throwsOf(loaded);
    return {
      competitionId: globalId('Competition', competitionId),
      title: loaded.row.title,
      series: lines.flatMap(({ competitorId, athleteId }) => {
        const row = rows.find(({ id }) => id === athleteId);
        if (!row) return [];
        const athlete = notebookAthlete(row, viewer);
        const own = entries.filter((entry) => entry.athleteId === athleteId);
        const isOpen = athlete.isCoach || isReleased(own, 'notes');
        const of = <T extends { readonly competitorId: string | null }>(all: readonly T[]): T[] =>
          all.filter((one) => one.competitorId === competitorId);
        return [
          {
            ...{ athlete, competitorId: globalId('Competitor', competitorId) },
            trials: trialsOf(row, of(throws), isOpen ? of(seen) : []),
          },
        ];
      }),
    };
  }
}

function trialsOf(
  row: AthleteRow,
  throws: readonly MeetThrow[],
  seen: readonly CountingObservation[],
): readonly NotedTrial[] {
  const rounds = [...new Set([...throws, ...seen].flatMap(({ round }) => round ?? []))].sort((a, b) => a - b);
  const hand = handOf(row);
  return rounds.map((round) => {
    const trial = throws.find((one) => one.round === round);
    return {
      round,
      trial: trial ? historyThrow({ ...trial, variant: usualVariant(trial.event, []) }) : null,
      observations: seen
        .filter((one) => one.round === round)
        .map((one) => observationObject(one, (text) => shown(text, hand))),
    };
  });
}
