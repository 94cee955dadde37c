import { objectionTo, rowOf } from './import-rules.js';
import { IMPORT_TABLE } from './import-table.js';
import { importsOf, targetOf } from './imports-of.js';
import { typeScriptFiles } from './repository.js';

function objections(path: string, text: string): (string | null)[] {
  return importsOf({ path, text }).map(objectionTo);
}

describe('who may import what', () => {
  it('holds for every import', () => {
    const found = typeScriptFiles().flatMap(importsOf).map(objectionTo);
    expect(found.filter((objection) => objection !== null)).toEqual([]);
  });

  it('has a row for every file, and a file for every row', () => {
    const paths = typeScriptFiles().map((file) => file.path);
    expect(paths.filter((path) => rowOf(path) === null)).toEqual([]);
    const used = new Set(paths.map(rowOf));
    expect(IMPORT_TABLE.filter((row) => !used.has(row)).map(({ files }) => files)).toEqual([]);
  });
});

describe('the check itself', () => {
  it('knows every way to write an import', () => {
    const text = `
      import fs from 'fs';
      import { readFile } from 'node:fs/promises';
      import './side-effect.js';
      export * from '../meets/meet.js';
      export { type A } from './types.js';
      import type { B } from '#rules';
      import { type C, type D } from 'typeorm';
      import { type E, F } from '@nestjs/common/pipes';
      import G = require('pg');
      const h = await import('graphql/utilities');
      const i = require('rxjs');
      let j: import('./j.js').J;
      const k = await import('./' + name);
    `;
    const found = importsOf({ path: 'apps/api/src/entries/x.ts', text });
    expect(found.map(({ to, typesOnly }) => `${to}${typesOnly ? ' (types)' : ''}`)).toEqual([
      'node:fs',
      'node:fs/promises',
      'apps/api/src/entries/side-effect.ts',
      'apps/api/src/meets/meet.ts',
      'apps/api/src/entries/types.ts (types)',
      '#rules (types)',
      'npm:typeorm (types)',
      'npm:@nestjs/common',
      'npm:pg',
      'npm:graphql',
      'npm:rxjs',
      'apps/api/src/entries/j.ts (types)',
      'computed',
    ]);
    expect(found[0]?.line).toBe(2);
  });

  it('tells a file from a package and a built-in', () => {
    expect(targetOf('libs/rules/src/a/b.ts', '../c.js')).toBe('libs/rules/src/c.ts');
    expect(targetOf('tests/house/a.ts', '../../apps/x.tsx')).toBe('apps/x.tsx');
    expect(targetOf('a.ts', '@scope/name/deep')).toBe('npm:@scope/name');
  });

  it.each([
    ['libs/rules/src/a.ts', 'node:fs'],
    ['libs/rules/src/a.ts', 'pg'],
    ['libs/rules/src/a.ts', '#persistence'],
    ['libs/rules/src/a.ts', './index.js'],
    ['libs/rules/src/a.spec.ts', '../../../tests/house/x.js'],
    ['libs/persistence/src/a.ts', '@nestjs/common'],
    ['libs/persistence/src/a.ts', '#rules'],
    ['migrations/1-a.ts', 'typeorm'],
    ['migrations/1-a.ts', '../libs/persistence/src/entities/meet.entity.js'],
    ['apps/recount/src/a.ts', '#persistence'],
    ['apps/recount/src/a.ts', '../../../libs/rules/src/card.js'],
    ['apps/api/src/platform/a.ts', '../meets/meets.service.js'],
    ['apps/api/src/platform/a.ts', 'typeorm'],
    ['apps/api/src/meets/a.ts', '../entries/entries.service.js'],
    ['apps/api/src/entries/a.ts', '../meets/meets.resolver.js'],
    ['apps/api/src/entries/a.ts', '../recording/recording.service.js'],
    ['apps/api/src/recording/a.ts', '../exchange/exchange.service.js'],
    ['apps/api/src/results/a.ts', '../recording/recording.service.js'],
    ['apps/api/src/results/a.ts', '../../../../libs/persistence/src/stores/x.store.js'],
    ['seed/a.ts', '#persistence'],
    ['seed/a.ts', '../apps/api/src/meets/meets.service.js'],
    ['elsewhere/a.ts', './b.js'],
  ])('refuses %s importing %s', (path, target) => {
    expect(objections(path, `import { a } from '${target}';`)).toEqual([
      expect.stringMatching(/ may not import .* because |no folder that the import table knows/),
    ]);
  });

  it.each([
    ['libs/rules/src/a.ts', `import { b } from './ranking/b.js';`],
    ['libs/rules/src/index.ts', `export { b } from './ranking/b.js';`],
    ['libs/rules/src/a.spec.ts', `import fc from 'fast-check';`],
    ['libs/persistence/src/a.ts', `import { type Card } from '#rules';`],
    ['migrations/1-a.ts', `import { type MigrationInterface } from 'typeorm';`],
    ['apps/recount/src/a.ts', `import { recount } from '#rules';`],
    ['apps/api/src/recording/a.ts', `import { EntriesService } from '../entries/entries.service.js';`],
    ['apps/api/src/main.ts', `import { MeetsModule } from './meets/meets.module.js';`],
    ['tests/api/a.ts', `import { DataSource } from 'typeorm';`],
  ])('lets %s have %s', (path, text) => {
    expect(objections(path, text)).toEqual([null]);
  });
});
