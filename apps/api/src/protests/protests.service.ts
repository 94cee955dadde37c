import { Injectable } from '@nestjs/common';
import {
  proceedings,
  type NewProtestStep,
  type ProtestState,
  type ProtestStepRow,
  type Tx,
} from '#persistence';
import {
  appealTimeliness,
  isTrial,
  nextSteps,
  timelinessOf,
  windowUntil,
  type ProtestOutcome,
  type ProtestStepKind,
} from '#rules';
import type { LoadedCompetition } from '../platform/competition/loaded.js';
import { protestOf, protestRulesOf, resultStateIn } from '../platform/competition/proceedings.js';
import { forbidden } from '../platform/errors/api-error.js';
import { notFound } from '../platform/errors/outcomes.js';
import type { Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { inFuture } from './moments.js';
import { ProceedingsService, type ProceedingOutcome } from './proceedings.service.js';
import { ProtestRuling } from './protest-ruling.service.js';
import type {
  ProtestAppealInput,
  ProtestDecideInput,
  ProtestLodgeInput,
  ProtestWithdrawInput,
} from './protests.inputs.js';
import { stepRefusal } from './step-refusal.js';

type StepInput = ProtestDecideInput | ProtestAppealInput | ProtestWithdrawInput;

/** What is to be stored of a step. */
interface StepParts {
  readonly input: StepInput;
  /** The kinds that it may be, as things stand. */
  readonly kinds: readonly ProtestStepKind[];
  readonly outcome: ProtestOutcome | null;
  readonly rule: string | null;
  readonly deposit: ProtestStepRow['deposit'];
}

/** Protests: written down as they come in, decided by the referee, and on appeal by the jury. */
@Injectable()
export class ProtestsService {
  constructor(
    private readonly service: ProceedingsService,
    private readonly ruling: ProtestRuling,
  ) {}

  lodge(viewer: Identity, input: ProtestLodgeInput): Promise<ProceedingOutcome> {
    const { entryId: id, competitionId, form, ground, lodgedBy, reason } = input;
    const { competitorId = null, trialId: attemptId = null, deposit = null } = input;
    const wanted = { form, ground, lodgedBy, reason, competitorId, attemptId, deposit };
    const lodgedAt = input.lodgedAt ?? new Date();
    return this.service.proceed(viewer, input, {
      earlier: ({ proceedings: { protests } }) => {
        const there = protests.find((protest) => protest.id === id);
        return there ? sameOrOther(there, wanted) : null;
      },
      store: async (tx, loaded, written) => {
        const problem = inFuture(lodgedAt, 'lodgedAt') ?? unknownIn(loaded, competitorId, attemptId);
        if (problem) return problem;
        const rules = protestRulesOf(loaded);
        const { announcedAt } = resultStateIn(loaded);
        const until = windowUntil(rules, ground, announcedAt);
        await proceedings.lodge(tx, {
          ...{ organisationId: loaded.row.organisationId, id, competitionId, ...wanted, ...written },
          lodgedAt: lodgedAt.toISOString(),
          depositPaid: input.isDepositPaid && deposit !== null,
          timeliness: timelinessOf(rules, ground, announcedAt, lodgedAt.getTime()),
          windowUntil: until === null ? null : new Date(until).toISOString(),
        });
        return loaded;
      },
    });
  }

  /** By the referee; after an appeal by the jury. A trial held under protest is ruled on with it. */
  decide(viewer: Identity, input: ProtestDecideInput): Promise<ProceedingOutcome> {
    const { outcome, rule = null, deposit = null } = input;
    return this.step(viewer, { input, kinds: ['appeal-decision', 'decision'], outcome, rule, deposit });
  }

  appeal(viewer: Identity, input: ProtestAppealInput): Promise<ProceedingOutcome> {
    const deposit = input.isDepositPaid ? 'paid' : null;
    return this.step(viewer, { input, kinds: ['appeal'], outcome: null, rule: null, deposit });
  }

  withdraw(viewer: Identity, input: ProtestWithdrawInput): Promise<ProceedingOutcome> {
    const { deposit = null } = input;
    return this.step(viewer, { input, kinds: ['withdrawal'], outcome: null, rule: null, deposit });
  }

  private step(viewer: Identity, parts: StepParts): Promise<ProceedingOutcome> {
    const { input, outcome, rule, deposit } = parts;
    const wanted = {
      protestId: input.protestId,
      doneBy: input.by,
      reason: input.reason,
      outcome,
      rule,
      deposit,
    };
    const at = input.at ?? new Date();
    return this.service.proceed(viewer, input, {
      earlier: ({ proceedings: { protests } }) => {
        const there = protests.flatMap(({ steps }) => steps).find(({ id }) => id === input.entryId);
        return there ? sameOrOther(there, wanted) : null;
      },
      store: async (tx, loaded, written, by) => {
        if (outcome !== null && written.authority === 'official')
          throw forbidden('Only a referee or director may do this.');
        const protest = loaded.proceedings.protests.find(({ id }) => id === input.protestId);
        if (!protest) return notFound('protest', ['protestId']);
        const next = nextSteps(protestOf(protest));
        const kind = parts.kinds.find((one) => next.includes(one));
        const problem = kind === undefined ? stepRefusal(parts.kinds.at(-1)!) : inFuture(at, 'at');
        if (problem) return problem;
        const ruled =
          outcome === null ? loaded : await this.ruling.rule(tx, loaded, { protest, outcome, input }, by);
        if ('code' in ruled) return ruled;
        const { organisationId } = loaded.row;
        const row = { organisationId, id: input.entryId, ...wanted, kind: kind!, ...written };
        await addStep(tx, ruled, protest, { ...row, doneAt: at.toISOString() });
        return ruled;
      },
    });
  }
}

async function addStep(
  tx: Tx,
  loaded: LoadedCompetition,
  { steps }: ProtestState,
  row: Omit<NewProtestStep, 'timeliness'>,
): Promise<void> {
  const decidedAt = steps.findLast(({ kind }) => kind === 'decision')?.doneAt;
  const isLate =
    row.kind === 'appeal' &&
    decidedAt !== undefined &&
    appealTimeliness(protestRulesOf(loaded), Date.parse(decidedAt), Date.parse(row.doneAt)) === 'late';
  await proceedings.addStep(tx, { ...row, timeliness: isLate ? 'late' : 'in time' });
}

function sameOrOther<T extends object>(there: T, wanted: Partial<T>): 'same' | 'other' {
  const keys = Object.keys(wanted) as (keyof T)[];
  return keys.every((key) => there[key] === wanted[key]) ? 'same' : 'other';
}

/** Somebody or something that the competition does not have. */
function unknownIn(
  { roster, state }: LoadedCompetition,
  competitorId: string | null,
  attemptId: string | null,
): Refusal | null {
  if (competitorId !== null && !roster.some(({ competitor }) => competitor.id === competitorId))
    return notFound('competitor', ['competitorId']);
  const isThere = state.journal.some(({ entry }) => entry.id === attemptId && isTrial(entry.kind));
  return attemptId === null || isThere ? null : notFound('trial', ['trialId']);
}
