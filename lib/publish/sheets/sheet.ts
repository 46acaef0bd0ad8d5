import type { Audience } from '../../model/audience.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { PublishedPhoto } from '../site/published-photo.ts';
import type { Visible } from '../site/visible-to.ts';
import type { TradeCaution } from '../words/cautions.ts';

interface SheetBase {
  readonly id: string;
  readonly title: string;
  readonly audiences: readonly Audience[];
  /** Cautions that stand at the top of it. */
  readonly cautions: readonly TradeCaution[];
  /** True for a sheet that is much written on at the bench: paper is left free on its right. */
  readonly wideMargin?: boolean;
}

/** A sheet for those who build. Its model is null where the plan has nothing to show on it. */
export interface BuilderSheet<Model extends object = object> extends SheetBase {
  readonly openTo: 'builders';
  readonly model: (plan: BuildPlan, photos?: readonly PublishedPhoto[]) => Model | null;
}

/** A sheet that others may see as well: it must do with what is visible of a plan. */
export interface OpenSheet<Model extends object = object> extends SheetBase {
  readonly openTo: 'everyone';
  readonly model: (plan: Visible<BuildPlan>) => Model | null;
}

export type Sheet = BuilderSheet | OpenSheet;

/** Declares a sheet of the builders. */
export function builderSheet<Model extends object>(
  id: string,
  title: string,
  model: (plan: BuildPlan, photos?: readonly PublishedPhoto[]) => Model | null,
  { cautions = [], wideMargin = false }: Partial<Pick<SheetBase, 'cautions' | 'wideMargin'>> = {},
): BuilderSheet<Model> {
  return { id, title, audiences: ['bench', 'shop'], cautions, wideMargin, openTo: 'builders', model };
}
