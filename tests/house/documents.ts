import type { SourceFile } from './repository.js';

/** What a document tells its reader to open or run. */
export interface Mentions {
  /** Paths in the repository. */
  readonly paths: readonly string[];
  /** Scripts of package.json. */
  readonly scripts: readonly string[];
}

/** What there is to open or run. */
export interface Repository {
  readonly exists: (path: string) => boolean;
  readonly paths: readonly string[];
  readonly scripts: readonly string[];
}

const PATH = /^(apps|libs|migrations|seed|tests|\.ci)\/|^[\w.-]+\.(md|json|yml|js|cjs|ts)$/;

/** A name with a placeholder (`<name>`, `x.service.ts`, `…`, `*`) or a blank stands for many paths. */
function isOnePath(text: string): boolean {
  return PATH.test(text) && !/^x\.|[<>*…{}\s]/.test(text);
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

/** What a document names and the repository does not have, as sentences. */
export function brokenMentions(document: SourceFile, { exists, paths, scripts }: Repository): string[] {
  const folder = document.path.replace(/[^/]*$/, '');
  const isThere = (path: string): boolean => {
    if (exists(path) || exists(folder + path)) return true;
    // Within a sentence about a folder the name of the file is enough.
    return !path.includes('/') && paths.some((known) => known.endsWith(`/${path}`));
  };
  const mentions = mentionsIn(document);
  return [
    ...mentions.paths.filter((path) => !isThere(path)).map((path) => `${document.path} names ${path}`),
    ...mentions.scripts
      .filter((script) => !scripts.includes(script))
      .map((script) => `${document.path} says npm run ${script}`),
  ];
}
