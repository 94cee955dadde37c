import {
  isEnumType,
  isInputObjectType,
  isListType,
  isNonNullType,
  type GraphQLInputType,
  type GraphQLSchema,
} from 'graphql';

const EXAMPLES: Readonly<Record<string, unknown>> = {
  ID: Buffer.from('Meet:00000000-0000-7000-8000-000000000000').toString('base64url'),
  String: 'example',
  Int: 1,
  Boolean: true,
  Date: '2026-05-30',
  DateTime: '2026-05-30T12:00:00Z',
  UUID: '00000000-0000-7000-8000-00000000000a',
  Mark: '12.34',
  WindReading: '+1.0',
  PlacePoints: '7.5',
  RaceTime: '10.39',
  JSON: {},
};

/** A value that a type accepts, with every field of every input object given. */
export function exampleOf(type: GraphQLInputType): unknown {
  if (isNonNullType(type)) return exampleOf(type.ofType);
  if (isListType(type)) return [exampleOf(type.ofType)];
  if (isEnumType(type)) return type.getValues()[0]?.name;
  if (isInputObjectType(type)) {
    return Object.fromEntries(
      Object.values(type.getFields()).map((field) => [field.name, exampleOf(field.type)]),
    );
  }
  if (!(type.name in EXAMPLES)) throw new Error(`Say in example-values.ts what a ${type.name} looks like.`);
  return EXAMPLES[type.name];
}

export interface Call {
  readonly name: string;
  readonly document: string;
  readonly variables: Readonly<Record<string, unknown>>;
  readonly argumentTypes: Readonly<Record<string, GraphQLInputType>>;
}

/** Every query or mutation of the schema as a request that is well formed. */
export function callsOf(schema: GraphQLSchema, kind: 'query' | 'mutation'): Call[] {
  const root = kind === 'query' ? schema.getQueryType() : schema.getMutationType();
  return Object.values(root?.getFields() ?? {}).map(({ name, args }) => {
    const declared = args.map((arg) => `$${arg.name}: ${String(arg.type)}`).join(', ');
    const passed = args.map((arg) => `${arg.name}: $${arg.name}`).join(', ');
    const head = declared === '' ? kind : `${kind} (${declared})`;
    return {
      name,
      document: `${head} { ${name}${passed === '' ? '' : `(${passed})`} { __typename } }`,
      variables: Object.fromEntries(args.map((arg) => [arg.name, exampleOf(arg.type)])),
      argumentTypes: Object.fromEntries(args.map((arg) => [arg.name, arg.type])),
    };
  });
}
