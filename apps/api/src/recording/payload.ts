import { globalId } from '../platform/inputs/global-id.js';
import { competitionObject } from '../platform/objects/competition.type.js';
import type { Recorded, RecordingOutcome } from './recording.service.js';
import type { EntryPayload, Hold } from './recording.types.js';

/** The answer to any mutation of a journal. */
export function payloadOf(outcome: RecordingOutcome): EntryPayload {
  if (!outcome.recorded)
    return { entry: null, isReplay: false, competition: null, userErrors: [outcome.userError] };
  const { entryId, sequence, verdict, recordedAt, replayed, loaded } = outcome;
  return {
    entry: {
      id: entryId,
      sequence,
      standing: verdict.standing,
      hold: holdOf(verdict),
      notices: verdict.standing === 'accepted' ? verdict.notices : [],
      recordedAt: new Date(recordedAt),
    },
    isReplay: replayed,
    competition: competitionObject(loaded.row),
    userErrors: [],
  };
}

export function holdOf(verdict: Recorded['verdict']): Hold | null {
  if (verdict.standing !== 'held') return null;
  const { code, message, rule, remedy } = verdict.hold;
  const idsOf = (keys: readonly string[]): string[] => keys.map((key) => globalId('Competitor', key));
  const cutChanges = verdict.cutChanges.map(({ after, wouldBeIn, wouldBeOut }) => ({
    afterRound: after,
    wouldBeIn: idsOf(wouldBeIn),
    wouldBeOut: idsOf(wouldBeOut),
  }));
  return { code, message, rule, remedy, cutChanges };
}
