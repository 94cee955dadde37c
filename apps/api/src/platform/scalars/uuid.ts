import { textScalar } from './text-scalar.js';

const FORM = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/** The UUID in lower case, or null. RFC 9562 versions 1 to 8. */
export function readUuid(text: string): string | null {
  const lower = text.toLowerCase();
  return FORM.test(lower) ? lower : null;
}

export const Uuid = textScalar({
  name: 'UUID',
  description: 'A UUID (RFC 9562) as 8-4-4-4-12 hexadecimal digits. What a device makes should be version 7.',
  expected: 'a UUID as 8-4-4-4-12 hexadecimal digits',
  read: readUuid,
});
