import type { ValidationError } from 'class-validator';
import { badUserInput, type ApiError, type FieldProblem } from './api-error.js';

const REMEDIES: Readonly<Record<string, string>> = {
  isEnum: 'Send one of the listed values.',
  isIn: 'Send one of the listed values.',
  isInt: 'Send a whole number.',
  min: 'Send a larger number.',
  max: 'Send a smaller number.',
  isLength: 'Change the length of the text.',
  maxLength: 'Shorten the text.',
  minLength: 'Lengthen the text.',
  isText: 'Take out line breaks and control characters.',
  isObjectId: 'Send the id as this API gave it.',
  isUuid: 'Send a UUID as 8-4-4-4-12 hexadecimal digits.',
  arrayMaxSize: 'Send fewer elements.',
  arrayMinSize: 'Send more elements.',
  arrayUnique: 'Send each element once.',
  isDefined: 'Send the field.',
  isNotEmpty: 'Send a value that is not empty.',
  whitelistValidation: 'Leave the field out.',
};

/**
 * Turns what class-validator found into one BAD_USER_INPUT that names every field, its constraint and the remedy.
 * `path` leads to the input itself.
 */
export function inputError(errors: readonly ValidationError[], path: readonly string[]): ApiError {
  const fields = errors.flatMap((error) => problemsOf(error, path));
  const places = fields.map((field) => field.path.join('.')).join(', ');
  return badUserInput(`The input is not valid: ${places}.`, fields);
}

function problemsOf(error: ValidationError, above: readonly string[]): FieldProblem[] {
  const path = [...above, error.property];
  const own = Object.entries(error.constraints ?? {}).map(([rule, message]) => ({
    path,
    rule,
    message,
    remedy: REMEDIES[rule] ?? 'Send a value that meets the rule.',
  }));
  return [...own, ...(error.children ?? []).flatMap((child) => problemsOf(child, path))];
}
