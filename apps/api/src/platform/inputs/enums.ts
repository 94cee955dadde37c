import { registerEnumType } from '@nestjs/graphql';

/**
 * Makes a GraphQL enum of codes: outside `LONG_JUMP`, inside `long-jump`; `KEPT_BACK` and `kept back`. Use what it returns as a field's type.
 */
export function enumOf<C extends string>(
  name: string,
  codes: readonly C[],
  description: string,
): Record<string, C> {
  const values = Object.fromEntries(codes.map((code) => [code.toUpperCase().replaceAll(/[- ]/g, '_'), code]));
  registerEnumType(values, { name, description });
  return values;
}
