import { ordinal } from '../ranking/decision.js';
import type { NoPlaceReason, PlaceReason, Reason } from './reason.js';

/** A reason in words, e.g. `2nd: equal best 58.10; second best 57.02 against 57.44`. The rule is not in it. */
export function sentenceOf(reason: Reason): string {
  if (reason.place === null) return `No place: ${withoutPlace(reason)}`;
  return `${ordinal(reason.place)}${reason.shared ? ', shared' : ''}: ${grounds(reason)}`;
}

function withoutPlace({ status, mark }: NoPlaceReason): string {
  switch (status) {
    case 'NM':
      return 'no valid mark';
    case 'DQ':
      return 'disqualified';
    case 'DNS':
      return 'did not start';
    case 'GUEST':
      return mark === null ? 'guest' : `guest, ${mark === 'O' ? 'not measured' : `best ${mark}`}`;
  }
}

function grounds({ decidedBy, level, own, other, undecidable }: PlaceReason): string {
  if (decidedBy === 'equal') return sharedGrounds(level, undecidable);
  if (decidedBy === 'first' || decidedBy === 1) {
    if (own === null) return `valid but not measured${other === null ? '' : ', after every measured mark'}`;
    return other === null ? `best ${own}` : `best ${own} against ${other}`;
  }
  const apart =
    own === null ? `no further valid mark against ${other}` : `${nthBest(decidedBy)} ${own} against ${other}`;
  return `equal ${listed(level)}; ${apart}`;
}

function sharedGrounds(level: readonly string[], undecidable: boolean): string {
  if (level.length === 0) return 'valid but not measured';
  if (!undecidable) return `equal ${listed(level)}; no further valid mark on either side`;
  return `equal ${listed(level)}; a valid trial was not measured, so the next best marks cannot decide`;
}

/** `best 58.10, second best 57.44 and third best 57.02`. */
function listed(marks: readonly string[]): string {
  const named = marks.map((mark, at) => `${nthBest(at + 1)} ${mark}`);
  const last = named.at(-1)!;
  return named.length === 1 ? last : `${named.slice(0, -1).join(', ')} and ${last}`;
}

/** A series has at most twelve trials. */
const SPELLED = [
  'best',
  'second best',
  'third best',
  'fourth best',
  'fifth best',
  'sixth best',
  'seventh best',
  'eighth best',
  'ninth best',
  'tenth best',
  'eleventh best',
  'twelfth best',
] as const;

function nthBest(nth: number): string {
  return SPELLED[nth - 1]!;
}
