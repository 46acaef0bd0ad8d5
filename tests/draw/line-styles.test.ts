import { describe, expect, it } from 'vitest';
import {
  dashesMm,
  inks,
  type LineStyle,
  lines,
  lineWidthsMm,
  type RoleStyle,
  roleStyles,
} from '../../lib/draw/line-styles.ts';

describe('lines', () => {
  // ISO 128-2: line widths 0,13; 0,18; 0,25; 0,35; 0,5; 0,7; 1; 1,4; 2 mm (from memory).
  it('have widths of ISO 128-2', () => {
    expect(Object.values(lineWidthsMm)).toEqual([0.25, 0.35, 0.5, 0.7]);
    for (const line of Object.values(lines)) expect(Object.values(lineWidthsMm)).toContain(line.widthMm);
  });

  // ISO 128-2: dash 12 d, gap 3 d, long dash 24 d, dot at most 0,5 d (from memory); hidden edges here are 0.35 mm.
  it('have dashes of ISO 128-2', () => {
    expect(dashesMm(lines.hidden)).toEqual([4.2, 1.05]);
    expect(dashesMm(lines.centre)).toEqual([6, 0.75, 0.125, 0.75]);
    expect(dashesMm(lines.cut)).toEqual([]);
  });
});

describe('conductor roles', () => {
  it('are told apart without colour: no two share width, dashes, core and ticks', () => {
    const looks = Object.values(roleStyles).map((style: RoleStyle) => {
      const line: LineStyle = style.line;
      return JSON.stringify([line.widthMm, line.elements, style.coreMm ?? 0, style.ticks ?? null]);
    });
    expect(new Set(looks).size).toBe(looks.length);
  });
});

describe('inks', () => {
  it('fall back to black, to white for paper, and to greys for what is pale on paper too', () => {
    const greys: Readonly<Record<string, string>> = { paper: '#fff', pale: '#8a8a8a', ghost: '#d4d4d4' };
    for (const [name, ink] of Object.entries(inks))
      expect(ink).toMatch(new RegExp(`^var\\(--draw-[a-z-]+, ${greys[name] ?? '#000'}\\)$`));
  });
});
