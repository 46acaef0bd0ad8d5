import { z } from 'zod';
import { audiencesOf } from '../../../lib/model/audience.ts';
import { type BuildPlan, buildPlanSchema } from '../../../lib/model/plan/index.ts';
import { insideOf } from '../../../lib/model/writing/schema-shape.ts';
import { visibleTo } from '../../../lib/publish/site/visible-to.ts';

/** A word that no text of ours has. */
export const canary = 'kanarienvogel';

/**
 * A plan in which every text that its owner may not see bears a canary, by the schema. What is one name stays one name:
 * the parts of an id between its dots are marked alike wherever they stand, and those that the owner sees are left.
 */
export function withCanaries(plan: BuildPlan): BuildPlan {
  const seen = new Set(
    textsIn(visibleTo(buildPlanSchema, plan, 'customer')).flatMap((text) => text.split('.')),
  );
  const mark = (text: string): string =>
    text
      .split('.')
      .map((part) => (part === '' || /^\d/.test(part) || seen.has(part) ? part : `${canary}${part}`))
      .join('.');
  const marked = buildPlanSchema.parse(walk(buildPlanSchema, plan, mark));
  // What a line of the record is told by is its id: it is left, so that readings are told.
  const measurements = marked.measurements.map((line, at) => ({
    ...line,
    id: plan.measurements[at]?.id ?? '',
  }));
  return { ...marked, measurements };
}

/** Every text of a value, wherever it stands. */
export function textsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (typeof value !== 'object' || value === null) return [];
  return Object.values(value).flatMap(textsIn);
}

type Mark = (text: string) => string;

function walk(schema: z.ZodType, value: unknown, mark: Mark): unknown {
  const declared = audiencesOf(schema);
  if (declared.length > 0) return declared.includes('customer') ? value : leaf(schema, value, mark);
  const inside = insideOf(schema);
  switch (inside.shape) {
    case 'object':
      return fields(value, (name) => inside.fields.get(name), mark);
    case 'record':
      return fields(value, () => inside.value, mark);
    case 'list':
      return Array.isArray(value) ? value.map((one) => walk(inside.element, one, mark)) : value;
    case 'tuple':
      return Array.isArray(value)
        ? value.map((one, at) => walk(inside.items[at] ?? z.unknown(), one, mark))
        : value;
    case 'wrapper':
      return value === undefined || value === null ? value : walk(inside.inner, value, mark);
    default:
      return value;
  }
}

function fields(value: unknown, schemaOf: (name: string) => z.ZodType | undefined, mark: Mark): unknown {
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => {
      const schema = schemaOf(name);
      return [name, schema ? walk(schema, inner, mark) : inner];
    }),
  );
}

/** A leaf that the owner may not see: its texts are marked, the words of a closed set stay. */
function leaf(schema: z.ZodType, value: unknown, mark: Mark): unknown {
  if (schema instanceof z.ZodString) return typeof value === 'string' ? mark(value) : value;
  const inside = insideOf(schema);
  if (inside.shape === 'list')
    return Array.isArray(value) ? value.map((one) => leaf(inside.element, one, mark)) : value;
  if (inside.shape === 'wrapper')
    return value === undefined || value === null ? value : leaf(inside.inner, value, mark);
  return value;
}
