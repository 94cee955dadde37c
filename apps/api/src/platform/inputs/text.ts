import { Length, ValidateBy, type ValidationArguments, type ValidationOptions } from 'class-validator';

const CONTROL = /[\p{Cc}\u2028\u2029]/u;

/** One line of text for people: no control characters, not blank, `min` to `max` UTF-16 units. */
export function Text(min: number, max: number, options: ValidationOptions = {}): PropertyDecorator {
  const length = Length(min, max, options);
  const rule = {
    name: 'isText',
    validator: {
      validate: (value: unknown) =>
        typeof value === 'string' && !CONTROL.test(value) && (min === 0 || value.trim().length > 0),
      defaultMessage: (args?: ValidationArguments) => `${args?.property ?? 'text'} must be one line of text`,
    },
  };
  const line = ValidateBy(rule, options);
  return (target, property) => {
    length(target, property);
    line(target, property);
  };
}
