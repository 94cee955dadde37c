import { Check, Column, Entity, ForeignKey, Index, PrimaryColumn } from 'typeorm';
import type {
  CompetitionStatus,
  EventCode,
  PlanOverrides,
  Qualifying,
  RuleSetCode,
  Scoring,
  Sex,
  Stage,
  Unit,
} from '../rows.js';
import { OPTIONAL_INSTANT } from './instant.js';

const EVENTS = `'discus', 'shot', 'hammer', 'javelin', 'weight', 'long-jump', 'triple-jump', 'high-jump', 'pole-vault'`;

/** `version` counts every change that a reader could see; `lastSequence` is the number of journal entries. */
@Entity('competition')
@Index('competition_by_meet', ['organisationId', 'meetId'])
@ForeignKey('meet', ['organisationId', 'meetId'], ['organisationId', 'id'], { name: 'competition_meet_fkey' })
@Check('competition_title_length', `length(title) <= 200 AND btrim(title) <> ''`)
@Check('competition_event_known', `event IN (${EVENTS})`)
@Check('competition_rules_known', `rules IN ('WA', 'NFHS', 'NCAA', 'USATF', 'WMA')`)
@Check('competition_edition_length', `length(edition) BETWEEN 1 AND 40`)
@Check('competition_stage_known', `stage IN ('final', 'qualification')`)
@Check('competition_qualifying_iff_qualification', `(stage = 'qualification') = (qualifying IS NOT NULL)`)
@Check(
  'competition_qualifying_shape',
  `qualifying IS NULL OR (qualifying @@ '$.standard.type() == "number" && $.standard >= 1 && $.standard <= 99999 && $.standard.floor() == $.standard && $.fill.type() == "number" && $.fill >= 0 && $.fill <= 2000 && $.fill.floor() == $.fill') IS TRUE`,
)
@Check(
  'competition_plan_keys',
  `jsonb_typeof(plan) = 'object' AND plan - '{rounds,cuts,cutTies,reorderAfter,reorder}'::text[] = '{}'::jsonb`,
)
@Check(
  'competition_plan_rounds',
  `NOT plan ? 'rounds' OR (plan @@ '$.rounds.type() == "number" && $.rounds >= 1 && $.rounds <= 12 && $.rounds.floor() == $.rounds') IS TRUE`,
)
@Check('competition_plan_cuts', `NOT plan ? 'cuts' OR jsonb_typeof(plan -> 'cuts') = 'array'`)
@Check('competition_plan_cut_ties', `NOT plan ? 'cutTies' OR plan -> 'cutTies' IN ('"next-best"', '"mark"')`)
@Check(
  'competition_plan_reorder_after',
  `NOT plan ? 'reorderAfter' OR jsonb_typeof(plan -> 'reorderAfter') = 'array'`,
)
@Check(
  'competition_plan_reorder',
  `NOT plan ? 'reorder' OR plan -> 'reorder' IN ('"reverse"', '"leaders-first"')`,
)
@Check('competition_unit_known', `unit IN ('cm', 'qin')`)
@Check('competition_category_sex_known', `category_sex IN ('W', 'M', 'X')`)
@Check('competition_category_age_length', `length(category_age) BETWEEN 1 AND 40`)
@Check('competition_implement_range', `implement_grams BETWEEN 1 AND 100000`)
@Check('competition_scoring_shape', `jsonb_typeof(scoring) = 'object'`)
@Check('competition_status_known', `status IN ('draft', 'open', 'official')`)
@Check('competition_counters', `last_sequence >= 0 AND version >= last_sequence`)
export class Competition {
  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competition_pkey' })
  organisationId: string;

  @PrimaryColumn('uuid', { primaryKeyConstraintName: 'competition_pkey' })
  id: string;

  @Column('uuid')
  meetId: string;

  @Column('text')
  title: string;

  @Column('text')
  event: EventCode;

  @Column('text')
  rules: RuleSetCode;

  @Column('text')
  edition: string;

  @Column('boolean', { default: false })
  indoor: boolean;

  @Column('text', { default: 'final' })
  stage: Stage;

  @Column('jsonb', { nullable: true })
  qualifying: Qualifying | null;

  @Column('jsonb', { default: {} })
  plan: PlanOverrides;

  @Column('text')
  unit: Unit;

  @Column('text', { nullable: true })
  categorySex: Sex | null;

  @Column('text', { nullable: true })
  categoryAge: string | null;

  @Column('integer', { nullable: true })
  implementGrams: number | null;

  @Column('jsonb', { nullable: true })
  scoring: Scoring | null;

  @Column('text', { default: 'draft' })
  status: CompetitionStatus;

  @Column('integer', { default: 0 })
  version: number;

  @Column('integer', { default: 0 })
  lastSequence: number;

  @Column(OPTIONAL_INSTANT)
  startsAt: string | null;
}
