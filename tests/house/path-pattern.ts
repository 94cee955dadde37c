/**
 * Whether a path (or the name of what is imported) fits a pattern: `*` stands for anything within one folder, `**`
 * for anything, `{a,b}` for one of several.
 */
export function fits(path: string, pattern: string): boolean {
  const source = pattern.replace(/\*\*|\*|[.+?^$()|[\]\\/]|[{},]/g, (part) => {
    switch (part) {
      case '**':
        return '.*';
      case '*':
        return '[^/]*';
      case '{':
        return '(?:';
      case '}':
        return ')';
      case ',':
        return '|';
      default:
        return `\\${part}`;
    }
  });
  return new RegExp(`^${source}$`).test(path);
}

export function fitsOne(path: string, patterns: readonly string[]): boolean {
  return patterns.some((pattern) => fits(path, pattern));
}
