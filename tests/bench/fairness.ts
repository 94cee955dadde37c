import { isDeepStrictEqual } from 'node:util';
import type { LoadRequest } from './load.js';

export function headersFor(token: string | null): Record<string, string> {
  return {
    'content-type': 'application/json',
    accept: 'application/json',
    ...(token !== null && { authorization: `Bearer ${token}` }),
  };
}

/** One answer of each side to the same question, for a comparison. */
export async function answersTo(
  addresses: readonly [string, string],
  token: string | null,
  requests: readonly [LoadRequest, LoadRequest],
): Promise<[unknown, unknown]> {
  const [ours, floors] = addresses.map(async (address, side) => {
    const { path, body } = requests[side]!;
    const response = await fetch(new URL(path, address), {
      method: 'POST',
      headers: headersFor(token),
      body,
    });
    return (await response.json()) as unknown;
  });
  return [await ours, await floors];
}

/** The floor must answer the same fields; and the same values where `values` are to be compared, too. */
export function demandSameFields(
  name: string,
  [ours, floors]: readonly [unknown, unknown],
  values: boolean,
): void {
  const [a, b] = values ? [ours, floors] : [shapeOf(ours), shapeOf(floors)];
  if (isDeepStrictEqual(a, b)) return;
  const [left, right] = [JSON.stringify(a), JSON.stringify(b)];
  const at = [...left].findIndex((letter, index) => letter !== right[index]);
  throw new Error(
    `${name}: we answer …${left.slice(Math.max(0, at - 40), at + 160)}… and the floor …${right.slice(Math.max(0, at - 40), at + 160)}…`,
  );
}

function shapeOf(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(shapeOf);
  if (typeof value !== 'object' || value === null) return typeof value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shapeOf(inner)]));
}

/** The floor must answer as many bytes, within a tenth. */
export function demandSameSize(name: string, [ours, floors]: readonly [number, number]): void {
  if (ours === floors || Math.abs(ours / floors - 1) <= 0.1) return;
  throw new Error(`${name}: we answer ${Math.round(ours)} bytes and the floor ${Math.round(floors)}.`);
}
