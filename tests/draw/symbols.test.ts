import { describe, expect, it } from 'vitest';
import { symbolModuleMm } from '../../lib/draw/line-styles.ts';
import { at } from '../../lib/draw/paper.ts';
import { placeSymbol, type QuarterTurns, symbols } from '../../lib/draw/symbols/index.ts';
import type { CircuitSymbol, SymbolPort } from '../../lib/draw/symbols/symbol.ts';

const named: readonly (readonly [string, CircuitSymbol])[] = Object.entries(symbols);

function ports(symbol: CircuitSymbol): readonly (readonly [string, SymbolPort])[] {
  return Object.entries(symbol.ports);
}

describe.each(named)('symbol %s', (_, symbol) => {
  it('has ports on half modules, so that conductors meet them on a grid', () => {
    for (const [, { point }] of ports(symbol))
      for (const value of [point.xMm, point.yMm])
        expect(Number.isInteger((value * 2) / symbolModuleMm)).toBe(true);
  });

  it('has each port at the end of a stroke or in the middle of a dot', () => {
    for (const [, { point }] of ports(symbol)) {
      const met = symbol.strokes.some((stroke) => {
        if (stroke.kind === 'circle' || stroke.kind === 'letters') return same(stroke.centre, point);
        return stroke.points.some((each) => same(each, point));
      });
      expect(met).toBe(true);
    }
  });

  it('keeps its ports at the edge it says they face, in all four turns', () => {
    for (const turns of [0, 1, 2, 3] as const satisfies readonly QuarterTurns[]) {
      const placed = placeSymbol(symbol, at(0, 0), turns);
      for (const [name] of ports(symbol)) {
        const { point, facing } = placed.port(name);
        const reach = { left: -point.xMm, right: point.xMm, up: -point.yMm, down: point.yMm }[facing];
        expect(reach).toBeGreaterThanOrEqual(0);
      }
    }
  });
});

describe('placeSymbol', () => {
  it('turns to the left as seen: a port that faced right faces up after one turn', () => {
    const turned = placeSymbol(symbols.battery, at(100, 50), 1);
    expect(turned.port('minus')).toEqual({ point: at(100, 45), facing: 'up' });
    expect(turned.port('plus')).toEqual({ point: at(100, 55), facing: 'down' });
  });

  it('has a box round strokes and ports', () => {
    expect(placeSymbol(symbols.fuse, at(10, 10)).box).toEqual({
      leftMm: 5,
      topMm: 8.75,
      rightMm: 15,
      bottomMm: 11.25,
    });
  });
});

function same(a: { xMm: number; yMm: number }, b: { xMm: number; yMm: number }): boolean {
  return Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) < 1e-9;
}
