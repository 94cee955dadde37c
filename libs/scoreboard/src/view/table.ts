import { h, type Part, type Tree, type TreeElement } from './tree.js';

/*
 * Tables say their roles although they are tables: on a narrow screen rows are laid out otherwise, and some browsers then
 * forget what they are.
 */

export interface TableParts {
  readonly caption: Part;
  /** Says in the style what the table is of. */
  readonly kind: string;
  readonly head: readonly Tree[];
  readonly rows: readonly Part[];
}

export function tableView({ caption, kind, head, rows }: TableParts): TreeElement {
  return h(
    'table',
    { class: 'table', role: 'table', 'data-kind': kind },
    h('caption', {}, caption),
    h('thead', { role: 'rowgroup' }, h('tr', { role: 'row' }, head)),
    h('tbody', { role: 'rowgroup' }, rows),
  );
}

export function headCell(className: string, ...parts: readonly Part[]): Tree {
  return h('th', { scope: 'col', role: 'columnheader', class: className }, parts);
}

/** @param key what the row is of: a row of somebody else is another row */
export function rowOf(key: string, isMarked: boolean, ...cells: readonly Part[]): Tree {
  return h('tr', { role: 'row', class: isMarked ? 'row is-marked' : 'row', 'data-key': key }, cells);
}

export function nameCell(...parts: readonly Part[]): Tree {
  return h('th', { scope: 'row', role: 'rowheader', class: 'who' }, parts);
}

export function cell(className: string, ...parts: readonly Part[]): Tree {
  return h('td', { role: 'cell', class: className }, parts);
}
