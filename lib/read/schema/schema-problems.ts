import type { z } from 'zod';
import type { FileEdit } from '../../model/finding.ts';
import { pointer } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { nearestName } from '../names/nearest-name.ts';
import { inRow } from '../short-forms/in-row.ts';
import { scalarText } from '../yaml/write-value.ts';
import type { YamlDocument } from '../yaml/yaml.ts';
import { bestBranch } from './best-branch.ts';
import { expectation, fieldExampleText, onlyValue } from './expectation.ts';
import { issueWords } from './issue-words.ts';
import { type Keys, knownNames, schemasAt, valueAt } from './schema-walk.ts';
import { sentence, subject } from './subject.ts';

type Schema = z.core.$ZodType;
type Issue = z.core.$ZodIssue;

/** A part of the document against the schema that holds there: at first the whole, then a union's branch. */
interface Scope {
  readonly doc: YamlDocument;
  readonly schema: Schema;
  /** The keys that lead from the document to the part. */
  readonly base: Keys;
}

interface Found extends Problem {
  /** The path of a missing name, and of the one that a misspelt name was taken for: only one is told. */
  readonly missing?: string;
  readonly meant?: string;
}

/**
 * The problems of a document that does not fit its schema, in the order of the file: each with its place, in
 * the words of the trade, never in those of the schema library. Unknown names and values come with the known
 * ones and the nearest; missing names with an example. What the reader refused already is not told again.
 */
export function schemaProblems(
  doc: YamlDocument,
  error: { readonly issues: readonly Issue[] },
  schema: Schema,
): Problem[] {
  const found = error.issues.flatMap((issue) => issueProblems({ doc, schema, base: [] }, issue));
  const meant = new Set(found.flatMap((one) => one.meant ?? []));
  const told = new Map<string, Problem>();
  for (const { missing, meant: _, ...problem } of found) {
    if (missing !== undefined && meant.has(missing)) continue;
    const message = inRow(problem.message, doc.rowOf(problem.where.path));
    told.set(`${problem.where.line}:${problem.where.column} ${message}`, { ...problem, message });
  }
  return [...told.values()].sort((a, b) => a.where.line - b.where.line || a.where.column - b.where.column);
}

function issueProblems(scope: Scope, issue: Issue): readonly Found[] {
  const own = issue.path.filter((key) => typeof key !== 'symbol');
  const keys = [...scope.base, ...own];
  if (isUnread(scope.doc, keys)) return [];
  const value = valueAt(scope.doc.data, keys);
  if (issue.code === 'unrecognized_keys')
    return issue.keys.filter((key) => key !== '__proto__').map((key) => unknownName(scope, own, key));
  if (value === undefined && own.length > 0) return [missingName(scope, own)];
  if (issue.code === 'invalid_key') return [refusedName(scope, own, issue.issues[0])];
  if (issue.code === 'invalid_union' && value !== null) {
    const branch = bestBranch(issue, schemasAt(scope.schema, own, partOf(scope)), value);
    if (branch)
      return branch.issues.flatMap((one) =>
        issueProblems({ doc: scope.doc, schema: branch.schema, base: keys }, one),
      );
  }
  const schemas = schemasAt(scope.schema, own, partOf(scope));
  const words = issueWords(issue, { value, schemas });
  const edit = issue.code === 'custom' ? meantEdit(scope.doc, keys, value, issue.params?.meant) : null;
  return [
    {
      where: scope.doc.placeOf(pointer(keys)),
      message: sentence(subject(keys), words),
      ...(edit && { edit }),
    },
  ];
}

/** The text of a value exchanged for the one that was meant; null where it does not stand there as it was read. */
function meantEdit(doc: YamlDocument, keys: Keys, value: unknown, meant: unknown): FileEdit | null {
  const span = doc.span(pointer(keys));
  if (!span || typeof meant !== 'string' || typeof value !== 'string') return null;
  const there = doc.source.slice(span.start, span.end);
  const isThere = there === value || there === `"${value}"` || there === `'${value}'`;
  return isThere ? { file: doc.file, ...span, text: scalarText(meant) } : null;
}

function partOf(scope: Scope): unknown {
  return valueAt(scope.doc.data, scope.base);
}

function isUnread(doc: YamlDocument, keys: Keys): boolean {
  return keys.some((_, index) => doc.unread.has(pointer(keys.slice(0, index + 1)))) || doc.unread.has('');
}

function unknownName(scope: Scope, own: Keys, key: string): Found {
  const parent = [...scope.base, ...own];
  const path = pointer([...parent, key]);
  const known = knownNames(scope.schema, own, partOf(scope));
  const where = scope.doc.keyPlaceOf(path);
  if (known.includes(key))
    return { where, message: `${key} can't stand together with the other names of ${subject(parent)}` };
  const near = nearestName(key, known);
  const message = `${key} is not a known name in ${subject(parent)}`;
  return {
    where,
    message: near === null ? message : `${message}; did you mean ${near}?`,
    ...(known.length > 0 ? { expected: `known names: ${known.join(', ')}` } : {}),
    ...(near === null ? {} : { meant: pointer([...parent, near]) }),
  };
}

function missingName(scope: Scope, own: Keys): Found {
  const keys = [...scope.base, ...own];
  const parent = keys.slice(0, -1);
  const schemas = schemasAt(scope.schema, own, partOf(scope));
  const name = subject(keys);
  const lacks =
    typeof keys.at(-1) === 'number' ? `${name} is missing` : `${name} is missing in ${subject(parent)}`;
  return {
    where: scope.doc.keyPlaceOf(pointer(parent)),
    message: `${lacks}; ${howWritten(name, schemas)}`,
    missing: pointer(keys),
  };
}

/** How a missing name is written: as it must be where it can be but one thing, else by an example that is told as such. */
function howWritten(name: string, schemas: readonly Schema[]): string {
  const must = onlyValue(schemas);
  if (must !== null) return `write ${name}: ${must}`;
  const example = schemas.map(fieldExampleText).find((one) => one !== null);
  return example ? `write it, such as ${name}: ${example}` : `it needs ${expectation(schemas)}`;
}

function refusedName(scope: Scope, own: Keys, issue: Issue | undefined): Found {
  const keys = [...scope.base, ...own];
  const where = scope.doc.keyPlaceOf(pointer(keys));
  const name = subject(keys);
  const words = issue ? issueWords(issue, { value: name, schemas: [] }) : "can't stand here";
  return { where, message: sentence(`the name ${name}`, words) };
}
