/**
 * How often a property of the rules is tried: enough to find what is wrong while one waits; the long run asks for
 * the full number.
 */
export const PROPERTY_RUNS =
  Number(process.env['PROPERTY_RUNS']) || (process.env['LONG'] === '1' ? 20_000 : 1_500);
