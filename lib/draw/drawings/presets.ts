import type { BuildPlan } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawPage, type Page, roomOf } from '../page.ts';
import { at, heightMm, widthMm } from '../paper.ts';
import { panelStrips } from '../presets/panel-strips.ts';
import { type LaidStrip, layStrip } from '../presets/strip-layout.ts';
import { paintStrip } from '../presets/strip-paint.ts';
import type { DrawingKind } from './kind.ts';

/** Every panel with controls, seen facing it, each control in its preset before first power-up. */
export const presets: DrawingKind = {
  sheet: 'presets',
  pages: (plan, metrics) =>
    plan.controls.length === 0 ? [] : presetPages(plan, metrics).map((page) => drawPage(plan, metrics, page)),
};

const gapMm = 8;

type Row = readonly LaidStrip[];
type Base = Omit<Page, 'paint' | 'id' | 'title' | 'orientation'>;

interface Way {
  readonly orientation: Page['orientation'];
  readonly sheets: readonly (readonly Row[])[];
}

function presetPages(plan: BuildPlan, metrics: TextMetrics): Page[] {
  const base: Base = {
    subject: plan.vehicle.title,
    documentType: 'Presets',
    description: describe(plan),
    scale: null,
    projection: null,
    notes: ['Numbers: the order in which the panels of a device present the controls', 'Filled: the preset'],
  };
  const lying = wayOf(plan, metrics, base, 'landscape');
  const standing = wayOf(plan, metrics, base, 'portrait');
  const { orientation, sheets } = standing.sheets.length < lying.sheets.length ? standing : lying;
  return sheets.map((rows, index): Page => {
    const many = sheets.length > 1;
    return {
      ...base,
      orientation,
      id: many ? `presets-${index + 1}` : 'presets',
      title: many ? `Presets, part ${index + 1} of ${sheets.length}` : 'Presets before first power',
      paint: (drawing, room) => {
        let yMm = room.topMm;
        const spareMm = Math.max(0, heightMm(room) - rowsMm(rows)) / (rows.length + 1);
        for (const row of rows) {
          yMm += Math.min(gapMm, spareMm);
          let xMm = room.leftMm;
          for (const laid of row) {
            paintStrip(drawing, laid, at(xMm, yMm));
            xMm += laid.widthMm + gapMm;
          }
          yMm += rowMm(row) + gapMm;
        }
        return tooLarge(rows, widthMm(room), heightMm(room));
      },
    };
  });
}

/** The panels as they fall on sheets that lie or stand. */
function wayOf(plan: BuildPlan, metrics: TextMetrics, base: Base, orientation: Page['orientation']): Way {
  const room = roomOf(plan, metrics, { ...base, orientation, id: 'presets', title: 'Presets' });
  const strips = panelStrips(plan).flatMap((panel) => layStrip(metrics, panel, widthMm(room)));
  const sheets = (anyRow: boolean) => sheetsOf(rowsOf(strips, widthMm(room), anyRow), heightMm(room));
  const [inOrder, closer] = [sheets(false), sheets(true)];
  return { orientation, sheets: closer.length < inOrder.length ? closer : inOrder };
}

/** Puts panels side by side while they fit: in the last row, or in any that has room, which may save a sheet. */
function rowsOf(strips: readonly LaidStrip[], roomMm: number, anyRow: boolean): Row[] {
  const rows: LaidStrip[][] = [];
  for (const laid of strips) {
    const takenMm = (row: Row): number => row.reduce((sum, each) => sum + each.widthMm + gapMm, 0);
    const open = (anyRow ? rows : rows.slice(-1)).find((row) => takenMm(row) + laid.widthMm <= roomMm);
    if (open) open.push(laid);
    else rows.push([laid]);
  }
  return rows;
}

/** Puts rows one below the other while they fit. */
function sheetsOf(rows: readonly Row[], roomMm: number): Row[][] {
  const sheets: Row[][] = [];
  for (const row of rows) {
    const open = sheets.at(-1);
    if (open && rowsMm([...open, row]) <= roomMm) open.push(row);
    else sheets.push([row]);
  }
  return sheets;
}

function rowMm(row: Row): number {
  return Math.max(0, ...row.map(({ heightMm: high }) => high));
}

function rowsMm(rows: readonly Row[]): number {
  return rows.reduce((sum, row) => sum + rowMm(row), 0) + (rows.length - 1) * gapMm;
}

function tooLarge(rows: readonly Row[], roomWidthMm: number, roomHeightMm: number): string[] {
  return rows.flat().flatMap(({ strip: { item, panel }, widthMm: wide, heightMm: high }) => {
    const fits = wide <= roomWidthMm && high <= roomHeightMm;
    return fits ? [] : [`${item.id}, ${panel}: larger than its sheet`];
  });
}

function describe({ controls }: Pick<BuildPlan, 'controls'>): string {
  const told = controls.map(({ item, control, preset }) => `${item} ${control} ${preset}`);
  return `Panels of the devices, each control in its preset: ${told.join('; ')}.`;
}
