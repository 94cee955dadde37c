/** Milliseconds that something takes. */
export async function timeOf(work: () => Promise<unknown>): Promise<number> {
  const begun = performance.now();
  await work();
  return performance.now() - begun;
}

export function p95(times: readonly number[]): number {
  return quantileOf(times, 0.95);
}

export function quantileOf(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
