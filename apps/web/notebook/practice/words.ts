import { sidedText } from '#technique';
import type { Notebook } from '../notebook.js';
import type { Point } from '../shapes.js';

/** A text of the vocabulary as it is said: the arm says which side is meant. */
export function said(text: string): string {
  return sidedText(text, null);
}

export function pointOf(notebook: Notebook, event: string, code: string): Point | null {
  const vocabulary = notebook.store.kept.value.vocabularies[event];
  return vocabulary?.faults.find((one) => one.code === code) ?? null;
}

/** The name of a point; its code where its words were not read yet. */
export function nameOf(notebook: Notebook, event: string, code: string): string {
  const point = pointOf(notebook, event, code);
  return point ? said(point.name) : code;
}
