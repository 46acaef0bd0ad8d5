import type { FeedBranch, FeedNode } from './feed-tree.ts';

/** A tree as it is drawn on one sheet, and what of it goes on sheets of its own. */
interface Cut {
  readonly tree: FeedNode;
  readonly cutOff: FeedNode;
}

/**
 * Cuts a tree until each piece fits a sheet. It is cut where a block hangs on it rather than anywhere else, so
 * that a sheet shows whole blocks; both sheets name the other end of the conductor that was cut.
 */
export function cutToSheets(tree: FeedNode, fits: (tree: FeedNode) => boolean): FeedNode[] {
  if (fits(tree)) return [tree];
  const cuts = branchesOf(tree)
    .filter(({ parent, branch }) => parent.elsewhere === undefined && worthASheet(branch.to))
    .map(({ parent, branch }) => cutAt(tree, parent, branch));
  const [best] = cuts.filter((cut) => fits(cut.tree)).sort((a, b) => rank(a) - rank(b));
  // Where no single cut will do, the deepest block goes first and the rest is cut again.
  const chosen = best ?? cuts.at(-1);
  if (!chosen) return [tree];
  return [...cutToSheets(chosen.tree, fits), ...cutToSheets(chosen.cutOff, fits)];
}

/** A single device is not worth a sheet of its own, unless nothing else is left to cut. */
function worthASheet(node: FeedNode): boolean {
  return node.branches.length > 0;
}

/** Blocks first; of those, the piece that leaves most on the first sheet. */
function rank({ tree, cutOff }: Cut): number {
  const [inner] = cutOff.branches;
  const isBlock = inner?.to.item.kind === 'distribution' || (inner?.to.branches.length ?? 0) > 1;
  return (isBlock ? 0 : 1000) - sizeOf(tree);
}

function sizeOf(node: FeedNode): number {
  return 1 + node.branches.reduce((sum, { to }) => sum + sizeOf(to), 0);
}

function branchesOf(node: FeedNode): { parent: FeedNode; branch: FeedBranch }[] {
  return node.branches.flatMap((branch) => [{ parent: node, branch }, ...branchesOf(branch.to)]);
}

function cutAt(tree: FeedNode, parent: FeedNode, branch: FeedBranch): Cut {
  const { item } = branch.to;
  const stub: FeedBranch = { ...branch, to: { item, branches: [], grounds: [], elsewhere: 'to' } };
  const origin: FeedNode = { item: parent.item, branches: [branch], grounds: [], elsewhere: 'from' };
  return { tree: replaced(tree, branch, stub), cutOff: origin };
}

function replaced(node: FeedNode, branch: FeedBranch, by: FeedBranch): FeedNode {
  const branches = node.branches.map((own) =>
    own === branch ? by : { ...own, to: replaced(own.to, branch, by) },
  );
  return { ...node, branches };
}
