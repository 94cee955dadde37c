import type { Wording } from '../words/wording.js';
import { h, type Tree } from './tree.js';

/** Where the pages of the server are, for links; `null`: there are none. */
export type Addresses = ((kind: 'meet' | 'competition' | 'club' | 'athlete', id: string) => string) | null;

export interface Shown {
  readonly wording: Wording;
  readonly addresses: Addresses;
  /** The rank of the heading over the table, from 1. */
  readonly heading: number;
}

export function linked(address: string | undefined, text: string): Tree {
  return address === undefined ? h('span', {}, text) : h('a', { href: address }, text);
}
