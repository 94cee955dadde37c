/** A mark as a whole number of its unit's smallest steps: centimetres, or quarter inches. */
export function stepsOf(mark: string): number {
  const metric = /^(\d+)\.(\d\d)$/.exec(mark);
  if (metric) return Number(metric[1]) * 100 + Number(metric[2]);
  const feet = /^(\d+)-(\d\d)\.(00|25|50|75)$/.exec(mark);
  if (feet) return Number(feet[1]) * 48 + Number(feet[2]) * 4 + Number(feet[3]) / 25;
  throw new Error(`not a mark: ${mark}`);
}

export function metricMark(centimetres: number): string {
  return `${Math.floor(centimetres / 100)}.${String(centimetres % 100).padStart(2, '0')}`;
}

export function feetMark(quarterInches: number): string {
  const inches = String(Math.floor((quarterInches % 48) / 4)).padStart(2, '0');
  const quarter = String((quarterInches % 4) * 25).padStart(2, '0');
  return `${Math.floor(quarterInches / 48)}-${inches}.${quarter}`;
}

/** One valid trial of a throw or a horizontal jump. `steps` is null where it was not measured. */
export interface ValidTrial {
  mark: string;
  steps: number | null;
  wind: string | null;
}

/** The valid trials among the cells of a throw or a horizontal jump, in the order taken. */
export function validTrials(cells: readonly (string | null)[]): ValidTrial[] {
  const valid: ValidTrial[] = [];
  for (const cell of cells) {
    if (cell === null || cell === '-' || cell === 'r' || cell.startsWith('X')) continue;
    if (cell === 'O') {
      valid.push({ mark: 'O', steps: null, wind: null });
      continue;
    }
    const [mark = '', wind = null] = cell.split(' ');
    valid.push({ mark, steps: stepsOf(mark), wind });
  }
  return valid;
}

/** At most +2.0 m/s. The limit for records; World Athletics CR31 (from memory). */
export function windIsLegal(wind: string | null): boolean {
  return wind !== null && wind !== 'NWI' && Number(wind.replace('.', '')) <= 20;
}
