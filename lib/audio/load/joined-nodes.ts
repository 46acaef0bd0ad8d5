/** Names the point that each terminal lies at: terminals that conductors join have the same one. */
export function joinedNodes(joins: readonly (readonly [string, string])[]): (terminal: string) => string {
  const parents = new Map<string, string>();
  const root = (terminal: string): string => {
    let at = terminal;
    for (let parent = parents.get(at); parent !== undefined; parent = parents.get(at)) at = parent;
    return at;
  };
  for (const [a, b] of joins) {
    const [rootA, rootB] = [root(a), root(b)];
    if (rootA !== rootB) parents.set(rootA, rootB);
  }
  return root;
}
