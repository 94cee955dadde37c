import {
  coerceInputValue,
  getOperationAST,
  isInputType,
  isNonNullType,
  OperationTypeNode,
  typeFromAST,
  valueFromASTUntyped,
  type DocumentNode,
  type ExecutionArgs,
  type GraphQLSchema,
  type OperationDefinitionNode,
} from 'graphql';
import type { Plugin } from 'graphql-yoga';
import { ApiError, type FieldProblem } from '../errors/api-error.js';

/** As many as a person would read. */
const REPORTED = 20;

type Values = Readonly<Record<string, unknown>>;

/**
 * Checks the variables of every operation, and says of each that does not fit where it is and what is wrong. The
 * compiled queries have a check of their own, which names no path and forgets defaults; it finds nothing any more.
 */
export function useVariables(): Plugin {
  return {
    onExecute({ args, setResultAndStopExecution }) {
      const problems = checkVariables(args);
      if (problems.length > 0) setResultAndStopExecution({ errors: [invalid(problems)] });
    },
    onSubscribe({ args, setResultAndStopExecution }) {
      const problems = checkVariables(args);
      if (problems.length > 0) setResultAndStopExecution({ errors: [invalid(problems)] });
    },
  };
}

/** True for queries: they alone are run often enough to be worth compiling, and take no input objects. */
export function isQuery(document: DocumentNode, operationName?: string | null): boolean {
  return getOperationAST(document, operationName)?.operation === OperationTypeNode.QUERY;
}

/** The same where no plugin runs. Throws BAD_USER_INPUT. */
export function refuseVariables(args: ExecutionArgs): void {
  const problems = checkVariables(args);
  if (problems.length > 0) throw invalid(problems);
}

/** Puts the document's defaults in where a variable is missing; returns what does not fit. */
function checkVariables(args: ExecutionArgs): FieldProblem[] {
  const operation = getOperationAST(args.document, args.operationName);
  if (!operation) return [];
  const values = withDefaults(operation, args.variableValues ?? {});
  args.variableValues = values;
  return problemsIn(operation, args.schema, values).slice(0, REPORTED);
}

function withDefaults(
  { variableDefinitions = [] }: OperationDefinitionNode,
  values: Values,
): Record<string, unknown> {
  const defaults = variableDefinitions.flatMap(({ variable, defaultValue }) =>
    defaultValue && values[variable.name.value] === undefined
      ? [[variable.name.value, valueFromASTUntyped(defaultValue)] as const]
      : [],
  );
  return { ...values, ...Object.fromEntries(defaults) };
}

function problemsIn(
  operation: OperationDefinitionNode,
  schema: GraphQLSchema,
  values: Values,
): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const { variable, type: node } of operation.variableDefinitions ?? []) {
    const name = variable.name.value;
    const type = typeFromAST(schema, node);
    if (!isInputType(type)) continue;
    const value = values[name];
    if (value === undefined) {
      if (isNonNullType(type)) problems.push(problem([name], `A value of type ${String(type)} is needed.`));
      continue;
    }
    coerceInputValue(value, type, (path, _value, error) => {
      problems.push(problem([name, ...path.map(String)], error.message));
    });
  }
  return problems;
}

function problem(path: readonly string[], message: string): FieldProblem {
  return { path, rule: 'type', message, remedy: 'Send a value of the type that the schema asks for.' };
}

function invalid(fields: readonly FieldProblem[]): ApiError {
  const places = fields.map(({ path, message }) => `${path.join('.')}: ${message}`).join(' ');
  return new ApiError('BAD_USER_INPUT', `The input is not valid. ${places}`, { fields, status: 400 });
}
