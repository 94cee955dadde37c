import type { Tree, TreeElement } from '#scoreboard';

/**
 * Makes the children of a node what the trees say, and touches nothing that is so already: focus, selection and what is
 * folded open stay. By position, not by moving: a row that holds somebody else now (`data-key`) is a new row in the same
 * place, so that nothing on the page moves when places change.
 */
export function patch(parent: Node, trees: readonly Tree[]): void {
  trees.forEach((tree, at) => {
    const now = parent.childNodes[at];
    if (!now) parent.appendChild(nodeOf(tree));
    else if (typeof tree === 'string') patchText(now, tree);
    else if (now instanceof Element && isSame(now, tree)) {
      patchAttributes(now, tree.attributes);
      patch(now, tree.children);
    } else now.replaceWith(nodeOf(tree));
  });
  while (parent.childNodes.length > trees.length) parent.lastChild!.remove();
}

function isSame(now: Element, { tag, attributes }: TreeElement): boolean {
  return now.localName === tag && now.getAttribute('data-key') === (attributes['data-key'] ?? null);
}

function patchText(now: ChildNode, text: string): void {
  if (!(now instanceof Text)) now.replaceWith(text);
  else if (now.data !== text) now.data = text;
}

/** Whatever has a class is a part of that name, which pages around may style. */
function patchAttributes(now: Element, given: TreeElement['attributes']): void {
  const attributes = given['class'] === undefined ? given : { ...given, part: given['class'] };
  for (const name of now.getAttributeNames()) {
    // Whether it is folded open is the reader's own affair.
    if (!(name in attributes) && name !== 'open') now.removeAttribute(name);
  }
  for (const [name, value] of Object.entries(attributes)) {
    const text = value === true ? '' : value;
    if (now.getAttribute(name) !== text) now.setAttribute(name, text);
  }
}

/** Text goes in as text: nothing is ever read as markup. */
function nodeOf(tree: Tree): Node {
  if (typeof tree === 'string') return document.createTextNode(tree);
  const element = document.createElement(tree.tag);
  patchAttributes(element, tree.attributes);
  patch(element, tree.children);
  return element;
}
