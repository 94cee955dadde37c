import { Args, Context, Mutation, Parent, ResolveField, Resolver } from '@nestjs/graphql';
import { loaderPerRequest } from '../platform/graphql/per-request.js';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Needs, Viewer } from '../platform/identity/rights.js';
import { Meet } from '../platform/objects/meet.type.js';
import { Person, personObject } from './people.types.js';
import { RoleGrantInput, RoleRevokeInput } from './roles.inputs.js';
import { RolesService } from './roles.service.js';
import { RoleGrant, roleGrantObject, RoleGrantPayload, RoleRevokePayload } from './roles.types.js';

@Resolver(() => RoleGrant)
export class RolesResolver {
  private readonly personLoader = loaderPerRequest((rows: readonly RoleGrant['row'][]) =>
    this.service.personsOf(rows),
  );

  constructor(private readonly service: RolesService) {}

  @Mutation(() => RoleGrantPayload, {
    description:
      'Gives a person a role for one object. Codes: NOT_FOUND, WINDOW_EMPTY, BEYOND_OWN, ID_REUSED.',
  })
  @Needs('admin', 'director')
  async roleGrant(
    @Args('input') input: RoleGrantInput,
    @Viewer() viewer: Identity,
  ): Promise<RoleGrantPayload> {
    const given = await this.service.give(input, viewer);
    if ('refusal' in given) return { grant: null, isReplay: false, userErrors: [given.refusal] };
    return { grant: roleGrantObject(given.row), isReplay: given.replayed, userErrors: [] };
  }

  @Mutation(() => RoleRevokePayload, {
    description: 'Takes a role away, at once. The record of it stays. Codes: NOT_FOUND, ALREADY_SO.',
  })
  @Needs('admin', 'director')
  async roleRevoke(
    @Args('input') input: RoleRevokeInput,
    @Viewer() viewer: Identity,
  ): Promise<RoleRevokePayload> {
    const taken = await this.service.revoke(input, viewer);
    if ('refusal' in taken) return { grant: null, userErrors: [taken.refusal] };
    return { grant: roleGrantObject(taken.row), userErrors: [] };
  }

  @ResolveField(() => Person)
  async person(@Parent() grant: RoleGrant, @Context() context: RequestContext): Promise<Person> {
    return personObject(await this.personLoader(context).load(grant.row));
  }
}

@Resolver(() => Meet)
export class MeetRolesResolver {
  constructor(private readonly service: RolesService) {}

  @ResolveField(() => [RoleGrant], {
    description: 'Every role that was ever given at the meet, in the order of giving. For its director.',
  })
  async roles(@Parent() meet: Meet, @Viewer() viewer: Identity): Promise<RoleGrant[]> {
    return (await this.service.ofMeet(meet.row, viewer)).map(roleGrantObject);
  }
}
