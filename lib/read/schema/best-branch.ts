import { z } from 'zod';
import { nameMeant } from '../../model/writing/other-words.ts';
import { nearestName } from '../names/nearest-name.ts';
import { saidBySchema } from './issue-words.ts';
import { knownNames, unwrapped } from './schema-walk.ts';

type Issue = z.core.$ZodIssue;

/** One option of a union, and what is wrong with the value by it. */
export interface Branch {
  readonly schema: z.core.$ZodType;
  readonly issues: readonly Issue[];
}

/**
 * The option of a union that a value fits best, so that only its issues are told: the right kind of value
 * before the wrong one, a word that is nearly known, then the fewest issues, then the first. Null where
 * no option comes nearer than another: then all that may stand there is told.
 */
export function bestBranch(
  issue: Extract<Issue, { code: 'invalid_union' }>,
  schemas: readonly z.core.$ZodType[],
  value: unknown,
): Branch | null {
  const options = schemas.map(unionOptions).find((some) => some.length === issue.errors.length) ?? [];
  const branches = issue.errors.flatMap((issues, index): Branch[] => {
    const schema = options[index];
    return schema ? [{ schema, issues }] : [];
  });
  const [best] = branches
    .map((branch) => ({
      branch,
      distance: distance(branch.issues, value),
      strange: strangeNames(branch),
    }))
    .sort(
      (a, b) =>
        a.distance - b.distance || a.branch.issues.length - b.branch.issues.length || a.strange - b.strange,
    );
  return best && best.distance < wrongKind ? best.branch : null;
}

/** How many names an option does not know by any other word either. */
function strangeNames({ schema, issues }: Branch): number {
  const keys = issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys : [],
  );
  const known = keys.length > 0 ? knownNames(schema, [], null) : [];
  return keys.filter((key) => nameMeant(key, known) === null && nearestName(key, known) === null).length;
}

function unionOptions(schema: z.core.$ZodType): readonly z.core.$ZodType[] {
  if (schema instanceof z.core.$ZodUnion) return schema._zod.def.options;
  const inner = unwrapped(schema);
  return inner ? unionOptions(inner) : [];
}

const wrongKind = 4;

/** How far a value is from an option, by what is wrong with the value itself and not within it. */
function distance(issues: readonly Issue[], value: unknown): number {
  return Math.max(0, ...issues.map((issue) => issueDistance(issue, value)));
}

function issueDistance(issue: Issue, value: unknown): number {
  if (issue.path.length > 0 || issue.code === 'unrecognized_keys') return 1;
  if (issue.code === 'invalid_type') return saidBySchema(issue) ? 3 : wrongKind;
  if (issue.code === 'invalid_value') {
    const near = typeof value === 'string' && nearestName(value, issue.values.map(String)) !== null;
    return near ? 0 : wrongKind;
  }
  return 2;
}
