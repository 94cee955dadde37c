import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { categoryDefinitions, categoryOf, type CategoryDefinition, type RuleSetCode } from '#rules';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { badUserInput } from '../platform/errors/api-error.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Public, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { Club, clubObject } from '../platform/objects/club.type.js';
import { RuleSetEnum } from '../platform/objects/words.js';
import { CalendarDate } from '../platform/scalars/calendar-date.js';
import {
  AthleteCreateInput,
  AthleteEraseInput,
  AthleteUpdateInput,
  ClubCreateInput,
} from './athletes.inputs.js';
import { AthletesService } from './athletes.service.js';
import { ErasureService } from './erasure.service.js';
import {
  Athlete,
  AthleteCategory,
  AthleteConnection,
  AthleteCreatePayload,
  AthleteErasePayload,
  athleteObject,
  AthleteUpdatePayload,
  ClubConnection,
  ClubCreatePayload,
} from './athletes.types.js';

@Resolver(() => Athlete)
export class AthletesResolver {
  private readonly clubLoader = loaderPerRequest((rows: readonly Athlete['row'][]) =>
    this.service.clubsOf(rows),
  );

  private readonly definitionLoader = loaderPerRequest((organisations: readonly string[]) =>
    Promise.all(organisations.map((organisationId) => this.service.definitionsOf(organisationId))),
  );

  constructor(
    private readonly service: AthletesService,
    private readonly erasures: ErasureService,
  ) {}

  @Query(() => ClubConnection, { description: 'By name.' })
  @Public()
  async clubs(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<ClubConnection> {
    return connectionOf(args, () => this.service.clubPage(args, viewer), clubObject);
  }

  @Query(() => Club, { nullable: true, description: 'Null: not there.' })
  @Public()
  async club(
    @Args('id', { type: () => ID }, new ReadId('Club')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Club | null> {
    const row = await this.service.findClub(id, viewer);
    return row && clubObject(row);
  }

  @Query(() => Athlete, {
    nullable: true,
    description:
      'For directors and administrators, and for the athlete, a guardian or a coach of the athlete. Null: not there.',
  })
  @Needs('admin', 'director', 'coach', 'athlete', 'guardian')
  async athlete(
    @Args('id', { type: () => ID }, new ReadId('Athlete')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Athlete | null> {
    const row = await this.service.find(id, viewer);
    return row && athleteObject(row);
  }

  @Query(() => AthleteConnection, { description: 'By name. For directors and administrators.' })
  @Needs('admin', 'director')
  async athletes(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<AthleteConnection> {
    return connectionOf(args, () => this.service.page(args, viewer), athleteObject);
  }

  @ResolveField('club', () => Club, { nullable: true })
  async clubOf(@Parent() athlete: Athlete, @Context() context: RequestContext): Promise<Club | null> {
    const row = await this.clubLoader(context).load(athlete.row);
    return row && clubObject(row);
  }

  @ResolveField(() => [AthleteCategory], {
    complexity: 3,
    description:
      'The age categories on a day, by the definitions of a rule set or by those of a scheme: one for each definition that has one. Empty where the date of birth is not known.',
  })
  async categories(
    @Parent() { row }: Athlete,
    @Args('on', { type: () => CalendarDate }) on: string,
    @Context() context: RequestContext,
    @Args('rules', { type: () => RuleSetEnum, nullable: true }) rules?: RuleSetCode | null,
    @Args('scheme', { type: () => String, nullable: true }) scheme?: string | null,
  ): Promise<AthleteCategory[]> {
    const which = typeof scheme === 'string' ? { scheme } : rules ? { rules } : null;
    if (!which) throw SCHEME_MISSING;
    const own = await this.definitionLoader(context).load(row.organisationId);
    return categoriesOn(row, on, categoryDefinitions(which, on, own));
  }

  @Mutation(() => ClubCreatePayload, { description: 'Codes: NAME_TAKEN, ID_REUSED.' })
  @Needs('admin', 'director')
  async clubCreate(
    @Args('input') input: ClubCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<ClubCreatePayload> {
    const made = await this.service.createClub(input, viewer);
    if ('refusal' in made) return { club: null, isReplay: false, userErrors: [made.refusal] };
    return { club: clubObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => AthleteCreatePayload, { description: 'Codes: NOT_FOUND, ID_REUSED.' })
  @Needs('admin', 'director')
  async athleteCreate(
    @Args('input') input: AthleteCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<AthleteCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('refusal' in made) return { athlete: null, isReplay: false, userErrors: [made.refusal] };
    return { athlete: athleteObject(made.row), isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => AthleteUpdatePayload, { description: 'Codes: NOT_FOUND, ERASED.' })
  @Needs('admin', 'director')
  async athleteUpdate(
    @Args('input') input: AthleteUpdateInput,
    @Viewer() viewer: Identity,
  ): Promise<AthleteUpdatePayload> {
    const updated = await this.service.update(input, viewer);
    if ('refusal' in updated) return { athlete: null, userErrors: [updated.refusal] };
    return { athlete: athleteObject(updated.row), userErrors: [] };
  }

  @Mutation(() => AthleteErasePayload, {
    description:
      'Takes the names, the date of birth and the hand of an athlete away for good, everywhere within five minutes; results stay under a pseudonym. It cannot be taken back. Codes: NOT_FOUND.',
  })
  @Needs('admin')
  async athleteErase(
    @Args('input') input: AthleteEraseInput,
    @Viewer() viewer: Identity,
  ): Promise<AthleteErasePayload> {
    const erased = await this.erasures.erase(input, viewer);
    if ('refusal' in erased)
      return { athlete: null, listedLines: 0, isReplay: false, userErrors: [erased.refusal] };
    const { row, lines: listedLines, replayed: isReplay } = erased;
    return { athlete: athleteObject(row), listedLines, isReplay, userErrors: [] };
  }
}

/** Who has one by a definition; a club may have laid down the same scheme anew, and then the latest counts. */
function categoriesOn(
  { birthDate }: Athlete['row'],
  on: string,
  definitions: readonly CategoryDefinition[],
): AthleteCategory[] {
  if (birthDate === null) return [];
  const latest = definitions.filter(
    ({ scheme }, at) => definitions.findIndex((one) => one.scheme === scheme) === at,
  );
  return latest.flatMap((definition) => {
    const outcome = categoryOf(birthDate, on, definition);
    return outcome.ok ? [outcome.category] : [];
  });
}

const SCHEME_MISSING = badUserInput('Nothing says by which age categories.', [
  {
    path: ['rules'],
    rule: 'rulesOrScheme',
    message: 'rules or scheme is needed',
    remedy: 'Send a rule set, or the name of a scheme.',
  },
]);
