import type { CombinedEventRow, MeetRow, Reads } from '#persistence';
import { combinedWindRule, standingRows, type MatchEvent } from '#rules';
import { Injectable } from '@nestjs/common';
import { CombinedEventsService } from './combined-events.service.js';
import type { LoadedCombined } from './combined-loaded.js';

/** A combined event as team scoring looks at it: one event, whatever it is counted from. */
export interface CombinedScore {
  readonly row: CombinedEventRow;
  readonly isProvisional: boolean;
  readonly event: MatchEvent;
}

export interface CombinedScores {
  readonly events: readonly CombinedScore[];
  /** Competitions that are parts of combined events and nothing else: nobody else competes in them. */
  readonly componentIds: ReadonlySet<string>;
}

/** What the combined events of a meet come to for its clubs. */
@Injectable()
export class CombinedScoresService {
  constructor(private readonly events: CombinedEventsService) {}

  /** As they stand. `at` must be one moment. */
  async of(at: Reads, meet: MeetRow): Promise<CombinedScores> {
    const loaded = await this.events.standing(at, meet);
    return { events: loaded.map(scoreOf), componentIds: new Set(loaded.flatMap(partsOf)) };
  }
}

/** Guests compete for no club. */
function scoreOf({ row, meet, state, entrants }: LoadedCombined): CombinedScore {
  const lines = new Map(entrants.map((line) => [line.entrant.id, line]));
  const rows = standingRows(state, combinedWindRule(meet.startsOn).value).map(({ entrant, place }) => {
    const { club, entrant: own } = lines.get(entrant)!;
    return { bib: own.bib, place, club: own.guest ? null : club };
  });
  const { categorySex: sex, categoryAge: age } = row;
  return { row, isProvisional: !state.signedOff, event: { isRelay: false, sex, age, rows } };
}

function partsOf({ linked, problems }: LoadedCombined): string[] {
  return [...linked].flatMap(([event, { row }]) => {
    const isShared = problems.get(event)?.some(({ code }) => code === 'NOT_IN_COMBINED_EVENT');
    return isShared ? [] : [row.id];
  });
}
