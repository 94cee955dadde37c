import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { Identity } from './identity.js';
import { TokenIssueInput } from './identity.inputs.js';
import { grantOf, TokenIssuePayload, ViewerInfo, viewerOf } from './identity.types.js';
import { Needs, Public, Viewer } from './rights.js';
import { TokenOffice } from './token-office.js';

@Resolver()
export class IdentityResolver {
  constructor(private readonly office: TokenOffice) {}

  @Query(() => ViewerInfo, { description: 'Who is asking and what the token allows now.' })
  @Public()
  viewer(@Viewer() viewer: Identity): ViewerInfo {
    return viewerOf(viewer);
  }

  @Mutation(() => TokenIssuePayload, {
    description: 'Makes a token for a post of a meet. Codes: NOT_FOUND, WINDOW_EMPTY.',
  })
  @Needs('admin', 'director')
  async tokenIssue(
    @Args('input') input: TokenIssueInput,
    @Viewer() viewer: Identity,
  ): Promise<TokenIssuePayload> {
    const issued = await this.office.issue(input, viewer);
    if ('refusal' in issued) return { token: null, grant: null, userErrors: [issued.refusal] };
    return { token: issued.token, grant: grantOf(issued.grant), userErrors: [] };
  }
}
