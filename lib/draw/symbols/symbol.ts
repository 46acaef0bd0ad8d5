import { symbolModuleMm } from '../line-styles.ts';
import { at, type PaperPoint } from '../paper.ts';

export type Facing = 'left' | 'right' | 'up' | 'down';

/** Where a conductor meets a symbol, and which way it leaves. */
export interface SymbolPort {
  readonly point: PaperPoint;
  readonly facing: Facing;
}

/** One stroke of a symbol. Data rather than drawing, so that every export draws the same symbol. */
export type SymbolStroke =
  | { readonly kind: 'line'; readonly points: readonly PaperPoint[] }
  | { readonly kind: 'shape'; readonly points: readonly PaperPoint[]; readonly filled?: boolean }
  | {
      readonly kind: 'circle';
      readonly centre: PaperPoint;
      readonly radiusMm: number;
      readonly filled?: boolean;
    }
  | { readonly kind: 'letters'; readonly text: string; readonly centre: PaperPoint };

/** A symbol after IEC 60617 (mem), with its ports by name. The origin is its middle unless it says otherwise. */
export interface CircuitSymbol<Port extends string = string> {
  /** What it stands for, as a key prints it. */
  readonly what: string;
  readonly strokes: readonly SymbolStroke[];
  readonly ports: Readonly<Record<Port, SymbolPort>>;
}

/** A point counted in modules from the symbol's origin. */
export function mod(x: number, y: number): PaperPoint {
  return at(x * symbolModuleMm, y * symbolModuleMm);
}

/** A straight stroke through points counted in modules. */
export function stroke(...points: readonly (readonly [number, number])[]): SymbolStroke {
  return { kind: 'line', points: points.map(([x, y]) => mod(x, y)) };
}

/** A closed shape through points counted in modules. */
export function shape(...points: readonly (readonly [number, number])[]): SymbolStroke {
  return { kind: 'shape', points: points.map(([x, y]) => mod(x, y)) };
}

/** A port at a point counted in modules. */
export function port(x: number, y: number, facing: Facing): SymbolPort {
  return { point: mod(x, y), facing };
}

/** The mark of the positive side. */
export function plusMark(x: number, y: number): SymbolStroke[] {
  const arm = 0.3;
  return [stroke([x - arm, y], [x + arm, y]), stroke([x, y - arm], [x, y + arm])];
}
