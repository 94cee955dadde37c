import ts from 'typescript';
import { eachNode, lineOf, parse, type SourceFile } from './repository.js';

/** Names that reach out of a pure function, each with what it would bring in. */
const REACHING: ReadonlyMap<string, string> = new Map([
  ['Date', 'the clock or the time zone; time comes in as a parameter'],
  ['performance', 'the clock'],
  ['process', 'the machine it runs on'],
  ['Buffer', 'a part of Node; a browser has none'],
  ['globalThis', 'whatever the host has'],
  ['window', 'the page'],
  ['document', 'the page'],
  ['navigator', 'the browser'],
  ['localStorage', 'the browser’s storage'],
  ['indexedDB', 'the browser’s storage'],
  ['console', 'output'],
  ['fetch', 'the network'],
  ['crypto', 'chance'],
  ['Intl', 'the language of the host'],
  ['Promise', 'waiting'],
  ['setTimeout', 'waiting'],
  ['setInterval', 'waiting'],
  ['setImmediate', 'waiting'],
  ['queueMicrotask', 'waiting'],
  ['require', 'another module, unseen by the import table'],
  ['eval', 'code from text'],
  ['Function', 'code from text'],
]);

const OF_THE_HOST = /^(localeCompare|toLocale\w+)$/;

function isReference(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isTypeReferenceNode(parent) || ts.isQualifiedName(parent)) return false;
  const named = parent as { name?: ts.Node; propertyName?: ts.Node };
  const declares = named.name === node || named.propertyName === node;
  return !declares || ts.isShorthandPropertyAssignment(parent);
}

/** Names that the file gives itself: a variable called `document` is no page. */
function ownNames(source: ts.SourceFile): ReadonlySet<string> {
  const names = new Set<string>();
  eachNode(source, (node) => {
    const declares = ts.isVariableDeclaration(node) || ts.isParameter(node) || ts.isBindingElement(node);
    if (declares && ts.isIdentifier(node.name)) names.add(node.name.text);
  });
  return names;
}

function reachOf(node: ts.Node, own: ReadonlySet<string>): string | null {
  if (ts.isIdentifier(node)) {
    const brings = isReference(node) && !own.has(node.text) ? REACHING.get(node.text) : undefined;
    return brings === undefined ? null : `${node.text} brings in ${brings}`;
  }
  if (ts.isPropertyAccessExpression(node)) {
    if (node.getText() === 'Math.random') return 'Math.random brings in chance; a draw takes a seed';
    if (OF_THE_HOST.test(node.name.text)) return `${node.name.text} brings in the language of the host`;
  }
  return null;
}

function waits(node: ts.Node): boolean {
  if (ts.isAwaitExpression(node) || (ts.isForOfStatement(node) && node.awaitModifier)) return true;
  return ts.canHaveModifiers(node) && !!node.modifiers?.some((m) => m.kind === ts.SyntaxKind.AsyncKeyword);
}

function remembers(node: ts.Node): boolean {
  if (!ts.isVariableStatement(node) || !ts.isSourceFile(node.parent)) return false;
  return (node.declarationList.flags & ts.NodeFlags.Const) === 0;
}

/** What keeps a file from being pure, as sentences. */
export function impuritiesIn(file: SourceFile): string[] {
  const source = parse(file);
  const own = ownNames(source);
  const found: string[] = [];
  eachNode(source, (node) => {
    const where = `${file.path}:${lineOf(source, node)}`;
    const reach = reachOf(node, own);
    if (reach !== null) found.push(`${where} ${reach}`);
    if (waits(node)) found.push(`${where} waits; the rules answer at once`);
    if (remembers(node)) found.push(`${where} remembers something from one call to the next`);
  });
  return found;
}
