import { GraphQLError, GraphQLScalarType, Kind, type ValueNode } from 'graphql';

type Variables = Readonly<Record<string, unknown>> | null | undefined;

/** A literal as the JSON value it writes. Keys become own properties, whatever their names are. */
function literal(node: ValueNode, variables: Variables): unknown {
  switch (node.kind) {
    case Kind.STRING:
    case Kind.BOOLEAN:
      return node.value;
    case Kind.INT:
    case Kind.FLOAT:
      return Number(node.value);
    case Kind.NULL:
      return null;
    case Kind.LIST:
      return node.values.map((value) => literal(value, variables));
    case Kind.OBJECT:
      return Object.fromEntries(
        node.fields.map((field) => [field.name.value, literal(field.value, variables)]),
      );
    case Kind.VARIABLE:
      return variables?.[node.name.value];
    case Kind.ENUM:
      throw new GraphQLError('JSON has no bare words; put the text in quotation marks.');
  }
}

export const Json = new GraphQLScalarType({
  name: 'JSON',
  description: 'A JSON value whose form another specification fixes, such as a sheet or a result document.',
  serialize: (value) => value,
  parseValue: (value) => value,
  parseLiteral: literal,
});
