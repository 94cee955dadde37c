/**
 * How many random inputs a costly property is tried on: 20,000 in the long run (`npm run test:long`, which CI takes), a
 * part of them when somebody waits for the answer.
 */
export const PROPERTY_RUNS = process.env['LONG'] === '1' ? 20_000 : 3_000;
