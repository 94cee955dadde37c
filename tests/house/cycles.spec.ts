import { circlesIn, needsOf } from './cycles.js';
import { importsOf, type Import } from './imports-of.js';
import { readSource, typeScriptFiles } from './repository.js';

/** The files behind the front doors, as package.json's "imports" names them for the source. */
function frontDoors(): ReadonlyMap<string, string> {
  const { imports } = JSON.parse(readSource('package.json').text) as {
    imports: Record<string, { source: string }>;
  };
  return new Map(Object.entries(imports).map(([door, { source }]) => [door, source.replace('./', '')]));
}

function circlesOf(files: Record<string, string>): string[] {
  const imports = Object.entries(files).flatMap(([path, text]) => importsOf({ path, text }));
  return circlesIn(needsOf(imports, new Map([['#door', 'libs/door.ts']])));
}

describe('imports', () => {
  it('never go in a circle', () => {
    expect(circlesIn(needsOf(typeScriptFiles().flatMap(importsOf), frontDoors()))).toEqual([]);
  });
});

/** Imports between the folders of the rules; a file at the top counts as a folder of its own. The front door is apart. */
function betweenFolders(imports: readonly Import[]): Import[] {
  const folderOf = (path: string): string => /^libs\/rules\/src\/[^/]+/.exec(path)?.[0] ?? path;
  return imports
    .filter(({ from }) => from.startsWith('libs/rules/src/') && !/\/index\.ts$|\.spec\.ts$/.test(from))
    .map((found) => ({ ...found, from: folderOf(found.from), to: folderOf(found.to) }))
    .filter(({ from, to }) => from !== to);
}

describe('the folders of the rules', () => {
  it('form a ladder: what is below knows nothing of what is above', () => {
    const between = betweenFolders(typeScriptFiles().flatMap(importsOf));
    expect(between.length).toBeGreaterThan(0);
    expect(circlesIn(needsOf(between, new Map()))).toEqual([]);
  });

  it('would be found to lean on each other', () => {
    const text = (target: string): string => `import { a } from '${target}'`;
    const imports = [
      ...importsOf({ path: 'libs/rules/src/low/a.ts', text: text('../high/b.js') }),
      ...importsOf({ path: 'libs/rules/src/high/c.ts', text: text('../low/d.js') }),
    ];
    expect(circlesIn(needsOf(betweenFolders(imports), new Map()))).toEqual([
      'libs/rules/src/low → libs/rules/src/high → libs/rules/src/low',
    ]);
  });
});

describe('the check for circles', () => {
  it('finds a circle of three', () => {
    const files = {
      'a.ts': `import { b } from './b.js'`,
      'b.ts': `export * from './c.js'`,
      'c.ts': `import './a.js'`,
    };
    expect(circlesOf(files)).toEqual(['a.ts → b.ts → c.ts → a.ts']);
  });

  it('finds one that goes through a front door', () => {
    const files = { 'libs/door.ts': `export { a } from './a.js'`, 'libs/a.ts': `import { b } from '#door'` };
    expect(circlesOf(files)).toEqual(['libs/door.ts → libs/a.ts → libs/door.ts']);
  });

  it('finds two circles behind one start, and a file that needs itself', () => {
    const files = {
      'a.ts': `import './b.js'; import './c.js'`,
      'b.ts': `import './a.js'`,
      'c.ts': `import './c.js'`,
    };
    expect(circlesOf(files)).toEqual(['a.ts → b.ts → a.ts', 'c.ts → c.ts']);
  });

  it('lets types look back, and two ways lead to one file', () => {
    const files = {
      'a.ts': `import { b } from './b.js'; import { c } from './c.js'`,
      'b.ts': `import { c } from './c.js'; import { type A } from './a.js'`,
      'c.ts': `import type { A } from './a.js'`,
    };
    expect(circlesOf(files)).toEqual([]);
  });
});
