import { impuritiesIn } from './purity.js';
import { typeScriptFiles } from './repository.js';

const PURE = /^libs\/(rules|technique|flight|wording)\//;

describe('the pure libraries', () => {
  it('use no clock, no chance, no host and no waiting', () => {
    const files = typeScriptFiles().filter((file) => PURE.test(file.path) && !file.path.endsWith('.spec.ts'));
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap(impuritiesIn)).toEqual([]);
  });
});

describe('the check of purity', () => {
  it.each([
    `const now = Date.now();`,
    `const today = new Date();`,
    `const chance = Math.random();`,
    `const root = process.env.HOME;`,
    `const { env } = process;`,
    `const copy = { process };`,
    `const key = globalThis['pro' + 'cess'];`,
    `console.log('…');`,
    `names.sort((a, b) => a.localeCompare(b));`,
    `const shown = total.toLocaleString();`,
    `async function count() {}`,
    `const count = async () => 1;`,
    `class A { async count() {} }`,
    `const all = Promise.all([]);`,
    `let memory = 0;`,
    `export var memory = 0;`,
    `const fs = require('fs');`,
  ])('finds %s', (text) => {
    expect(impuritiesIn({ path: 'a.ts', text })).not.toEqual([]);
  });

  it.each([
    `const plan = { process: 1, Date: 2 };`,
    `const when = entry.Date;`,
    `function count() { let total = 0; total += 1; return total; }`,
    `interface Signed { readonly Date: string }`,
    `const longest = Math.max(1, 2);`,
    `const { Date: day } = entry;`,
    `function count(document: Sheet) { return document.rows; }`,
  ])('lets %s pass', (text) => {
    expect(impuritiesIn({ path: 'a.ts', text })).toEqual([]);
  });
});
