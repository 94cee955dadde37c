import { Kind, type ASTNode, type ASTVisitor, type ValidationContext } from 'graphql';
import { ApiError, type FieldProblem } from '../errors/api-error.js';
import { LIMITS } from './limits.js';

const LONE_SURROGATE = /\p{Surrogate}/u;

/** PostgreSQL cannot store NUL, and half a character cannot be written as UTF-8: neither is text. */
function faultOf(text: string): { readonly rule: string; readonly what: string } | null {
  if (text.includes('\0')) return { rule: 'noNul', what: 'contains the character NUL (U+0000)' };
  if (LONE_SURROGATE.test(text)) return { rule: 'wellFormed', what: 'contains half of a surrogate pair' };
  return null;
}

function problemOf(text: string, path: readonly string[]): FieldProblem | null {
  const fault = faultOf(text);
  if (!fault) return null;
  const message = `${path.join('.')} ${fault.what}`;
  return { path, rule: fault.rule, message, remedy: 'Send text without it.' };
}

function hostile(problem: FieldProblem): ApiError {
  return new ApiError('BAD_USER_INPUT', `The input is not valid: ${problem.message}.`, {
    fields: [problem],
    status: 400,
  });
}

/** Looks through the strings that a document itself writes. */
export function NoHostileLiterals(context: ValidationContext): ASTVisitor {
  return {
    StringValue(node, _key, parent, _path, ancestors) {
      const problem = problemOf(node.value, literalPath([...ancestors, ...(parent ? [parent] : [])]));
      if (problem) context.reportError(hostile(problem));
    },
  };
}

function literalPath(ancestors: readonly (ASTNode | readonly ASTNode[])[]): string[] {
  return ancestors.flatMap((one) =>
    'kind' in one && (one.kind === Kind.ARGUMENT || one.kind === Kind.OBJECT_FIELD) ? [one.name.value] : [],
  );
}

/** Throws BAD_USER_INPUT that names the first such string among the variables, keys included. */
export function refuseHostileVariables(variables: Readonly<Record<string, unknown>>): void {
  for (const [name, value] of Object.entries(variables)) {
    const problem = firstProblem(value, [name]);
    if (problem) throw hostile(problem);
  }
}

function firstProblem(value: unknown, path: readonly string[]): FieldProblem | null {
  if (typeof value === 'string') return problemOf(value, path);
  if (typeof value !== 'object' || value === null) return null;
  if (path.length > LIMITS.variableDepth) {
    const message = `${path[0]} nests more than ${LIMITS.variableDepth} deep`;
    return { path: path.slice(0, 1), rule: 'maxDepth', message, remedy: 'Send fewer levels.' };
  }
  for (const [key, inner] of Object.entries(value)) {
    const shown = key.slice(0, 64);
    const problem = problemOf(key, [...path, shown]) ?? firstProblem(inner, [...path, shown]);
    if (problem) return problem;
  }
  return null;
}
