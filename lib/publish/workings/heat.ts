import type { BuildPlan, PlanHeat } from '../../model/plan/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { workingOr } from '../words/written.ts';

type Item = PlanHeat['items'][number] & { readonly space: string };

/** Where the heat of each space comes from: what its devices take and give while music plays. */
export function heatLosses({ heat }: Pick<BuildPlan, 'heat'>): Table {
  const items = heat.flatMap(({ space, items: own }) => own.map((item): Item => ({ ...item, space })));
  return tableOf(
    'Heat of the devices while music plays',
    items,
    [
      { title: 'Device', cell: ({ item, space }) => ({ ...strong(item), beside: space }) },
      { title: 'Takes', kind: 'figure', cell: ({ inputW }) => workingOr(inputW, 'W', 1) },
      { title: 'Gives as sound', kind: 'figure', cell: ({ outputW }) => workingOr(outputW, 'W', 1) },
      { title: 'Heat', kind: 'figure', cell: ({ lossW }) => workingOr(lossW, 'W', 1) },
    ],
    ({ item }) => item,
  );
}

/** Where the heat of each space goes, and how warm its air gets by that. */
export function heatOfSpaces({ heat }: Pick<BuildPlan, 'heat'>): Table {
  return tableOf(
    'Air of the spaces while music plays: P = (k A + rho c V) dT',
    heat,
    [
      { title: 'Space', cell: ({ space, zone }) => ({ ...strong(space), beside: zone }) },
      { title: 'Heat P', kind: 'figure', cell: ({ lossW }) => workingOr(lossW, 'W', 1) },
      { title: 'Walls A', kind: 'figure', cell: ({ surfaceM2 }) => workingOr(surfaceM2, 'm²', 3) },
      { title: 'k', kind: 'figure', cell: ({ passesWM2K }) => workingOr(passesWM2K, 'W/m²K', 1) },
      { title: 'By walls', kind: 'figure', cell: ({ wallsW }) => workingOr(wallsW, 'W', 1) },
      { title: 'By fan', kind: 'figure', cell: ({ fanW }) => workingOr(fanW, 'W', 1) },
      { title: 'By openings', kind: 'figure', cell: ({ openingsW }) => workingOr(openingsW, 'W', 1) },
      { title: 'Round it', kind: 'figure', cell: ({ outsideC }) => workingOr(outsideC, '°C', 1) },
      { title: 'Warmer by dT', kind: 'figure', cell: ({ riseK }) => workingOr(riseK, 'K', 1) },
      { title: 'Air', kind: 'figure', cell: ({ airC }) => workingOr(airC, '°C', 1) },
    ],
    ({ space }) => space,
  );
}
