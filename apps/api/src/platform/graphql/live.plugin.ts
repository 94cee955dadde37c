import type { ExecutionArgs } from 'graphql';
import type { Plugin } from 'graphql-yoga';
import type { LiveHub } from './live-hub.js';

/** Has every subscription served by the hub, however it comes in. */
export function useLive(hub: LiveHub): Plugin {
  return {
    onSubscribe({ setSubscribeFn }) {
      setSubscribeFn((args: ExecutionArgs) => hub.subscribe(args));
    },
  };
}
