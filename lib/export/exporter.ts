import type { TextMetrics } from '../draw/lettering/text-metrics.ts';
import type { UsualFormatName } from '../draw/sheet/sheet-format.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { SheetMark } from '../model/plan/sheet-mark.ts';
import type { ExportedFile } from './exported-file.ts';
import type { LabelStock } from './labels/label-stock.ts';
import type { DxfUnit } from './machine/dxf.ts';

/** What a shop may choose for an export. */
export interface ExportChoices {
  /** Unit of DXF. Default: the shop's. */
  readonly unit: DxfUnit;
  /** Paper of templates and labels. Default: the shop's. */
  readonly paper: UsualFormatName;
  readonly labelStock: LabelStock;
}

export interface ExportRequest {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly choices: ExportChoices;
}

/** One format: what it is, and its files of a plan. Pure: the same request gives the same bytes. */
export interface Exporter {
  readonly title: string;
  readonly files: (request: ExportRequest) => readonly ExportedFile[];
}

/** What a file says it was made from: job, revision, date of issue. */
export function issueText({ job }: Pick<BuildPlan, 'job'>): string {
  return `${job.id}, revision ${job.revision}, issued ${job.issuedOn}`;
}

/** The same, and that nobody may build from it where that is so. */
export function originText(plan: Pick<BuildPlan, 'job'>, mark: SheetMark | null): string {
  return mark === null ? issueText(plan) : `${mark.word}. ${mark.reason}. ${issueText(plan)}`;
}
