import { Length, ValidateBy } from 'class-validator';

const CONTROL = /[\p{Cc}\u2028\u2029]/u;

/** One line of text for people: no control characters, not blank, `min` to `max` UTF-16 units. */
export function Text(min: number, max: number): PropertyDecorator {
  const length = Length(min, max);
  const line = ValidateBy({
    name: 'isText',
    validator: {
      validate: (value) =>
        typeof value === 'string' && !CONTROL.test(value) && (min === 0 || value.trim().length > 0),
      defaultMessage: (args) => `${args?.property ?? 'text'} must be one line of text`,
    },
  });
  return (target, property) => {
    length(target, property);
    line(target, property);
  };
}
