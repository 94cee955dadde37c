import {
  astFromValue,
  isInputObjectType,
  isListType,
  isNonNullType,
  typeFromAST,
  valueFromASTUntyped,
  type DocumentNode,
  type GraphQLInputObjectType,
  type GraphQLInputType,
  type GraphQLSchema,
} from 'graphql';
import type { Plugin } from 'graphql-yoga';

type Json = unknown;
type Fill = (value: Json) => Json;

/**
 * Puts the default values of input fields into the variables. graphql-jit leaves out those of fields that are not
 * nullable and then calls them missing; what is filled in is read again like anything that a client sent.
 */
export function useInputDefaults(): Plugin {
  const fillers = new WeakMap<GraphQLSchema, TypeFillers>();
  const known = new WeakMap<DocumentNode, ReadonlyMap<string, Fill>>();
  return {
    onExecute({ args }) {
      const { document, schema, variableValues } = args;
      if (!variableValues) return;
      let types = fillers.get(schema);
      if (!types) fillers.set(schema, (types = new TypeFillers()));
      let fills = known.get(document);
      if (!fills) known.set(document, (fills = fillsOf(document, schema, types)));
      if (fills.size === 0) return;
      const filled = Object.entries(variableValues).map(([name, value]) => [
        name,
        fills.get(name)?.(value) ?? value,
      ]);
      args.variableValues = Object.fromEntries(filled) as typeof variableValues;
    },
  };
}

/** By variable: how its value is filled; variables without any default below them are left out. */
function fillsOf(
  document: DocumentNode,
  schema: GraphQLSchema,
  types: TypeFillers,
): ReadonlyMap<string, Fill> {
  const fills = new Map<string, Fill>();
  for (const definition of document.definitions) {
    if (definition.kind !== 'OperationDefinition') continue;
    for (const { variable, type } of definition.variableDefinitions ?? []) {
      const named = typeFromAST(schema, type as Parameters<typeof typeFromAST>[1]) as
        | GraphQLInputType
        | undefined;
      const fill = named && types.of(named);
      if (fill) fills.set(variable.name.value, fill);
    }
  }
  return fills;
}

/** How to fill the values of each type; `null` when there is nothing to fill. */
class TypeFillers {
  private readonly made = new Map<GraphQLInputObjectType, Fill | null>();

  of(type: GraphQLInputType): Fill | null {
    if (isNonNullType(type)) return this.of(type.ofType as GraphQLInputType);
    if (isListType(type)) {
      const item = this.of(type.ofType as GraphQLInputType);
      return item && ((value) => (Array.isArray(value) ? value.map(item) : item(value)));
    }
    return isInputObjectType(type) ? this.ofObject(type) : null;
  }

  private ofObject(type: GraphQLInputObjectType): Fill | null {
    const known = this.made.get(type);
    if (known !== undefined) return known;
    // A type that holds itself finds this while it is being looked at.
    this.made.set(type, (value) => this.made.get(type)?.(value) ?? value);
    const defaults: [string, Json][] = [];
    const below: [string, Fill][] = [];
    for (const field of Object.values(type.getFields())) {
      const literal = field.defaultValue === undefined ? null : astFromValue(field.defaultValue, field.type);
      if (literal) defaults.push([field.name, valueFromASTUntyped(literal)]);
      const fill = this.of(field.type);
      if (fill) below.push([field.name, fill]);
    }
    const fill = defaults.length + below.length > 0 ? filler(defaults, below) : null;
    this.made.set(type, fill);
    return fill;
  }
}

function filler(defaults: readonly [string, Json][], below: readonly [string, Fill][]): Fill {
  return (value) => {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
    const filled = new Map<string, Json>(Object.entries(value));
    for (const [name, ready] of defaults) if (!filled.has(name)) filled.set(name, ready);
    for (const [name, fill] of below) if (filled.has(name)) filled.set(name, fill(filled.get(name)));
    return Object.fromEntries(filled);
  };
}
