import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import { GqlExecutionContext, type GqlContextType } from '@nestjs/graphql';
import { forbidden, unauthenticated } from '../errors/api-error.js';
import type { RequestContext } from '../graphql/request-context.js';
import { RIGHTS, type Rights } from './rights.js';

/** Denies every query, mutation and subscription that does not declare who may call it. */
@Injectable()
export class RightsGuard implements CanActivate {
  constructor(private readonly reflector: Reflector) {}

  canActivate(context: ExecutionContext): boolean {
    // Health checks are the only plain HTTP routes, and public.
    if (context.getType<GqlContextType>() !== 'graphql') return true;
    const rights = this.reflector.get<Rights | undefined>(RIGHTS, context.getHandler());
    if (rights === 'public' || rights === 'credential') return true;
    const { identity } = GqlExecutionContext.create(context).getContext<RequestContext>();
    if (identity.isPublic) throw unauthenticated('This needs a token: send it as "Authorization: Bearer …".');
    if (rights === 'holder') return true;
    const open = identity.open();
    if (rights?.some((role) => open.some((grant) => grant.role === role))) return true;
    throw forbidden('The token does not allow this.');
  }
}
