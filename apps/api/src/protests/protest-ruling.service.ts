import { Injectable } from '@nestjs/common';
import type { ProtestState, Tx } from '#persistence';
import type { ProtestOutcome } from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import type { UserError } from '../platform/errors/user-error.types.js';
import { RecordingService, type RecordedBy } from '../recording/recording.service.js';
import type { ProtestDecideInput } from './protests.inputs.js';

interface Decided {
  readonly protest: ProtestState;
  readonly outcome: ProtestOutcome;
  readonly input: ProtestDecideInput | { readonly entryId: string; readonly reason: string };
}

/** What a decision on a protest means for the trial that it is about. */
@Injectable()
export class ProtestRuling {
  constructor(private readonly recording: RecordingService) {}

  /**
   * Rules in the journal on a trial that is held, or was ruled otherwise before: the entry has the id of the decision.
   * Any other trial is left alone; what has to be put right there is a correction.
   */
  async rule(
    tx: Tx,
    loaded: LoadedCompetition,
    { protest: { attemptId }, outcome, input }: Decided,
    by: RecordedBy,
  ): Promise<LoadedCompetition | UserError> {
    const decision = outcome === 'upheld' ? 'count' : 'dismiss';
    if (attemptId === null || !isToBeRuled(loaded, attemptId, decision)) return loaded;
    const body = { kind: 'ruling', entry: attemptId, decision, reason: input.reason } as const;
    const { device = null, deviceAt = null } = input as Partial<ProtestDecideInput>;
    const request = {
      ...{ competitionId: loaded.row.id, entryId: input.entryId, device, deviceAt },
      ...{ expectedVersion: null, entered: { in: 'any', body } as const },
    };
    const outcomeOf = await this.recording.recordIn(tx, loaded, request, by);
    return outcomeOf.recorded ? outcomeOf.loaded : outcomeOf.userError;
  }
}

function isToBeRuled(
  { state }: LoadedCompetition,
  attemptId: string,
  decision: 'count' | 'dismiss',
): boolean {
  if (state.questions.some(({ entry }) => entry === attemptId)) return true;
  const before = state.activity.rulings.get(attemptId);
  return before !== undefined && before.decision !== decision;
}
