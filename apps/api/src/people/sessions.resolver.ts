import { Args, Context, Mutation, Resolver } from '@nestjs/graphql';
import type { RequestContext } from '../platform/graphql/request-context.js';
import type { Identity } from '../platform/identity/identity.js';
import { Credential, Holder, HolderCredential, Viewer } from '../platform/identity/rights.js';
import {
  PasswordChangeInput,
  PasswordSetUpInput,
  SessionRefreshInput,
  SignInInput,
  SignOutInput,
} from './people.inputs.js';
import { personObject } from './people.types.js';
import { SessionsService, type Opened, type Refused } from './sessions.service.js';
import {
  PasswordChangePayload,
  PasswordSetUpPayload,
  SessionRefreshPayload,
  SignInPayload,
  SignOutPayload,
  type SignedInPayload,
} from './sessions.types.js';

/** How a person comes in and goes out. */
@Resolver()
export class SessionsResolver {
  constructor(private readonly service: SessionsService) {}

  @Mutation(() => SignInPayload, {
    description: 'Five failures a minute for an account and from an address. Codes: WRONG_CREDENTIALS.',
  })
  @Credential()
  async signIn(
    @Args('input') input: SignInInput,
    @Context() { address }: RequestContext,
  ): Promise<SignInPayload> {
    return signedIn(await this.service.signIn(input, address));
  }

  @Mutation(() => SessionRefreshPayload, { description: 'Codes: SESSION_ENDED.' })
  @Credential()
  async sessionRefresh(
    @Args('input') { refreshToken }: SessionRefreshInput,
    @Context() { address }: RequestContext,
  ): Promise<SessionRefreshPayload> {
    return signedIn(await this.service.refresh(refreshToken, address));
  }

  @Mutation(() => PasswordSetUpPayload, {
    description:
      'Chooses a password with a one-time code and signs in. Codes: WRONG_CREDENTIALS, PASSWORD_WEAK.',
  })
  @Credential()
  async passwordSetUp(
    @Args('input') input: PasswordSetUpInput,
    @Context() { address }: RequestContext,
  ): Promise<PasswordSetUpPayload> {
    return signedIn(await this.service.setUp(input, address));
  }

  @Mutation(() => PasswordChangePayload, {
    description: 'Ends all other sessions of the person. Codes: WRONG_CREDENTIALS, PASSWORD_WEAK.',
  })
  @HolderCredential()
  async passwordChange(
    @Args('input') input: PasswordChangeInput,
    @Viewer() viewer: Identity,
    @Context() { address }: RequestContext,
  ): Promise<PasswordChangePayload> {
    const changed = await this.service.change(input, viewer, address);
    if (changed === true) return { isChanged: true, userErrors: [] };
    return { isChanged: false, userErrors: [changed.refusal] };
  }

  @Mutation(() => SignOutPayload, { description: 'Ends the session; a token without one is revoked.' })
  @Holder()
  async signOut(
    @Args('input') { isEverywhere }: SignOutInput,
    @Viewer() viewer: Identity,
  ): Promise<SignOutPayload> {
    await this.service.signOut(viewer, isEverywhere);
    return { isSignedOut: true, userErrors: [] };
  }
}

function signedIn(outcome: Opened | Refused): SignedInPayload {
  if ('refusal' in outcome) return { session: null, userErrors: [outcome.refusal] };
  return { session: { ...outcome, person: personObject(outcome.person) }, userErrors: [] };
}
