import { GraphQLError, GraphQLScalarType, Kind } from 'graphql';

const FORM = /^(\d{4}-\d{2}-\d{2})[Tt](\d{2}):(\d{2}):(\d{2})(\.\d{1,9})?([Zz]|[+-]\d{2}:\d{2})$/;

/** Reads RFC 3339 section 5.6; a leap second or a day that does not exist gives null. */
function readInstant(text: string): Date | null {
  const parts = FORM.exec(text);
  if (!parts) return null;
  const [, day, hour, minute, second] = parts;
  const wall = new Date(`${day}T${hour}:${minute}:${second}Z`);
  if (Number.isNaN(wall.getTime()) || wall.toISOString().slice(0, 10) !== day) return null;
  const instant = new Date(text.toUpperCase());
  return Number.isNaN(instant.getTime()) ? null : instant;
}

function parse(value: unknown): Date {
  const instant = typeof value === 'string' ? readInstant(value) : null;
  if (!instant)
    throw new GraphQLError('DateTime must be an instant with its offset, like 2026-05-30T14:05:00Z.');
  return instant;
}

/** Instants: RFC 3339 outside, `Date` inside. */
export const Instant = new GraphQLScalarType<Date, string>({
  name: 'DateTime',
  description: 'An instant, RFC 3339 with an offset; answered in UTC.',
  serialize: (value) => {
    if (!(value instanceof Date)) throw new TypeError('DateTime cannot serialise anything but a Date');
    return value.toISOString();
  },
  parseValue: parse,
  parseLiteral: (node) => parse(node.kind === Kind.STRING ? node.value : undefined),
});
