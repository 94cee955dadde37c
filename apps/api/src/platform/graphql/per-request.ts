import DataLoader from 'dataloader';
import type { RequestContext } from './request-context.js';

/**
 * A loader of its own for every request: what resolvers of one request ask for one by one is read in one statement.
 * Keys are compared by identity, so that rows can be keys.
 */
export function loaderPerRequest<K, V>(
  readAll: (keys: readonly K[]) => Promise<readonly V[]>,
): (context: RequestContext) => DataLoader<K, V> {
  const loaders = new WeakMap<RequestContext, DataLoader<K, V>>();
  return (context) => {
    const known = loaders.get(context);
    if (known) return known;
    const loader = new DataLoader<K, V>(readAll);
    loaders.set(context, loader);
    return loader;
  };
}
