/**
 * Format of the plan document. It is raised by whoever adds a field that readers need, renames one, or changes what one
 * means; the step from the format before is written below, so that every plan that was ever frozen stays readable and
 * shows what it showed.
 */
export const planFormat = 1;

type Fields = Readonly<Record<string, unknown>>;

/** How a plan of each format becomes one of the next. */
const steps: Readonly<Record<number, (plan: Fields) => Fields>> = {
  // Plans frozen before the format was written in them.
  0: (plan) => plan,
};

/** A plan document in today's format, or why it can't be brought up to it. */
export type BroughtUp =
  | { readonly state: 'ready'; readonly plan: Fields }
  | { readonly state: 'no-plan' }
  | { readonly state: 'too-new'; readonly format: number };

/** Brings a plan document, as parsed from JSON, from the format in which it was frozen up to today's. Not yet validated. */
export function broughtUp(document: unknown): BroughtUp {
  if (!isFields(document)) return { state: 'no-plan' };
  const { format = 0 } = document;
  if (typeof format !== 'number' || !Number.isInteger(format) || format < 0) return { state: 'no-plan' };
  if (format > planFormat) return { state: 'too-new', format };
  let plan: Fields = document;
  for (let from = format; from < planFormat; from += 1) plan = steps[from]?.(plan) ?? plan;
  return { state: 'ready', plan: { ...plan, format: planFormat } };
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
