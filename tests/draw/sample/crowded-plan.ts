import type { BuildPlan, PlanItem, PlanPlacement } from '../../../lib/model/plan/index.ts';
import { samplePlan } from './sample-plan.ts';
import { middling } from './sample-shape.ts';

const gapM = 0.006;

/** A board that is full of small parts, side by side in rows, each with terminals on its four sides and a long name. */
export function crowdedPlan(columns: number, rows: number, widthM: number, depthM: number): BuildPlan {
  const plan = samplePlan({
    ...middling,
    boardWidthM: columns * (widthM + gapM) + 0.06,
    boardHeightM: rows * (depthM + gapM) + 0.06,
  });
  const [model] = plan.items;
  const [board] = plan.boards;
  if (!model || !board) throw new Error('the sample has no item or no board');
  const items: PlanItem[] = [];
  const placements: PlanPlacement[] = [];
  for (let row = 0; row < rows; row += 1)
    for (let column = 0; column < columns; column += 1) {
      const id = `filter-${row + 1}-${column + 1}`;
      items.push(filter(model, id, widthM, depthM));
      const [xM, yM] = [0.03 + column * (widthM + gapM), 0.03 + row * (depthM + gapM)];
      const size = { widthM, depthM, heightM: 0.03, raisedM: 0 };
      placements.push({ item: id, xM, yM, turnDeg: 0, ...size, keepClear: [], chosen: 'given' });
    }
  return { ...plan, items, boards: [{ ...board, placements, routes: [], exits: [], obstacles: [] }] };
}

function filter(model: PlanItem, id: string, widthM: number, depthM: number): PlanItem {
  const at = (panel: 'left' | 'right' | 'top' | 'bottom', name: string, alongM: number) => {
    return { name, role: 'signal-in' as const, panel, atM: alongM };
  };
  return {
    ...model,
    id,
    kind: 'processor',
    title: `Noise filter ${id.slice(7)}`,
    board: 'board',
    origin: 'job',
    widthM,
    depthM,
    controls: [],
    terminals: [
      at('left', 'IN-A', depthM / 3),
      at('left', 'IN-B', (2 * depthM) / 3),
      at('right', 'OUT-A', depthM / 3),
      at('right', 'OUT-B', (2 * depthM) / 3),
      at('top', 'SENSE', widthM / 2),
      at('bottom', 'SHIELD', widthM / 2),
    ],
  };
}
