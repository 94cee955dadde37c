import type { Identity } from '../identity/identity.js';

/** What a resolver can know of the request. */
export interface RequestContext {
  readonly identity: Identity;
  /** The request's id: in every error as `traceId`, in the log, and in the header `x-request-id`. */
  readonly traceId: string;
}
