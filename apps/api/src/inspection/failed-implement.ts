import {
  competitions,
  journal,
  type ImplementRow,
  type InspectionRow,
  type Reads,
  type Tx,
} from '#persistence';
import { findingSentence, trialsMadeWith, type ImplementQueryEntry } from '#rules';
import { Injectable } from '@nestjs/common';
import { createHash } from 'node:crypto';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import { RecordingService, type Recorded, type RecordedBy } from '../recording/recording.service.js';

/** What a failure is told with. */
export type Failure = Pick<InspectionRow, 'id' | 'meetId' | 'kind' | 'findings' | 'device' | 'deviceAt'>;

/**
 * When an implement does not pass after it was used, the trials made with it are put to the referee: an entry in the
 * journal of each competition, which changes no place and keeps the result from being signed until he has ruled.
 */
@Injectable()
export class FailedImplement {
  constructor(
    private readonly memory: CompetitionMemory,
    private readonly recording: RecordingService,
  ) {}

  /**
   * Enters the questions in the transaction that keeps what was found. Takes the locks of the competitions in the
   * order of their ids. What is given is to be announced after the commit.
   */
  async ask(tx: Tx, implement: ImplementRow, failure: Failure, by: RecordedBy): Promise<Recorded[]> {
    const rows = await competitions.ofMeet(tx, implement.organisationId, failure.meetId);
    const ids = rows.filter(({ event }) => event === implement.event).map(({ id }) => id);
    const recorded: Recorded[] = [];
    for (const id of ids.sort()) {
      const row = await competitions.lock(tx, implement.organisationId, id);
      const loaded = row && (await this.memory.locked(tx, row));
      const attempts = loaded?.kind === 'distance' ? trialsMadeWith(loaded.state, implement.id) : [];
      if (!loaded || attempts.length === 0) continue;
      const body = queryOf(implement, failure, attempts);
      const outcome = await this.recording.recordIn(
        tx,
        loaded,
        {
          competitionId: id,
          entryId: queryId(failure.id, id),
          device: failure.device,
          deviceAt: failure.deviceAt === null ? null : new Date(failure.deviceAt),
          expectedVersion: null,
          entered: { in: 'distance', bodyFor: () => body },
        },
        by,
      );
      if (!outcome.recorded) throw new Error(`A question was refused: ${outcome.userError.code}.`);
      recorded.push(outcome);
    }
    return recorded;
  }

  announce(recorded: readonly Recorded[]): void {
    for (const one of recorded) this.recording.announce(one);
  }
}

/** The trials that became questions with what was found then. */
export async function questionedBy(
  at: Reads,
  { organisationId, id, meetId }: InspectionRow,
): Promise<string[]> {
  const questioned: string[] = [];
  for (const competition of await competitions.ofMeet(at, organisationId, meetId)) {
    const entry = await journal.findEntry(at, organisationId, queryId(id, competition.id));
    if (entry?.body.kind === 'implement-query') questioned.push(...entry.body.attempts);
  }
  return questioned;
}

const MOST_TEXT = 1000;

function queryOf(
  { id, label }: ImplementRow,
  { kind, findings }: Failure,
  attempts: readonly string[],
): ImplementQueryEntry {
  const outside = findings.filter(({ verdict }) => verdict === 'too small' || verdict === 'too large');
  const reason = `${kind} of "${label}": ${outside.map(findingSentence).join('; ')}`;
  return { kind: 'implement-query', attempts, implementId: id, reason: reason.slice(0, MOST_TEXT) };
}

/** Made of what it follows from (RFC 9562 version 8), so that it is found again when a request is sent again. */
function queryId(inspectionId: string, competitionId: string): string {
  const hex = createHash('sha256').update(`implement-query ${inspectionId} ${competitionId}`).digest('hex');
  const variant = '89ab'[Number.parseInt(hex[16]!, 16) % 4];
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
