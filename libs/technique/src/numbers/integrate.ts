/** ∫ f between two points by adaptive Simpson with Richardson's correction, to an absolute tolerance. */
export function integrate(of: (x: number) => number, from: number, to: number, tolerance = 1e-10): number {
  // A few panels to begin with, so that a narrow peak is not stepped over.
  const panels = 16;
  const width = (to - from) / panels;
  let total = 0;
  for (let panel = 0; panel < panels; panel++) {
    const [a, b] = [from + panel * width, from + (panel + 1) * width];
    const middle = (a + b) / 2;
    const ends: Panel = { a, b, atA: of(a), atMiddle: of(middle), atB: of(b) };
    total += refined(of, ends, tolerance / panels, 40);
  }
  return total;
}

interface Panel {
  readonly a: number;
  readonly b: number;
  readonly atA: number;
  readonly atMiddle: number;
  readonly atB: number;
}

function simpson({ a, b, atA, atMiddle, atB }: Panel): number {
  return ((b - a) / 6) * (atA + 4 * atMiddle + atB);
}

function refined(of: (x: number) => number, panel: Panel, tolerance: number, deeper: number): number {
  const { a, b, atA, atMiddle, atB } = panel;
  const middle = (a + b) / 2;
  const left: Panel = { a, b: middle, atA, atMiddle: of((a + middle) / 2), atB: atMiddle };
  const right: Panel = { a: middle, b, atA: atMiddle, atMiddle: of((middle + b) / 2), atB };
  const halves = simpson(left) + simpson(right);
  const difference = halves - simpson(panel);
  if (deeper === 0 || Math.abs(difference) <= 15 * tolerance) return halves + difference / 15;
  return refined(of, left, tolerance / 2, deeper - 1) + refined(of, right, tolerance / 2, deeper - 1);
}
