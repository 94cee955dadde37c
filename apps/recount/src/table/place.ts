/** What a place column needs of a row of any result. */
export interface Placeable {
  readonly place: number | null;
  readonly equal: boolean;
  readonly status: string | null;
}

/** `2`, shared `2=`, otherwise why there is none. A blank behind a place of one's own keeps digits under digits. */
export function placeCell({ place, equal, status }: Placeable): string {
  if (place !== null) return equal ? `${place}=` : `${place} `;
  return status === 'GUEST' ? 'guest' : (status ?? '');
}
