import { nothingReleased } from '../../lib/model/content/built.ts';
import { jobSchema } from '../../lib/model/content/job.ts';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import { shopSchema } from '../../lib/model/content/shop.ts';
import { vehicleSchema } from '../../lib/model/content/vehicle.ts';
import { type Part, partSchema } from '../../lib/model/kinds/index.ts';
import type { Place } from '../../lib/model/place.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import { onceEach } from '../../lib/plan/once-each.ts';
import { readHouseRules } from '../../lib/read/read-house-rules.ts';
import { Report } from '../../lib/read/report.ts';
import { resolveJob } from '../../lib/read/resolve/resolve-job.ts';
import { measuresIn } from '../../lib/read/yaml/measures-in.ts';
import type { PlacedFile } from '../../lib/read/yaml/placed-file.ts';
import type { Case } from '../../lib/rules/rule.ts';
import { frozen } from '../shops/frozen.ts';
import { type Written, written } from './content.ts';
import { planOf } from './plan.ts';

function documentOf(file: string, data: unknown): PlacedFile {
  const place = (path: string): Place => ({ file, line: 1, column: 1, path });
  return {
    file,
    measures: measuresIn(data),
    placeOf: place,
    keyPlaceOf: place,
    span: () => null,
    rowOf: () => null,
  };
}

/** Parts as read: most cases change none of them, or one. */
const partOf = onceEach(
  (part: Written['parts'][string]): Part => frozen(partSchema.parse(part)),
  JSON.stringify,
);
const measuresOf = onceEach((parts: Written['parts']) => frozen(measuresIn({ parts })), JSON.stringify);

/** Reads what was written; a fault in it is a fault of the test. */
export function jobOf({ shop, vehicle, parts, job }: Written): ReadJob {
  const readShop = shopSchema.parse(shop);
  const inRuns = new Set(Object.values(job.runs ?? {}).flatMap(({ links }) => links));
  for (const [id, link] of Object.entries(job.links)) if (!inRuns.has(id)) link.length ??= '300 mm';
  const document = documentOf('job.yaml', job);
  const report = new Report(document);
  const read = resolveJob(
    jobSchema.parse(job),
    document,
    {
      shop: readShop,
      promised: {},
      shopFile: documentOf('shop.yaml', shop),
      rules: readHouseRules(readShop.rules),
      parts: Object.fromEntries(Object.entries(parts).map(([id, part]) => [id, partOf(part)])),
      partPlace: (path) => ({ file: 'parts.yaml', line: 1, column: 1, path }),
      partMeasures: measuresOf(parts),
      vehicles: {
        [vehicle.id]: {
          vehicle: vehicleSchema.parse(vehicle),
          placed: documentOf('vehicle.yaml', vehicle),
          isWhole: true,
        },
      },
    },
    nothingReleased,
    report,
  );
  if (!read)
    throw new Error(report.problems.map(({ where, message }) => `${where.path}: ${message}`).join('\n'));
  return read;
}

/** A job that no rule has anything to say of, with what the test changes in what was written, or in its plan. */
export function about(
  change: { readonly content?: (content: Written) => void; readonly plan?: (plan: BuildPlan) => void } = {},
): Case {
  const content = written();
  change.content?.(content);
  const job = jobOf(content);
  const plan = planOf(job);
  change.plan?.(plan);
  return { job, plan };
}

export const aboutPlan = (plan: (plan: BuildPlan) => void): Case => about({ plan });
export const aboutContent = (content: (content: Written) => void): Case => about({ content });

/** The one of a list that a test is to change. */
export function one<T>(list: readonly T[], is: (item: T) => boolean): T {
  const found = list.find(is);
  if (found === undefined) throw new Error('The test changes something that is not there.');
  return found;
}

/** The one of a list with an id. */
export function byId<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  return one(list, (item) => item.id === id);
}

/** The entry of a record that a test is to change. */
export function entry<T>(record: Record<string, T> | undefined, key: string): T {
  const found = record?.[key];
  if (found === undefined) throw new Error(`The test changes ${key}, which is not there.`);
  return found;
}

/** A part of one kind that a test is to change. */
export function partIn<K extends Written['parts'][string]['kind']>(
  content: Written,
  id: string,
  kind: K,
): Extract<Written['parts'][string], { kind: K }> {
  const part = entry(content.parts, id);
  if (!isKind(part, kind)) throw new Error(`${id} is no ${kind}`);
  return part;
}

type WrittenPart = Written['parts'][string];
function isKind<K extends WrittenPart['kind']>(
  part: WrittenPart,
  kind: K,
): part is Extract<WrittenPart, { kind: K }> {
  return part.kind === kind;
}
