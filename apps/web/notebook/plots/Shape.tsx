/** How a throw is drawn. Shapes differ, not colours alone. */
export type ShapeKind = 'competition' | 'practice' | 'estimated' | 'foul';

export function Shape({ kind, x, y }: { readonly kind: ShapeKind; readonly x: number; readonly y: number }) {
  switch (kind) {
    case 'competition':
      return <circle class="shape full" cx={x} cy={y} r={4} />;
    case 'practice':
      return <rect class="shape" x={x - 3.5} y={y - 3.5} width={7} height={7} />;
    case 'estimated':
      return <path class="shape" d={`M${x} ${y - 4.5}l4.5 8h-9z`} />;
    case 'foul':
      return <path class="shape" d={`M${x - 4} ${y - 4}l8 8m0-8l-8 8`} />;
  }
}
