import { peersOf, unexplainedPackages, unusedPackages } from './dependencies.js';
import { readSource, typeScriptFiles } from './repository.js';

interface PackageFile {
  readonly dependencies: Record<string, string>;
  readonly devDependencies: Record<string, string>;
}

const { dependencies, devDependencies } = JSON.parse(readSource('package.json').text) as PackageFile;
const NOT_EXACT = (version: string): boolean => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version);

describe('dependencies', () => {
  it('are pinned to one version', () => {
    expect(Object.values({ ...dependencies, ...devDependencies }).filter(NOT_EXACT)).toEqual([]);
  });

  it('are all used by the program', () => {
    const shipped = typeScriptFiles().filter(({ path }) => !/^tests\/|\.spec\.ts$/.test(path));
    expect(unusedPackages(Object.keys(dependencies), shipped, peersOf)).toEqual([]);
  });

  it('are explained to the next person', () => {
    // Types belong to the package that they describe.
    const names = Object.keys({ ...dependencies, ...devDependencies }).filter(
      (name) => !/^@types\//.test(name),
    );
    expect(unexplainedPackages(names, readSource('DEVELOPERS.md').text)).toEqual([]);
  });
});

describe('the check of dependencies', () => {
  it('finds a range', () => {
    expect(['1.2.3', '1.2.3-beta.4', '^1.2.3', '1.x', '*', 'latest'].filter(NOT_EXACT)).toEqual([
      '^1.2.3',
      '1.x',
      '*',
      'latest',
    ]);
  });

  it('finds a package that nobody needs', () => {
    const text = `import { a } from 'used/deep'; const b = resolve('named');`;
    const peers = (name: string): string[] => (name === 'used' ? ['asked-for'] : []);
    const names = ['used', 'named', 'asked-for', 'idle'];
    expect(unusedPackages(names, [{ path: 'a.ts', text }], peers)).toEqual(['idle']);
  });

  it('finds a package without a reason', () => {
    const guide = '| `@frame/core` `fast`, `pg` | the frame |';
    expect(unexplainedPackages(['@frame/core', '@frame/fast', 'pg', 'left-pad'], guide)).toEqual([
      'left-pad',
    ]);
  });
});
