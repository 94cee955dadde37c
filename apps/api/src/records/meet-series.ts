/**
 * What a meet is called through all its years: its name without the year in it. Meets of one such name have their
 * records together.
 */
export function meetSeriesOf(name: string): string {
  const without = name.replace(/(?<!\d)(19|20)\d{2}(?!\d)/g, ' ').replace(/\s+/g, ' ');
  const trimmed = without.replace(/^[\s,;:–—-]+|[\s,;:–—-]+$/g, '');
  return trimmed === '' ? name : trimmed;
}
