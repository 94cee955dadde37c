import { GraphQLError, GraphQLScalarType, Kind } from 'graphql';

export interface TextScalar {
  readonly name: string;
  readonly description: string;
  /** Says what a value must look like, e.g. `a calendar date as YYYY-MM-DD`. */
  readonly expected: string;
  /** The value if the text is one, else null. */
  readonly read: (text: string) => string | null;
}

/** A scalar that is a string of a certain form in JSON, in documents and inside the server alike. */
export function textScalar({
  name,
  description,
  expected,
  read,
}: TextScalar): GraphQLScalarType<string, string> {
  const parse = (value: unknown): string => {
    const read_ = typeof value === 'string' ? read(value) : null;
    if (read_ === null) throw new GraphQLError(`${name} must be ${expected}.`);
    return read_;
  };
  return new GraphQLScalarType<string, string>({
    name,
    description,
    serialize: (value) => {
      if (typeof value !== 'string') throw new TypeError(`${name} cannot serialise ${typeof value}`);
      return value;
    },
    parseValue: parse,
    parseLiteral: (node) => parse(node.kind === Kind.STRING ? node.value : undefined),
  });
}
