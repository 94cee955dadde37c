import { isBuiltin } from 'node:module';
import { posix } from 'node:path';
import ts from 'typescript';
import { eachNode, lineOf, parse, type SourceFile } from './repository.js';

/** One import, whichever way it is written. */
export interface Import {
  readonly from: string;
  readonly line: number;
  /**
   * `node:fs` for a built-in, `npm:pg` for a package (without the path inside it), `#rules` for a library of ours
   * through its front door, otherwise the path of the file in the repository.
   */
  readonly to: string;
  /** Nothing of it is left when the program runs. */
  readonly typesOnly: boolean;
}

/** The name under which the import table knows what `specifier`, written in the file `from`, means. */
export function targetOf(from: string, specifier: string): string {
  if (/^\.{1,2}(\/|$)/.test(specifier)) {
    const path = posix.join(posix.dirname(from), specifier);
    return path.replace(/\.js(x?)$/, '.ts$1');
  }
  if (specifier.startsWith('#')) return specifier;
  if (isBuiltin(specifier)) return specifier.startsWith('node:') ? specifier : `node:${specifier}`;
  const parts = specifier.split('/');
  return `npm:${parts.slice(0, specifier.startsWith('@') ? 2 : 1).join('/')}`;
}

function importsOnlyTypes(clause: ts.ImportClause | undefined): boolean {
  if (clause === undefined) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const names = clause.namedBindings;
  if (clause.name !== undefined || names === undefined || !ts.isNamedImports(names)) return false;
  return names.elements.length > 0 && names.elements.every((element) => element.isTypeOnly);
}

function exportsOnlyTypes(node: ts.ExportDeclaration): boolean {
  if (node.isTypeOnly) return true;
  const names = node.exportClause;
  if (names === undefined || !ts.isNamedExports(names)) return false;
  return names.elements.length > 0 && names.elements.every((element) => element.isTypeOnly);
}

function isLoadingCall(node: ts.Node): node is ts.CallExpression {
  if (!ts.isCallExpression(node)) return false;
  if (node.expression.kind === ts.SyntaxKind.ImportKeyword) return true;
  return ts.isIdentifier(node.expression) && node.expression.text === 'require';
}

/** The module named by the node, if it is an import of any kind. */
function specifierOf(node: ts.Node): { name: ts.Expression; typesOnly: boolean } | null {
  if (ts.isImportDeclaration(node)) {
    return { name: node.moduleSpecifier, typesOnly: importsOnlyTypes(node.importClause) };
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier) {
    return { name: node.moduleSpecifier, typesOnly: exportsOnlyTypes(node) };
  }
  if (ts.isImportEqualsDeclaration(node) && ts.isExternalModuleReference(node.moduleReference)) {
    return { name: node.moduleReference.expression, typesOnly: node.isTypeOnly };
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
    return { name: node.argument.literal, typesOnly: true };
  }
  if (isLoadingCall(node) && node.arguments[0]) return { name: node.arguments[0], typesOnly: false };
  return null;
}

/** All imports of a file. A module named by an expression instead of a text has the target `computed`. */
export function importsOf(file: SourceFile): Import[] {
  const source = parse(file);
  const imports: Import[] = [];
  eachNode(source, (node) => {
    const found = specifierOf(node);
    if (found === null) return;
    const to = ts.isStringLiteralLike(found.name) ? targetOf(file.path, found.name.text) : 'computed';
    imports.push({ from: file.path, line: lineOf(source, node), to, typesOnly: found.typesOnly });
  });
  return imports;
}
