/** By code point, as most programs sort text; UTF-16 units would put a surrogate pair before some single units. */
export function compareCodePoints(a: string, b: string): number {
  const [left, right] = [[...a], [...b]];
  for (const [at, character] of left.entries()) {
    const other = right[at];
    if (other === undefined) return 1;
    const difference = character.codePointAt(0)! - other.codePointAt(0)!;
    if (difference !== 0) return difference;
  }
  return left.length - right.length;
}
