import type { Audience } from '../../model/audience.ts';
import { type BuildPlan, buildPlanSchema } from '../../model/plan/index.ts';
import { frozen } from '../frozen.ts';
import { sheetIds, sheets } from '../sheets/index.ts';
import type { Sheet } from '../sheets/sheet.ts';
import type { PublishedPhoto } from '../site/published-photo.ts';
import { visibleTo } from '../site/visible-to.ts';
import { tradeCautions } from '../words/cautions.ts';
import { drawingToken } from './drawing-token.ts';

/** A sheet of a job as a section of its page. Its id is its anchor. */
export interface SheetSection {
  readonly id: string;
  readonly title: string;
  /** Its partial. */
  readonly template: string;
  readonly cautions: readonly string[];
  readonly wideMargin: boolean;
  /** Stands where its drawings are put in. */
  readonly drawings: string;
  readonly sheet: object;
}

/** The sheets of a plan that an audience sees and that have something to show, in the order of print. */
export function sheetSections(
  plan: BuildPlan,
  audience: Audience,
  photos: readonly PublishedPhoto[] = [],
): SheetSection[] {
  const shown = sheetIds
    .map((id) => sheets[id])
    .filter((sheet) => sheet.audiences.includes(audience))
    .flatMap((sheet) => {
      const model = modelOf(sheet, plan, audience, photos);
      return model === null ? [] : [{ sheet, model }];
    });
  return shown.map(({ sheet, model }) => ({
    id: sheet.id,
    title: sheet.title,
    template: `sheets/${sheet.id}.njk`,
    cautions: sheet.cautions.map((name) => tradeCautions[name]),
    wideMargin: sheet.wideMargin ?? false,
    drawings: drawingToken(sheet.id),
    sheet: frozen(model),
  }));
}

function modelOf(
  sheet: Sheet,
  plan: BuildPlan,
  audience: Audience,
  photos: readonly PublishedPhoto[],
): object | null {
  if (sheet.openTo === 'builders') return sheet.model(plan, photos);
  return sheet.model(visibleTo(buildPlanSchema, plan, audience) ?? {});
}
