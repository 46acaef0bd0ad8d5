import { benchTest } from './bench-test.ts';
import { boardWiring } from './board/board-wiring.ts';
import { cutAndDrill } from './board/cut-and-drill.ts';
import { placement } from './board/placement.ts';
import { risers } from './board/risers.ts';
import { commissioning } from './commissioning.ts';
import { conductorTable } from './conductor-table.ts';
import { connections } from './connections.ts';
import { cover } from './cover.ts';
import { labels } from './labels.ts';
import { orderOfWork } from './order-of-work.ts';
import { packet } from './packet.ts';
import { pickList } from './pick-list.ts';
import { powerDiagram } from './power-diagram.ts';
import { presets } from './presets.ts';
import { quickView } from './quick/quick-view.ts';
import type { Sheet } from './sheet.ts';
import { signalDiagram } from './signal-diagram.ts';
import { survey } from './survey.ts';
import { terminals } from './terminals-accounted.ts';
import { vehicleCards } from './vehicle-cards.ts';
import { wireEnds } from './wires/wire-ends.ts';
import { wireList } from './wires/wire-list.ts';

/** The sheets of a job in the order in which they are printed. Each has a partial of the same name. */
export const sheetIds = [
  'quick-view',
  'cover',
  'survey',
  'pick-list',
  'cut-and-drill',
  'risers',
  'placement',
  'board-wiring',
  'power-diagram',
  'conductor-table',
  'signal-diagram',
  'connections',
  'wire-list',
  'wire-ends',
  'labels',
  'terminals',
  'order-of-work',
  'presets',
  'bench-test',
  'commissioning',
  'vehicle-cards',
  'packet',
] as const;
export type SheetId = (typeof sheetIds)[number];

/** The sheets that lie on the bench while a board is built, and no more: what is cut, placed, wired and tested there. */
export const benchSheets: readonly SheetId[] = [
  'quick-view',
  'cover',
  'cut-and-drill',
  'risers',
  'placement',
  'board-wiring',
  'wire-list',
  'wire-ends',
  'order-of-work',
  'presets',
  'bench-test',
];

/** Every sheet. One that is missing here does not compile. */
export const sheets: { readonly [K in SheetId]: Sheet } = {
  'quick-view': quickView,
  cover,
  survey,
  'pick-list': pickList,
  'cut-and-drill': cutAndDrill,
  risers,
  placement,
  'board-wiring': boardWiring,
  'power-diagram': powerDiagram,
  'conductor-table': conductorTable,
  'signal-diagram': signalDiagram,
  connections,
  'wire-list': wireList,
  'wire-ends': wireEnds,
  labels,
  terminals,
  'order-of-work': orderOfWork,
  presets,
  'bench-test': benchTest,
  commissioning,
  'vehicle-cards': vehicleCards,
  packet,
};
