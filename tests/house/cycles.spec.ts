import { circlesIn, needsOf } from './cycles.js';
import { importsOf } from './imports-of.js';
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
