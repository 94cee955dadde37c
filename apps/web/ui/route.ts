import { signal } from '@preact/signals';

/** What the address says: a section (empty: the first one), and what of it is looked at. `#/competition/Q29…`. */
export interface Route {
  readonly section: string;
  readonly id: string | null;
}

export function routeIn(hash: string): Route {
  const [, section = '', id = ''] = /^#\/([\w-]*)(?:\/([\w-]+))?/.exec(hash) ?? [];
  return { section, id: id || null };
}

export const route = signal<Route>({ section: '', id: null });

export function addressOf(section: string, id: string | null = null): string {
  return id === null ? `#/${section}` : `#/${section}/${id}`;
}

/** Follows the address from now on. */
export function followAddress(): void {
  const read = () => {
    route.value = routeIn(location.hash);
    scrollTo(0, 0);
  };
  addEventListener('hashchange', read);
  read();
}
