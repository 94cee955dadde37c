/*
 * What is shown, as plain data: the server writes it out as HTML, the element makes nodes of it. Text is text: whoever
 * makes HTML of it escapes it, and nobody here writes markup.
 */

export type Tree = string | TreeElement;

export interface TreeElement {
  readonly tag: string;
  /** `true`: an attribute without a value. */
  readonly attributes: Readonly<Record<string, string | true>>;
  readonly children: readonly Tree[];
}

/** What stands for nothing, so that parts may be left out. */
export type Part = Tree | null | false | readonly Part[];
type Attributes = Readonly<Record<string, string | number | boolean | null | undefined>>;

/** One element. Attributes that are false, null or undefined are left out. */
export function h(tag: string, attributes: Attributes = {}, ...parts: readonly Part[]): TreeElement {
  const given: Record<string, string | true> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) given[name] = true;
    else if (value !== false && value !== null && value !== undefined) given[name] = String(value);
  }
  return { tag, attributes: given, children: flat(parts) };
}

export function flat(parts: readonly Part[]): Tree[] {
  return parts.flatMap((part) => {
    if (part === null || part === false || part === '') return [];
    return isList(part) ? flat(part) : [part];
  });
}

function isList(part: Tree | readonly Part[]): part is readonly Part[] {
  return Array.isArray(part);
}

/** For those who hear it; nothing that is seen. */
export function heard(text: string): TreeElement {
  return h('span', { class: 'heard' }, text);
}

/** For those who see it, where something else says it to those who hear. */
export function seen(text: string, className?: string): TreeElement {
  return h('span', { 'aria-hidden': 'true', class: className }, text);
}
