import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** The top folder of the checkout. */
export const ROOT = join(import.meta.dirname, '..', '..');

/** What installing, building and running leave behind; no source of ours lies there. In a work tree `.git` is a file. */
const NOT_OURS = new Set(['node_modules', 'dist', 'coverage', '.git']);

/** A file by its path from the top of the repository, with `/` between folders. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

function walk(folder: string): string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) {
      const hidden = entry.name.startsWith('.') && entry.name !== '.ci';
      return hidden || NOT_OURS.has(entry.name) ? [] : walk(path);
    }
    return entry.isFile() && !NOT_OURS.has(entry.name) ? [path] : [];
  });
}

/** Paths of all files of the repository, sorted. */
export const PATHS: readonly string[] = walk('').sort();

export function readSource(path: string): SourceFile {
  return { path, text: readFileSync(join(ROOT, path), 'utf8') };
}

/** Everything the TypeScript compiler reads, tests included. */
export function typeScriptFiles(): readonly SourceFile[] {
  return PATHS.filter((path) => /\.tsx?$/.test(path)).map(readSource);
}

export function exists(path: string): boolean {
  return existsSync(join(ROOT, path));
}

export function parse(file: SourceFile): ts.SourceFile {
  const kind = file.path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  return ts.createSourceFile(file.path, file.text, ts.ScriptTarget.ESNext, true, kind);
}

export function lineOf(source: ts.SourceFile, node: ts.Node): number {
  return source.getLineAndCharacterOfPosition(node.getStart(source)).line + 1;
}

/** Calls `visit` with the node and everything below it, in the order of the text. */
export function eachNode(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => eachNode(child, visit));
}
