import { createHash } from 'node:crypto';

/** A UUID that is made of a name (RFC 9562 version 8): the same name gives the same id on every machine. */
export function idOf(name: string): string {
  const hex = createHash('sha256').update(`sectorline demonstration: ${name}`).digest('hex');
  const variant = '89ab'[Number.parseInt(hex[16] ?? '0', 16) % 4];
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join('-');
}
