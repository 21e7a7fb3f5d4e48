// Outlines of sprockets and of the chain around them, for a drawing that is true in tooth counts.
import { round } from '../shared/scale.ts';

/** A sprocket with so many teeth, its pitch circle at `radius`. */
export function sprocket(x: number, y: number, radius: number, teeth: number): string {
  const depth = Math.min(5, Math.max(2.2, (radius * 1.9) / teeth));
  const point = (turn: number, r: number) => `${round(x + r * Math.sin(turn))} ${round(y - r * Math.cos(turn))}`;
  const step = (2 * Math.PI) / teeth;
  let path = '';
  for (let tooth = 0; tooth < teeth; tooth += 1) {
    const at = tooth * step;
    path += `${tooth === 0 ? 'M' : 'L'}${point(at - step * 0.32, radius - depth)}`;
    path += `L${point(at - step * 0.12, radius + depth * 0.8)}L${point(at + step * 0.12, radius + depth * 0.8)}`;
    path += `L${point(at + step * 0.32, radius - depth)}`;
  }
  return path + 'Z';
}

/** The two straight runs of a chain around two circles that stand side by side, the smaller one at the left. */
export function runs(x1: number, r1: number, x2: number, r2: number, y: number): string {
  const lean = Math.asin((r2 - r1) / (x2 - x1));
  const [sin, cos] = [Math.sin(lean), Math.cos(lean)];
  const end = (x: number, r: number, side: 1 | -1) => `${round(x - r * sin)} ${round(y + side * r * cos)}`;
  return `M${end(x1, r1, -1)}L${end(x2, r2, -1)}M${end(x1, r1, 1)}L${end(x2, r2, 1)}`;
}
