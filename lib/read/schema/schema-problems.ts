import { z } from 'zod';
import { idPattern } from '../../model/fields.ts';
import type { FileEdit } from '../../model/finding.ts';
import { pointer } from '../../model/place.ts';
import { Private } from '../../model/private.ts';
import type { Problem } from '../../model/problem.ts';
import { idWords } from '../../model/writing/id-words.ts';
import { nameMeant } from '../../model/writing/other-words.ts';
import { nearestName } from '../names/nearest-name.ts';
import { inRow } from '../short-forms/in-row.ts';
import { scalarText } from '../yaml/write-value.ts';
import type { YamlDocument } from '../yaml/yaml.ts';
import { bestBranch } from './best-branch.ts';
import { expectation, fieldExampleText, onlyValue } from './expectation.ts';
import { issueWords } from './issue-words.ts';
import { lineMeant } from './line-meant.ts';
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
  const found = withoutEchoes(error.issues).flatMap((issue) =>
    issueProblems({ doc, schema, base: [] }, issue),
  );
  const meant = new Set(found.flatMap((one) => one.meant ?? []));
  const told = new Map<string, Problem>();
  for (const { missing, meant: _, ...problem } of found) {
    if (missing !== undefined && meant.has(missing)) continue;
    const message = inRow(problem.message, doc.rowOf(problem.where.path));
    told.set(`${problem.where.line}:${problem.where.column} ${message}`, { ...problem, message });
  }
  return [...told.values()].sort((a, b) => a.where.line - b.where.line || a.where.column - b.where.column);
}

/** What is of the wrong kind is told once: how long it may be, the library counts on it all the same. */
function withoutEchoes(issues: readonly Issue[]): readonly Issue[] {
  const wrong = new Set(
    issues.filter(({ code }) => code === 'invalid_type').map(({ path }) => JSON.stringify(path)),
  );
  return issues.filter(
    ({ code, path }) => !(code === 'too_big' || code === 'too_small') || !wrong.has(JSON.stringify(path)),
  );
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
      return withoutEchoes(branch.issues).flatMap((one) =>
        issueProblems({ doc: scope.doc, schema: branch.schema, base: keys }, one),
      );
  }
  const schemas = schemasAt(scope.schema, own, partOf(scope));
  const words = issueWords(issue, { value, schemas });
  const line = lineMeant(keys, value);
  const edit = issue.code === 'custom' ? meantEdit(scope.doc, keys, value, issue.params?.meant) : null;
  return [
    {
      where: scope.doc.placeOf(pointer(keys)),
      message: sentence(subject(keys), words),
      ...(value === null && commentRemedy(scope.doc, keys)),
      ...(keys.at(-1) === 'id' && idRemedy(issue, value)),
      ...(line !== null && { remedy: line }),
      ...(edit && { edit }),
    },
  ];
}

/** What is left empty, and has a comment behind it, may have been meant to begin with the mark of one. */
function commentRemedy(doc: YamlDocument, keys: Keys): Pick<Problem, 'remedy'> {
  const line = doc.source.split(/\r?\n/)[doc.placeOf(pointer(keys)).line - 1] ?? '';
  const isCut = /:\s+#\S/.test(line);
  return isCut
    ? { remedy: 'what stands behind # is a comment: put quotes round a text that begins with it' }
    : {};
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
  const apart = partedEntry(scope, own, key, known);
  if (apart) return { where, ...apart };
  const there = Object.keys(valueAt(scope.doc.data, parent) ?? {});
  const free = known.filter((one) => !there.includes(one));
  const other = nameMeant(key, free);
  const near = other ?? nearestName(key, known);
  const message = `${key} is not a known name in ${subject(parent)}`;
  const written =
    other === null ? null : asMeant(scope, [...own, other], valueAt(scope.doc.data, [...parent, key]));
  const line = lineMeant(parent, valueAt(scope.doc.data, parent));
  if (line !== null) return { where, message, remedy: line };
  const inside = near === null ? insideWords(scope, own, key) : null;
  if (inside !== null) return { where, message: `${message}; ${inside}` };
  return {
    where,
    message: near === null ? message : `${message}; did you mean ${near}?`,
    ...(known.length > 0 ? { expected: `known names: ${known.join(', ')}` } : {}),
    ...(written === null ? {} : { remedy: written }),
    ...(near === null ? {} : { meant: pointer([...parent, near]) }),
  };
}

/**
 * What is wrong with a name that is none: the end of a value that a comma cut off, `in: left, right` and `x: 1,5 in`, or a
 * name and its value with no space between. Null for another.
 */
function partedEntry(
  scope: Scope,
  own: Keys,
  key: string,
  known: readonly string[],
): Pick<Problem, 'message' | 'remedy'> | null {
  const parent = [...scope.base, ...own];
  const [, glued = '', rest] = /^([a-z-]+):(\S.*)$/.exec(key) ?? [];
  if (rest !== undefined && known.includes(glued))
    return { message: `${key} lacks a space after its colon`, remedy: `write ${glued}: ${rest}` };
  const [, bare] = /^([\w-]+)\s*[[{]/.exec(key) ?? [];
  if (bare !== undefined)
    return { message: `${bare} lacks its colon`, remedy: `write ${bare}: before the bracket` };
  if (valueAt(scope.doc.data, [...parent, key]) !== null) return null;
  const entries = Object.entries(valueAt(scope.doc.data, parent) ?? {});
  const [name, before] = entries[entries.findIndex(([one]) => one === key) - 1] ?? [];
  if (name === undefined) return null;
  if (/^\d/.test(key) && typeof before === 'number')
    return {
      message: `the comma in ${name}: ${before},${key} ends its value`,
      remedy: `write ${name}: ${before}.${key}`,
    };
  const list = [before, key];
  const takesList = schemasAt(scope.schema, [...own, name], partOf(scope)).some(
    (one) => z.safeParse(one, list).success,
  );
  return takesList
    ? {
        message: `the comma before ${key} ends the value of ${name}`,
        remedy: `write ${name}: [${list.join(', ')}]`,
      }
    : null;
}

/** The line to write for what was written under another name: with its own value where that fits, else by an example. */
function asMeant(scope: Scope, own: Keys, value: unknown): string | null {
  const schemas = schemasAt(scope.schema, own, partOf(scope));
  const name = subject(own);
  if (typeof value === 'string' && schemas.some((one) => mayBeTold(one, value)))
    return `write ${name}: ${scalarText(value)}`;
  const [issue] = schemas.flatMap((one) => z.safeParse(one, value).error?.issues.slice(0, 1) ?? []);
  if (value !== undefined && value !== null && issue && issue.path.length === 0)
    return sentence(name, issueWords(issue, { value, schemas }));
  const example = schemas.map(fieldExampleText).find((one) => one !== null);
  return example ? `write it so: ${name}: ${example}` : null;
}

/** True for a value that a field takes, and that is a measure or a name: a text may be private, and is not repeated. */
function mayBeTold(schema: Schema, value: string): boolean {
  const read = z.safeParse(schema, value);
  if (!read.success || read.data instanceof Private) return false;
  return typeof read.data !== 'string' || idPattern.test(read.data);
}

/** Where a name belongs that one section beside it alone has, with that section as a whole; null where none or several do. */
function insideWords(scope: Scope, own: Keys, key: string): string | null {
  const data = partOf(scope);
  const sections = knownNames(scope.schema, own, data).filter((one) =>
    knownNames(scope.schema, [...own, one], data).includes(key),
  );
  const [section, ...others] = sections;
  if (section === undefined || others.length > 0) return null;
  const example = schemasAt(scope.schema, [...own, section], data)
    .map(fieldExampleText)
    .find((one) => one !== null);
  return `${key}: stands inside ${section}:${example ? `, such as ${section}: ${example}` : ''}`;
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
  const line = lineMeant(keys, valueAt(scope.doc.data, keys));
  return {
    where,
    message: sentence(`the name ${name}`, words),
    ...(line === null ? issue && idRemedy(issue, name) : { remedy: line }),
  };
}

/** What is no id as it would be one. */
function idRemedy(issue: Issue, value: unknown): Pick<Problem, 'remedy'> {
  const isId = issue.code === 'invalid_format' && 'pattern' in issue && issue.pattern === String(idPattern);
  const words = isId && typeof value === 'string' ? idWords(value) : '';
  return idPattern.test(words) ? { remedy: `write ${words}` } : {};
}
