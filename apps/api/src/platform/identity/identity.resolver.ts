import { Args, Mutation, Query, Resolver } from '@nestjs/graphql';
import type { Identity } from './identity.js';
import { TokenIssueInput, TokenRevokeInput } from './identity.inputs.js';
import { grantOf, TokenIssuePayload, TokenRevokePayload, ViewerInfo, viewerOf } from './identity.types.js';
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
    description:
      'Makes a token for a post of a meet. Codes: NOT_FOUND, WINDOW_EMPTY, BEYOND_OWN, NEEDS_PERSON.',
  })
  @Needs('admin', 'director')
  async tokenIssue(
    @Args('input') input: TokenIssueInput,
    @Viewer() viewer: Identity,
  ): Promise<TokenIssuePayload> {
    const issued = await this.office.issue(input, viewer);
    if ('refusal' in issued) return { token: null, tokenId: null, grant: null, userErrors: [issued.refusal] };
    return { token: issued.token, tokenId: issued.tokenId, grant: grantOf(issued.grant), userErrors: [] };
  }

  @Mutation(() => TokenRevokePayload, {
    description: 'Ends a token of a post or a device before its time, at once. Codes: ALREADY_SO.',
  })
  @Needs('admin')
  async tokenRevoke(
    @Args('input') input: TokenRevokeInput,
    @Viewer() viewer: Identity,
  ): Promise<TokenRevokePayload> {
    const refused = await this.office.revoke(input, viewer);
    return { isRevoked: refused === null, userErrors: refused ? [refused] : [] };
  }
}
