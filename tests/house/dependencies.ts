import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { importsOf } from './imports-of.js';
import { ROOT, type SourceFile } from './repository.js';

interface Manifest {
  readonly peerDependencies?: Record<string, string>;
}

/** What a package asks for beside itself. */
export function peersOf(name: string): string[] {
  const path = join(ROOT, 'node_modules', name, 'package.json');
  return Object.keys((JSON.parse(readFileSync(path, 'utf8')) as Manifest).peerDependencies ?? {});
}

/** The packages that none of the files imports or names, and that none of those they use asks for beside itself. */
export function unusedPackages(
  names: readonly string[],
  files: readonly SourceFile[],
  peers: (name: string) => readonly string[],
): string[] {
  const imported = new Set(files.flatMap(importsOf).map(({ to }) => to.replace(/^npm:/, '')));
  const isNamed = (name: string): boolean => files.some(({ text }) => text.includes(`'${name}'`));
  const used = new Set(names.filter((name) => imported.has(name) || isNamed(name)));
  const asked = new Set([...used].flatMap(peers));
  return names.filter((name) => !used.has(name) && !asked.has(name));
}

/** The packages that the guide does not name, in full or as `part` after another one of the same scope. */
export function unexplainedPackages(names: readonly string[], guide: string): string[] {
  return names.filter((name) => {
    const [scope = '', part] = name.split('/');
    const isNamedInPart = part !== undefined && guide.includes(`${scope}/`) && guide.includes(`\`${part}\``);
    return !guide.includes(`\`${name}\``) && !isNamedInPart;
  });
}
