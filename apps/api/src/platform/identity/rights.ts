import { createParamDecorator, SetMetadata, type ExecutionContext } from '@nestjs/common';
import { GqlExecutionContext } from '@nestjs/graphql';
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

export type Rights = 'public' | readonly Role[];

/** Who is asking: `@Viewer() viewer: Identity`. */
export const Viewer = createParamDecorator(
  (_data: unknown, context: ExecutionContext): Identity =>
    GqlExecutionContext.create(context).getContext<RequestContext>().identity,
);
