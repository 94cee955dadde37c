import { createElement, type VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';
import type { Tree } from '#scoreboard';

/** Writes trees out as HTML. Every text and every value of an attribute is escaped by the renderer. */
export function htmlOf(trees: readonly Tree[]): string {
  return trees.map((tree) => renderToString(nodeOf(tree) as VNode)).join('');
}

function nodeOf(tree: Tree): VNode | string {
  if (typeof tree === 'string') return tree;
  return createElement(tree.tag, { ...tree.attributes }, ...tree.children.map(nodeOf));
}

/** Data in a page that no browser runs; nothing in it can end the element early. */
export function dataBlock(data: object): string {
  return `<script type="application/ld+json">${JSON.stringify(data).replaceAll('<', '\\u003c')}</script>`;
}
