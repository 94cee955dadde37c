export type Values = Readonly<Record<string, string | number>>;

/** Puts into a label what belongs into it: `{name}` stands for a value. */
export function filled(label: string, values: Values): string {
  return label.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name] ?? ''));
}
