import { type ArgumentMetadata, type PipeTransform } from '@nestjs/common';
import { Transform } from 'class-transformer';
import { ValidateBy } from 'class-validator';
import { badUserInput } from '../errors/api-error.js';
import { readUuid } from '../scalars/uuid.js';
import { uuidOf, type ObjectKind } from './global-id.js';

/** Marks a value that is not an id of the wanted kind; its text is kept for the message only. */
const UNREADABLE = Symbol('unreadable id');

function readAll(kinds: readonly ObjectKind[], value: unknown): unknown {
  if (value === null || value === undefined) return value;
  if (Array.isArray(value)) return value.map((one) => readOne(kinds, one));
  return readOne(kinds, value);
}

function readOne(kinds: readonly ObjectKind[], value: unknown): unknown {
  for (const kind of kinds) {
    const uuid = uuidOf(kind, value);
    if (uuid !== null) return uuid;
  }
  return UNREADABLE;
}

/**
 * An input field of type ID that names an object of one kind (or of several). The service gets the bare UUID; anything that is not an
 * id of that kind is refused by name. For a list of ids say `each`.
 */
export function ObjectId(kind: ObjectKind | readonly ObjectKind[], { each = false } = {}): PropertyDecorator {
  const kinds = typeof kind === 'string' ? [kind] : kind;
  const transform = Transform(({ value }) => readAll(kinds, value));
  const validate = ValidateBy(
    {
      name: 'isObjectId',
      validator: {
        validate: (value) => typeof value === 'string' && readUuid(value) !== null,
        defaultMessage: (args) => `${args?.property ?? 'id'} is not the id of a ${kinds.join(' or ')}`,
      },
    },
    { each },
  );
  return (target, property) => {
    transform(target, property);
    validate(target, property);
  };
}

/** The same for a lone argument: `@Args('id', { type: () => ID }, new ReadId('Meet'))`. */
export class ReadId implements PipeTransform<string, string> {
  constructor(private readonly kind: ObjectKind) {}

  transform(value: string, { data = 'id' }: ArgumentMetadata): string {
    const uuid = uuidOf(this.kind, value);
    if (uuid !== null) return uuid;
    const message = `${data} is not the id of a ${this.kind}`;
    const remedy = 'Send the id as this API gave it.';
    throw badUserInput(`The input is not valid: ${data}.`, [
      { path: [data], rule: 'isObjectId', message, remedy },
    ]);
  }
}
