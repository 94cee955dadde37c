import type { CategoryDefinition, RuleSetCode } from '#rules';
import { Args, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { asDefinition } from '../platform/competition/category.js';
import { badUserInput } from '../platform/errors/api-error.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { uuidOf } from '../platform/inputs/global-id.js';
import { Competition } from '../platform/objects/competition.type.js';
import { RuleSetEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import { AgeFactorsService } from './age-factors.service.js';
import { AgeFactorsSetInput, CategoryDefinitionAddInput } from './categories.inputs.js';
import {
  AgeCategories,
  AgeFactorsSetPayload,
  AgeGradedList,
  CategoryDefinitionAddPayload,
} from './categories.types.js';
import { DefinitionsService, type InForce } from './definitions.service.js';

/** Age categories, and what age factors make of marks. */
@Resolver(() => Competition)
export class CategoriesResolver {
  constructor(
    private readonly definitions: DefinitionsService,
    private readonly factors: AgeFactorsService,
  ) {}

  @Query(() => [AgeCategories], {
    nullable: true,
    complexity: 5,
    description:
      'The age categories in force on a day: of a meet, or of a rule set. Null: the meet is not there, or not published and not yours.',
  })
  @Public()
  async ageCategories(
    @Viewer() viewer: Identity,
    @Args('meetId', { type: () => ID, nullable: true }) meetId?: string | null,
    @Args('rules', { type: () => RuleSetEnum, nullable: true }) rules?: RuleSetCode | null,
    @Args('on', {
      type: () => CalendarDate,
      nullable: true,
      description: 'Absent: the first day of the meet. A rule set needs it.',
    })
    on?: string | null,
  ): Promise<AgeCategories[] | null> {
    const meet = uuidOf('Meet', meetId);
    if (meet !== null && !rules) {
      const found = await this.definitions.ofMeet(meet, on ?? null, viewer);
      return found && viewOf(found);
    }
    if (typeof meetId === 'string' || !rules || typeof on !== 'string') throw WHICH;
    return viewOf(await this.definitions.ofRules(rules, on, viewer));
  }

  @ResolveField(() => AgeGradedList, {
    nullable: true,
    description:
      'Marks times age factors, where the meet has entered some: beside the places, which it does not touch. Factors for each year of age are shown to those who work at the meet only.',
  })
  async ageGraded(@Parent() { row }: Competition, @Viewer() viewer: Identity): Promise<AgeGradedList | null> {
    return this.factors.listOf(row, viewer);
  }

  @Mutation(() => CategoryDefinitionAddPayload, {
    description:
      'Lays down age categories of the organisation’s own, from a day on. What was laid down stays known. Codes: DAY, VALIDITY, BANDS_MISSING, BAND_TWICE, AGES, ID_REUSED.',
  })
  @Needs('admin')
  async categoryDefinitionAdd(
    @Args('input') input: CategoryDefinitionAddInput,
    @Viewer() viewer: Identity,
  ): Promise<CategoryDefinitionAddPayload> {
    const added = await this.definitions.add(input, viewer);
    if ('row' in added) {
      const definition = asDefinition(added.row);
      const [ageCategories] = viewOf({ definitions: [definition], own: new Set([definition]) });
      return { ageCategories: ageCategories ?? null, isReplay: added.replayed, userErrors: [] };
    }
    const userErrors = 'refusals' in added ? added.refusals : [added.refusal];
    return { ageCategories: null, isReplay: false, userErrors };
  }

  @Mutation(() => AgeFactorsSetPayload, {
    description:
      'Enters the age factors of an event at a meet, with their source. Codes: NOT_FOUND, MISSING, DUPLICATE, FACTOR, SEX.',
  })
  @Needs('admin', 'director')
  async ageFactorsSet(
    @Args('input') input: AgeFactorsSetInput,
    @Viewer() viewer: Identity,
  ): Promise<AgeFactorsSetPayload> {
    const set = await this.factors.set(input, viewer);
    if ('refusals' in set) return { event: null, revision: null, userErrors: set.refusals };
    return { event: set.row.event, revision: set.row.revision, userErrors: [] };
  }
}

const WHICH = badUserInput('It takes a meet, or a rule set and a day.', [
  {
    path: ['meetId'],
    rule: 'meetOrRules',
    message: 'meetId, or rules together with on, is needed',
    remedy: 'Send the id of a meet, or a rule set and a day.',
  },
]);

function viewOf({ definitions, own }: InForce): AgeCategories[] {
  return definitions.map((definition) => ({
    scheme: definition.scheme,
    rules: definition.rules,
    isOwn: own.has(definition),
    validFrom: definition.valid.from,
    validUntil: definition.valid.until,
    ageOn: definition.ageOn.kind,
    ageOnDay: dayOf(definition),
    categories: definition.bands.map(({ code, minAge, maxAge }) => ({ code, minAge, maxAge })),
    source: definition.cite.rule,
    isConfirmed: definition.cite.basis === 'read' || definition.cite.basis === 'read in part',
  }));
}

function dayOf({ ageOn }: CategoryDefinition): string | null {
  if (ageOn.kind !== 'next') return null;
  return [ageOn.month, ageOn.day].map((part) => String(part).padStart(2, '0')).join('-');
}
