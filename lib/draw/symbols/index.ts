import { baselineFor, drawText } from '../lettering/lettering.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxRound, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawCircle, drawLine, drawShape, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import { amplifier } from './amplifier.ts';
import { battery } from './battery.ts';
import { capacitor } from './capacitor.ts';
import { chassis } from './chassis.ts';
import { converter } from './converter.ts';
import { diode } from './diode.ts';
import { fuse } from './fuse.ts';
import { generator } from './generator.ts';
import { ground } from './ground.ts';
import { junction } from './junction.ts';
import { loudspeaker } from './loudspeaker.ts';
import { makeContact } from './make-contact.ts';
import { relayCoil } from './relay-coil.ts';
import type { CircuitSymbol, Facing, SymbolPort, SymbolStroke } from './symbol.ts';
import { terminal } from './terminal.ts';

/** Every symbol, in the order in which a key lists them. */
export const symbols = {
  battery,
  generator,
  fuse,
  ground,
  chassis,
  amplifier,
  loudspeaker,
  junction,
  terminal,
  makeContact,
  relayCoil,
  capacitor,
  diode,
  converter,
} as const satisfies Record<string, CircuitSymbol>;

/** Quarter turns to the left, as seen. */
export type QuarterTurns = 0 | 1 | 2 | 3;

/** A symbol in its place on paper. */
export interface PlacedSymbol<Port extends string> {
  readonly strokes: readonly SymbolStroke[];
  readonly port: (name: Port) => SymbolPort;
  /** Round strokes and ports; texts stay upright inside it. */
  readonly box: PaperBox;
}

/** Moves and turns a symbol: pure geometry, for drawings and for exports alike. */
export function placeSymbol<Port extends string>(
  symbol: CircuitSymbol<Port>,
  centre: PaperPoint,
  turns: QuarterTurns = 0,
): PlacedSymbol<Port> {
  const move = (point: PaperPoint): PaperPoint => moved(point, centre, turns);
  const strokes = symbol.strokes.map((stroke) => movedStroke(stroke, move));
  const ports: readonly SymbolPort[] = Object.values(symbol.ports);
  return {
    strokes,
    port: (name) => {
      const { point, facing } = symbol.ports[name];
      return { point: move(point), facing: turnedFacing(facing, turns) };
    },
    box: boxRound([...strokes.flatMap(extentOf), ...ports.map(({ point }) => move(point))]),
  };
}

/** Draws a placed symbol. */
export function drawSymbol(
  drawing: Drawing,
  parent: Parent,
  { strokes }: Pick<PlacedSymbol<never>, 'strokes'>,
): void {
  for (const stroke of strokes) drawStroke(drawing, parent, stroke);
}

function drawStroke(drawing: Drawing, parent: Parent, stroke: SymbolStroke): void {
  if (stroke.kind === 'letters') {
    const type = types.item;
    const { xMm, yMm } = stroke.centre;
    drawText(drawing, parent, stroke.text, at(xMm, baselineFor(yMm, type)), { type, align: 'middle' });
  } else if (stroke.kind === 'circle') {
    const fill = stroke.filled ? 'line' : 'paper';
    drawCircle(parent, stroke.centre, stroke.radiusMm, lines.symbol, fill);
  } else if (stroke.kind === 'shape')
    drawShape(parent, stroke.points, lines.symbol, stroke.filled ? 'line' : undefined);
  else drawLine(parent, stroke.points, lines.symbol);
}

function moved(point: PaperPoint, centre: PaperPoint, turns: QuarterTurns): PaperPoint {
  let { xMm, yMm } = point;
  for (let turn = 0; turn < turns; turn += 1) [xMm, yMm] = [yMm, -xMm];
  return at(centre.xMm + xMm, centre.yMm + yMm);
}

function movedStroke(stroke: SymbolStroke, move: (point: PaperPoint) => PaperPoint): SymbolStroke {
  if (stroke.kind === 'circle' || stroke.kind === 'letters')
    return { ...stroke, centre: move(stroke.centre) };
  return { ...stroke, points: stroke.points.map(move) };
}

const facings: readonly Facing[] = ['right', 'up', 'left', 'down'];

function turnedFacing(facing: Facing, turns: QuarterTurns): Facing {
  return facings[(facings.indexOf(facing) + turns) % facings.length] ?? facing;
}

function extentOf(stroke: SymbolStroke): readonly PaperPoint[] {
  if (stroke.kind === 'letters') return [stroke.centre];
  if (stroke.kind !== 'circle') return stroke.points;
  const { centre, radiusMm } = stroke;
  return [at(centre.xMm - radiusMm, centre.yMm - radiusMm), at(centre.xMm + radiusMm, centre.yMm + radiusMm)];
}
