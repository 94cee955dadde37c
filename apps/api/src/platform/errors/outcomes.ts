import { refusal, type Refusal } from './user-error.types.js';

/** The object that a field names is not there, or not for this viewer. */
export function notFound(what: string, path: readonly string[]): Refusal {
  return refusal({
    code: 'NOT_FOUND',
    path,
    message: `There is no such ${what}.`,
    remedy: `Send the id of a ${what} that you can see.`,
  });
}

/** Something else was made under an id that the client sent. */
export const ID_REUSED = refusal({
  code: 'ID_REUSED',
  path: ['id'],
  message: 'Something else was made under this id.',
  remedy: 'Make a new id; send the same id only with the same content.',
});
