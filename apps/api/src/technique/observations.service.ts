import {
  athletes,
  competitions,
  competitors,
  observations,
  practice,
  violationOf,
  type AthleteRow,
  type NewObservation,
  type Tx,
} from '#persistence';
import { Injectable } from '@nestjs/common';
import { CompetitionMemory } from '../platform/competition/competition-memory.js';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { Batch, noSuch } from './batch.js';
import { handOf } from './hand.js';
import { newObservation, type ThrowSeen } from './new-observation.js';
import type { ObservationLogInput, ObservationsLogInput, TrialRefInput } from './observations.inputs.js';
import { keepObservation } from './practice.service.js';
import { VocabularyService } from './vocabulary.service.js';

/** What coaches saw of throws: of practice, and of trials at meets. */
@Injectable()
export class ObservationsService {
  constructor(
    private readonly database: Database,
    private readonly vocabularies: VocabularyService,
    private readonly memory: CompetitionMemory,
  ) {}

  /** Keeps what can be kept, in one transaction; what is refused keeps nothing else out. */
  async log(input: ObservationsLogInput, viewer: Identity): Promise<Batch> {
    viewer.requireCoachOf(input.athleteId);
    const trials = await this.trialsOf(input, viewer);
    try {
      return await this.attempt(input, viewer, trials);
    } catch (error) {
      // The same batch twice at once: the one that came second finds the rows now.
      if (violationOf(error)?.kind !== 'unique') throw error;
      return this.attempt(input, viewer, trials);
    }
  }

  private async attempt(
    input: ObservationsLogInput,
    viewer: Identity,
    trials: ReadonlyMap<string, LoadedCompetition>,
  ): Promise<Batch> {
    const { organisationId } = viewer;
    const { personId } = viewer.requireAccount();
    const device = { device: input.device ?? null, deviceAt: input.deviceAt?.toISOString() ?? null };
    return this.database.write(async (tx) => {
      const batch = new Batch();
      const athlete = await athletes.find(tx, organisationId, input.athleteId);
      if (!athlete) {
        batch.userErrors.push(notFound('athlete', ['athleteId']));
        return batch;
      }
      const { vocabulary } = await this.vocabularies.read(tx, organisationId);
      const by = { organisationId, personId, ...device, vocabulary, hand: handOf(athlete) };
      const named = input.observations.flatMap(({ id, replacesId }) => [
        id,
        ...(replacesId ? [replacesId] : []),
      ]);
      const there = await observations.byIds(tx, organisationId, named);
      const throws = await this.throwsOf(tx, input, athlete);
      const kept: NewObservation[] = [];
      input.observations.forEach((one, at) => {
        const path = ['observations', String(at)];
        const seen = seenBy(one, athlete.id, { throws, trials }, path);
        const row = 'code' in seen ? [seen] : newObservation(one, seen, by, path);
        if (!('fingerprint' in row)) batch.refused(one.id, ...row);
        else keepObservation(row, path, [...there, ...kept], batch, kept);
      });
      await observations.insert(tx, kept);
      return batch;
    });
  }

  private async throwsOf(
    tx: Tx,
    { observations: all }: ObservationsLogInput,
    { organisationId, id }: AthleteRow,
  ): Promise<ReadonlyMap<string, ThrowSeen>> {
    const ids = all.flatMap(({ throwId }) => throwId ?? []);
    const rows = ids.length > 0 ? await practice.counting(tx, organisationId, ids) : [];
    const own = rows.filter(({ athleteId }) => athleteId === id);
    return new Map(
      own.map(({ throwId, athleteId, event, outcome }) => [
        throwId,
        { athleteId, event, outcome, practiceThrowId: throwId, trial: null },
      ]),
    );
  }

  /** The competitions that are named, as they stand. */
  private async trialsOf(
    { observations: all }: ObservationsLogInput,
    { organisationId }: Identity,
  ): Promise<ReadonlyMap<string, LoadedCompetition>> {
    const ids = new Set(all.flatMap(({ trial }) => trial?.competitionId ?? []));
    const found = await Promise.all([...ids].map((id) => this.memory.current(organisationId, id)));
    return new Map(found.flatMap((loaded) => (loaded ? [[loaded.row.id, loaded]] : [])));
  }

  /** Of whom a trial is; null: of nobody on record. */
  async athleteOfTrial(tx: Tx, organisationId: string, trial: TrialRefInput): Promise<string | null> {
    const competitor = await competitors.find(tx, organisationId, trial.competitorId);
    if (competitor?.competitionId !== trial.competitionId) return null;
    const competition = await competitions.find(tx, organisationId, trial.competitionId);
    return competition ? competitor.athleteId : null;
  }
}

interface Seeable {
  readonly throws: ReadonlyMap<string, ThrowSeen>;
  readonly trials: ReadonlyMap<string, LoadedCompetition>;
}

function seenBy(
  { throwId, trial }: ObservationLogInput,
  athleteId: string,
  { throws, trials }: Seeable,
  path: readonly string[],
): ThrowSeen | Refusal {
  if (isGiven(throwId) === isGiven(trial)) return oneThrow(path);
  if (isGiven(throwId)) return throws.get(throwId) ?? noSuch('throw', [...path, 'throwId']);
  const loaded = trials.get(trial!.competitionId);
  const line = loaded?.roster.find(({ competitor }) => competitor.id === trial!.competitorId);
  if (!loaded || line?.competitor.athleteId !== athleteId) {
    return noSuch('competitor', [...path, 'trial', 'competitorId']);
  }
  if (loaded.kind === 'vertical') return atABar([...path, 'trial', 'competitionId']);
  const { competitionId, competitorId, round } = trial!;
  return {
    ...{ athleteId, event: loaded.row.event, practiceThrowId: null },
    trial: { competitionId, competitorId, round },
    outcome: outcomeOf(loaded, competitorId, round),
  };
}

/** A coach may be quicker than the official: a trial that is not there yet is taken for one that was made. */
function outcomeOf(
  { state }: Extract<LoadedCompetition, { readonly kind: 'distance' }>,
  competitorId: string,
  round: number,
): ThrowSeen['outcome'] {
  const id = state.competitors.find(({ key }) => key === competitorId)?.series[round - 1];
  const outcome = typeof id === 'string' ? state.attempts.get(id)?.judgement.outcome : undefined;
  if (outcome === 'pass' || outcome === 'retired') return 'pass';
  return outcome === 'foul' ? 'foul' : 'valid';
}

function oneThrow(path: readonly string[]): Refusal {
  return refusal({
    code: 'THROW_NOT_NAMED',
    path: [...path, 'throwId'],
    message: 'An observation is of a throw of practice, or of a trial.',
    remedy: 'Send one of throwId and trial.',
  });
}

function atABar(path: readonly string[]): Refusal {
  return refusal({
    code: 'WRONG_EVENT',
    path,
    message: 'Jumps at a bar are noted in practice only.',
    remedy: 'Log the jump as a throw of practice and note it there.',
  });
}
