import { Args, Context, ID, Mutation, Parent, Query, ResolveField, Resolver } from '@nestjs/graphql';
import { connectionOf, PageArgs } from '../platform/connections/connection.js';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Holder, Needs, Viewer } from '../platform/identity/rights.js';
import { ReadId } from '../platform/inputs/object-id.js';
import { PersonCloseInput, PersonCreateInput, SetupCodeIssueInput } from './people.inputs.js';
import { PeopleService } from './people.service.js';
import {
  Person,
  PersonClosePayload,
  PersonConnection,
  PersonCreatePayload,
  personObject,
  SetupCodeIssuePayload,
} from './people.types.js';
import { RolesService } from './roles.service.js';
import { RoleGrant, roleGrantObject } from './roles.types.js';

@Resolver(() => Person)
export class PeopleResolver {
  private readonly roleLoader = loaderPerRequest((rows: readonly Person['row'][]) =>
    this.roles.ofPersons(rows),
  );

  constructor(
    private readonly service: PeopleService,
    private readonly roles: RolesService,
  ) {}

  @Query(() => PersonConnection, { description: 'By login name. For directors and administrators.' })
  @Needs('admin', 'director')
  async people(@Args() args: PageArgs, @Viewer() viewer: Identity): Promise<PersonConnection> {
    return connectionOf(args, () => this.service.page(args, viewer), personObject);
  }

  @Query(() => Person, { nullable: true, description: 'Oneself; anybody for directors and administrators.' })
  @Holder()
  async person(
    @Args('id', { type: () => ID }, new ReadId('Person')) id: string,
    @Viewer() viewer: Identity,
  ): Promise<Person | null> {
    const row = await this.service.find(id, viewer);
    return row && personObject(row);
  }

  @ResolveField(() => [RoleGrant], { description: 'Everything that was ever given, in the order of giving.' })
  async grants(@Parent() person: Person, @Context() context: RequestContext): Promise<RoleGrant[]> {
    return (await this.roleLoader(context).load(person.row)).map(roleGrantObject);
  }

  @Mutation(() => PersonCreatePayload, {
    description:
      'Makes an account without a role, and the one-time code with which its person chooses a password. Codes: NAME_TAKEN, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async personCreate(
    @Args('input') input: PersonCreateInput,
    @Viewer() viewer: Identity,
  ): Promise<PersonCreatePayload> {
    const made = await this.service.create(input, viewer);
    if ('refusal' in made)
      return { person: null, setupCode: null, isReplay: false, userErrors: [made.refusal] };
    return { person: personObject(made.row), setupCode: made.code, isReplay: made.replayed, userErrors: [] };
  }

  @Mutation(() => PersonClosePayload, {
    description: 'Closes an account and ends its sessions. What its person did stays. Codes: NOT_FOUND.',
  })
  @Needs('admin')
  async personClose(
    @Args('input') { personId }: PersonCloseInput,
    @Viewer() viewer: Identity,
  ): Promise<PersonClosePayload> {
    const closed = await this.service.close(personId, viewer);
    if ('refusal' in closed) return { person: null, userErrors: [closed.refusal] };
    return { person: personObject(closed.row), userErrors: [] };
  }

  @Mutation(() => SetupCodeIssuePayload, {
    description:
      'Another one-time code, for a password that was lost. A director: for people without a role beyond the own meets. Codes: NOT_FOUND.',
  })
  @Needs('admin', 'director')
  async setupCodeIssue(
    @Args('input') { personId }: SetupCodeIssueInput,
    @Viewer() viewer: Identity,
  ): Promise<SetupCodeIssuePayload> {
    const issued = await this.service.issueCode(personId, viewer);
    if ('refusal' in issued) return { setupCode: null, userErrors: [issued.refusal] };
    return { setupCode: issued.code, userErrors: [] };
  }
}
