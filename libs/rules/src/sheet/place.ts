/** Where in a document something stands: the way from its root. */
export interface Place {
  readonly parent: Place | null;
  /** The key in an object, the index in a list. */
  readonly step: string | number;
  /** Its number among what stands beside it; negative when it is missing: it would be told where its object begins. */
  readonly index: number;
}

export const DOCUMENT: Place = { parent: null, step: '', index: 0 };

/** An item of a list. */
export function itemOf(list: Place, index: number): Place {
  return { parent: list, step: index, index };
}

/** JSON Pointer (RFC 6901); the document as a whole is `""`. */
export function pointerOf(place: Place): string {
  return way(place)
    .map(({ step }) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`)
    .join('');
}

/** Negative when `a` comes first in the document; what holds something comes before it. */
export function comparePlaces(a: Place, b: Place): number {
  const [left, right] = [way(a), way(b)];
  for (const [depth, { index }] of left.entries()) {
    const other = right[depth];
    if (other === undefined) return 1;
    if (index !== other.index) return index - other.index;
  }
  return left.length - right.length;
}

/** From the first step below the root. */
function way(place: Place): Place[] {
  const steps: Place[] = [];
  for (let at = place; at.parent !== null; at = at.parent) steps.push(at);
  return steps.reverse();
}
