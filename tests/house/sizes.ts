import ts from 'typescript';
import { eachNode, lineOf, parse, type SourceFile } from './repository.js';

/** Above this a file is refused. */
export const FILE_LINES_MAX = 350;
/** Tests say more than what they test; above this they belong to two rules. */
export const SPEC_LINES_MAX = 500;
/** Above this a file is named, to be looked at: perhaps it holds two ideas. */
export const FILE_LINES_EXPECTED = 250;
export const FUNCTION_LINES_MAX = 70;

export function linesOf(file: SourceFile): number {
  return file.text.replace(/\n$/, '').split('\n').length;
}

export function isTooLong(file: SourceFile): boolean {
  return linesOf(file) > (file.path.endsWith('.spec.ts') ? SPEC_LINES_MAX : FILE_LINES_MAX);
}

/** `describe('…', () => {…})` is a chapter of tests, not a function that does one thing. */
function isChapter(node: ts.Node): boolean {
  if (!ts.isCallExpression(node.parent)) return false;
  return /^describe\b/.test(node.parent.expression.getText());
}

function nameOf(node: ts.FunctionLikeDeclaration): string {
  if (node.name) return node.name.getText();
  if (ts.isConstructorDeclaration(node)) return 'constructor';
  return ts.isVariableDeclaration(node.parent) ? node.parent.name.getText() : 'a function without a name';
}

function isFunction(node: ts.Node): node is ts.FunctionLikeDeclaration {
  return ts.isFunctionLike(node) && 'body' in node && node.body !== undefined;
}

/** Functions over the limit, as sentences. */
export function longFunctionsIn(file: SourceFile): string[] {
  const source = parse(file);
  const found: string[] = [];
  eachNode(source, (node) => {
    if (!isFunction(node) || isChapter(node)) return;
    const first = lineOf(source, node);
    const lines = source.getLineAndCharacterOfPosition(node.end).line + 2 - first;
    if (lines > FUNCTION_LINES_MAX) found.push(`${file.path}:${first} ${nameOf(node)} has ${lines} lines`);
  });
  return found;
}
