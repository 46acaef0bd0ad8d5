import { commissioning } from './commissioning.ts';
import { conductorTable } from './conductor-table.ts';
import { cover } from './cover.ts';
import { cutAndDrill } from './cut-and-drill.ts';
import { dropTable } from './drop-table.ts';
import { fuseTable } from './fuse-table.ts';
import { orderOfWork } from './order-of-work.ts';
import { pickList } from './pick-list.ts';
import { placement } from './placement.ts';
import { powerDiagram } from './power-diagram.ts';
import { presets } from './presets.ts';
import type { Sheet } from './sheet.ts';
import { signalDiagram } from './signal-diagram.ts';
import { terminals } from './terminals.ts';
import { wireList } from './wire-list.ts';

/** The sheets of a job in the order in which they are printed. Each has a partial of the same name. */
export const sheetIds = [
  'cover',
  'pick-list',
  'cut-and-drill',
  'placement',
  'power-diagram',
  'fuse-table',
  'conductor-table',
  'drop-table',
  'signal-diagram',
  'wire-list',
  'terminals',
  'order-of-work',
  'presets',
  'commissioning',
] as const;
export type SheetId = (typeof sheetIds)[number];

/** Every sheet. One that is missing here does not compile. */
export const sheets: { readonly [K in SheetId]: Sheet } = {
  cover,
  'pick-list': pickList,
  'cut-and-drill': cutAndDrill,
  placement,
  'power-diagram': powerDiagram,
  'fuse-table': fuseTable,
  'conductor-table': conductorTable,
  'drop-table': dropTable,
  'signal-diagram': signalDiagram,
  'wire-list': wireList,
  terminals,
  'order-of-work': orderOfWork,
  presets,
  commissioning,
};
