import { applyDecorators, createParamDecorator, SetMetadata, type ExecutionContext } from '@nestjs/common';
import { Extensions, GqlExecutionContext } from '@nestjs/graphql';
import type { RequestContext } from '../graphql/request-context.js';
import type { Role } from './grant.js';
import type { Identity } from './identity.js';

export const RIGHTS = 'sectorline:rights';

/** Anybody may call this. Only for queries: nothing is writable without a token. */
export const Public = () => SetMetadata(RIGHTS, 'public' as const);

/**
 * Holders of one of these roles may call this. Which object the role must be for is checked by the service, in the
 * transaction that reads the object.
 */
export const Needs = (...roles: readonly [Role, ...Role[]]) => SetMetadata(RIGHTS, roles);

/** Whoever shows any token that holds may call this, for what is their own. */
export const Holder = () => SetMetadata(RIGHTS, 'holder' as const);

/**
 * Anybody may call this to prove who they are: a mutation that takes a secret. The service throttles it, and a document
 * holds one of them at most.
 */
export const Credential = () =>
  applyDecorators(SetMetadata(RIGHTS, 'credential' as const), Extensions({ credential: true }));

/** The same for whoever shows a token already, and proves it once more. */
export const HolderCredential = () => applyDecorators(Holder(), Extensions({ credential: true }));

export type Rights = 'public' | 'holder' | 'credential' | readonly Role[];

/** Who is asking: `@Viewer() viewer: Identity`. */
export const Viewer = createParamDecorator(
  (_data: unknown, context: ExecutionContext): Identity =>
    GqlExecutionContext.create(context).getContext<RequestContext>().identity,
);
