import { competitions, meets, type CompetitionRow, type MeetRow, type NewCompetition } from '#persistence';
import {
  editionsOf,
  eventOf,
  isDistanceEvent,
  parseMark,
  resolvePlan,
  ruleSet,
  type PlanOverrides,
} from '#rules';
import { Injectable } from '@nestjs/common';
import { createOnce, type Created } from '../platform/database/create-once.js';
import { Database } from '../platform/database/database.js';
import { notFound } from '../platform/errors/outcomes.js';
import { refusal, type Refusal } from '../platform/errors/user-error.types.js';
import type { Identity } from '../platform/identity/identity.js';
import { isGiven } from '../platform/inputs/given.js';
import { uuidV7 } from '../platform/inputs/uuid-v7.js';
import { CompetitionChanges } from '../platform/live/competition-changes.js';
import type { CompetitionCreateInput, CompetitionWithholdInput, PlanInput } from './competitions.inputs.js';
import { editionProblem } from './meets.service.js';
import { heightProblems, termsOf, verticalShapeProblems } from './vertical-terms.js';

/** Setting up what is ranked. */
@Injectable()
export class CompetitionsService {
  constructor(
    private readonly database: Database,
    private readonly changes: CompetitionChanges,
  ) {}

  /** All problems at once, or the competition as a draft. */
  async create(
    input: CompetitionCreateInput,
    viewer: Identity,
  ): Promise<Created<CompetitionRow> | { readonly refusals: Refusal[] }> {
    viewer.requireDirector(input.meetId);
    const { organisationId } = viewer;
    const meet = await this.database.read((at) => meets.find(at, organisationId, input.meetId));
    if (!meet) return { refusal: notFound('meet', ['meetId']) };
    const rules = rulesOf(input, meet);
    const refusals = [
      ...rules.problems,
      ...eventProblems(input),
      ...verticalShapeProblems(input),
      ...qualifyingProblems(input),
    ];
    if (rules.problems.length === 0) {
      refusals.push(
        ...(isDistanceEvent(input.event) ? planProblems(input, rules) : heightProblems(input, rules)),
      );
    }
    if (refusals.length > 0) return { refusals };
    const wanted = newCompetition(input, rules, organisationId);
    return createOnce<CompetitionRow, typeof wanted>(this.database, {
      wanted,
      find: (tx, id) => competitions.find(tx, organisationId, id),
      insert: async (tx) => {
        await competitions.insert(tx, wanted);
        return null;
      },
    });
  }

  /** Keeps everything of a competition from those who do not work at it, or lets it go. */
  async withhold(
    { competitionId, isWithheld, until }: CompetitionWithholdInput,
    viewer: Identity,
  ): Promise<{ readonly row: CompetitionRow } | { readonly refusal: Refusal }> {
    const { organisationId } = viewer;
    const done = await this.database.write(async (tx) => {
      const row = await competitions.lock(tx, organisationId, competitionId);
      if (!row) return { refusal: notFound('competition', ['competitionId']) };
      viewer.requireDirector(row.meetId);
      const withheldUntil = isWithheld ? (until?.toISOString() ?? null) : null;
      const changes = { isWithheld, withheldUntil };
      const version = await competitions.updateAt(tx, organisationId, competitionId, row.version, changes);
      return { row: { ...row, ...changes, version: version! } };
    });
    if ('refusal' in done) return done;
    this.changes.announce({ competitionId, version: done.row.version });
    return done;
  }
}

interface RulesInForce {
  readonly rules: CompetitionRow['rules'];
  readonly edition: string;
  readonly problems: readonly Refusal[];
}

/** The competition's own rule set, or the meet's. An edition alone belongs to the meet's rule set. */
function rulesOf(input: CompetitionCreateInput, meet: MeetRow): RulesInForce {
  const rules = input.rules ?? meet.rules;
  const inherited = rules === meet.rules ? meet.edition : (editionsOf(rules).at(-1) ?? '');
  const edition = input.edition ?? inherited;
  const problem = editionProblem(rules, edition);
  return { rules, edition, problems: problem ? [problem] : [] };
}

function eventProblems({ event, implementGrams }: CompetitionCreateInput): Refusal[] {
  if (!implementGrams || eventOf(event).hasImplement) return [];
  return [
    refusal({
      code: 'IMPLEMENT_NOT_EXPECTED',
      path: ['implementGrams'],
      message: 'Nothing is thrown in this event.',
      remedy: 'Leave the field out.',
    }),
  ];
}

function qualifyingProblems({ stage, qualifying, unit }: CompetitionCreateInput): Refusal[] {
  if (stage === 'final' && qualifying) {
    return [
      refusal({
        code: 'QUALIFYING_NOT_EXPECTED',
        path: ['qualifying'],
        message: 'A final has no standard to qualify with.',
        remedy: 'Leave the field out, or make it a qualification.',
      }),
    ];
  }
  if (stage === 'qualification' && !qualifying) {
    return [
      refusal({
        code: 'QUALIFYING_MISSING',
        path: ['qualifying'],
        message: 'A qualification needs its standard.',
        remedy: 'Send the standard, and how many are filled up.',
      }),
    ];
  }
  if (qualifying && parseMark(qualifying.standard)?.unit !== unit) {
    return [
      refusal({
        code: 'WRONG_UNIT',
        path: ['qualifying', 'standard'],
        message: 'The standard is not in the unit of the competition.',
        remedy: 'Write it in the unit in which the event is measured.',
      }),
    ];
  }
  return [];
}

function planProblems({ stage, plan }: CompetitionCreateInput, { rules, edition }: RulesInForce): Refusal[] {
  const resolved = resolvePlan(ruleSet(rules, edition), stage, overridesOf(plan));
  if (resolved.ok) return [];
  return resolved.problems.map(({ code, path, message }) =>
    refusal({
      code,
      path: ['plan', ...path.split('/').slice(1)],
      message,
      remedy: 'Change the plan, or leave the key out.',
    }),
  );
}

/** Only the keys that were sent with a value. */
function overridesOf(plan: PlanInput | null | undefined): PlanOverrides {
  if (!plan) return {};
  const { rounds, cuts, cutTies, reorderAfter, reorder } = plan;
  return {
    ...(isGiven(rounds) && { rounds }),
    ...(cuts && { cuts: cuts.map(({ after, through }) => ({ after, through })) }),
    ...(cutTies && { cutTies }),
    ...(reorderAfter && { reorderAfter }),
    ...(reorder && { reorder }),
  };
}

function newCompetition(
  input: CompetitionCreateInput,
  { rules, edition }: RulesInForce,
  organisationId: string,
): NewCompetition {
  const { qualifying, vertical, unit } = input;
  const standard = qualifying ? parseMark(qualifying.standard) : null;
  return {
    organisationId,
    id: input.id ?? uuidV7(),
    meetId: input.meetId,
    title: input.title,
    event: input.event,
    rules,
    edition,
    indoor: input.isIndoor,
    stage: input.stage,
    qualifying: qualifying && standard ? { standard: standard.value, fill: qualifying.fill } : null,
    plan: overridesOf(input.plan),
    vertical: vertical ? termsOf(vertical, unit) : null,
    unit,
    categorySex: input.categorySex ?? null,
    categoryAge: input.categoryAge ?? null,
    categoryScheme: input.categoryScheme ?? null,
    implementGrams: input.implementGrams ?? null,
    scoring: null,
    startsAt: input.startsAt?.toISOString() ?? null,
  };
}
