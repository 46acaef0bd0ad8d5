import { jobSchema } from '../../model/content/job.ts';
import { hasFields, type WrittenValue } from '../../model/content/proposal.ts';
import { pointer } from '../../model/place.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { asksForProposals } from '../../propose/complete-job.ts';
import { shapeOpened } from '../../read/short-forms/shape-opened.ts';
import { insertions } from '../../read/yaml/insertions.ts';
import { type Edit, splice } from '../../read/yaml/splice.ts';
import { readYaml, type YamlDocument } from '../../read/yaml/yaml.ts';
import type { KeptKind, KeptValue } from './kept-values.ts';

/** What is written into a job file. */
export interface KeepEdits {
  readonly edits: readonly Edit[];
  readonly kept: readonly KeptValue[];
  /** Of the asked kinds, what can't stand in the file until the link or device that it is of is kept too. */
  readonly waiting: readonly KeptValue[];
  /** Kept although it was not asked for: a job that writes its links proposes nothing else of its wiring. */
  readonly alongside: readonly KeptValue[];
}

/** What is kept: whole kinds, and single values. */
export interface KeptWish {
  readonly kinds: readonly KeptKind[];
  readonly single: ReadonlySet<KeptValue>;
}

/**
 * The edits that write kept values of some kinds into a job file. What it says already stays; of ports alone, what names
 * several gives way to the one that was chosen.
 */
export function keepEdits(
  doc: YamlDocument,
  values: readonly KeptValue[],
  wish: readonly KeptKind[] | KeptWish,
  { items }: Pick<BuildPlan, 'items'>,
): KeepEdits {
  const { kinds, single } = 'kinds' in wish ? wish : { kinds: wish, single: new Set<KeptValue>() };
  const open = values.filter(({ kind, path }) => kind === 'ports' || !isWritten(doc, path));
  const asked = open.filter((one) => kinds.includes(one.kind) || single.has(one));
  const { kept, waiting } = withPlace(doc, asked);
  const edits = editsOf(doc, kept);
  const ofLinks = kinds.includes('links') || asked.some(({ kind }) => kind === 'links');
  if (!ofLinks || stillAsks(doc, edits)) return { edits, kept, waiting, alongside: [] };
  const wiring = open.filter(({ kind, path }) => kind === 'settings' && path[2] !== 'settings');
  // What no longer asks is numbered in the order of the file.
  const labels = open.filter(({ kind }) => kind === 'labels');
  const alongside = withPlace(doc, [...kept, ...wiring, ...labels, ...titlesOf(doc, items)]).kept.filter(
    (one) => !kept.includes(one),
  );
  return { edits: editsOf(doc, [...kept, ...alongside]), kept, waiting, alongside };
}

function isWritten(doc: YamlDocument, path: readonly string[]): boolean {
  return doc.span(pointer(path)) !== null;
}

/** Tells what has its device, link or board in the file from what would stand there alone. */
function withPlace(
  doc: YamlDocument,
  asked: readonly KeptValue[],
): { readonly kept: readonly KeptValue[]; readonly waiting: readonly KeptValue[] } {
  const whole = new Set(asked.flatMap(({ path }) => (path.length === 2 ? [pointer(path)] : [])));
  const has = ({ path }: KeptValue): boolean => {
    const owner = path.slice(0, 2);
    return path.length === 2 || whole.has(pointer(owner)) || isWritten(doc, owner);
  };
  return { kept: asked.filter(has), waiting: asked.filter((one) => !has(one)) };
}

function editsOf(doc: YamlDocument, kept: readonly KeptValue[]): readonly Edit[] {
  return insertions(doc, treeOf(kept), Object.keys(jobSchema.shape));
}

type Tree = { [key: string]: WrittenValue };

function treeOf(values: readonly KeptValue[]): Tree {
  const tree: Tree = {};
  for (const { path, value } of values) put(tree, path, value);
  return tree;
}

function put(tree: Tree, [key, ...rest]: readonly string[], value: WrittenValue): void {
  if (key === undefined) return;
  if (rest.length === 0) {
    tree[key] = value;
    return;
  }
  const below = tree[key];
  const own: Tree = hasFields(below) ? { ...below } : {};
  put(own, rest, value);
  tree[key] = own;
}

/** True where the file asks for what it leaves out once it is written so. */
function stillAsks(doc: YamlDocument, edits: readonly Edit[]): boolean {
  const text = splice(doc.source, edits);
  const after = typeof text === 'string' ? readYaml(doc.file, text).value : null;
  const written = after && shapeOpened(after, jobSchema).value;
  return !written || asksForProposals(written);
}

/** What devices are called that have no title: in a job that asks for its links, by their ids. */
function titlesOf(doc: YamlDocument, items: BuildPlan['items']): readonly KeptValue[] {
  return items.flatMap(({ id, title }): KeptValue[] => {
    const path = ['devices', id, 'title'];
    const isUntitled = isWritten(doc, ['devices', id]) && !isWritten(doc, path);
    return isUntitled ? [{ kind: 'links', path, value: title }] : [];
  });
}
