import type { SourceFile } from './repository.js';

/** What a document tells its reader to open or run, checked against what there is. */
export interface Mentions {
  /** Paths in the repository. */
  readonly paths: readonly string[];
  /** Scripts of package.json. */
  readonly scripts: readonly string[];
}

const KNOWN_TOPS = /^(apps|libs|migrations|seed|tests|bench|\.ci)\/|^[\w.-]+\.(md|json|yml|js|cjs|ts)$/;

/** A name with a placeholder (`<name>`, `…`, `*`) or a blank stands for many paths. */
function isOnePath(text: string): boolean {
  return KNOWN_TOPS.test(text) && !/[<>*…{}\s]/.test(text);
}

export function mentionsIn(document: SourceFile): Mentions {
  const quoted = [...document.text.matchAll(/`([^`\n]+)`/g)].map((match) => match[1] ?? '');
  const links = [...document.text.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map((match) => match[1] ?? '');
  const local = links.filter((link) => !/^[a-z]+:/.test(link)).map((link) => link.replace(/^\.\//, ''));
  const scripts = [...document.text.matchAll(/npm run (?:--?[\w-]+ )*([\w:-]+)/g)];
  return {
    paths: [...quoted.filter(isOnePath), ...local],
    scripts: scripts.map((match) => match[1] ?? ''),
  };
}
