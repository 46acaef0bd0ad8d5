import type { Page } from 'playwright-core';
import { z } from 'zod';

const value = z.object({ value: z.unknown().optional() }).optional();
const tree = z.object({
  nodes: z.array(
    z.object({
      nodeId: z.string(),
      ignored: z.boolean(),
      role: value,
      name: value,
      childIds: z.array(z.string()).optional(),
    }),
  ),
});

/** One thing of a page as a screen reader is given it. */
export interface Spoken {
  readonly role: string;
  readonly name: string;
  readonly children: readonly Spoken[];
}

type RawNode = z.output<typeof tree>['nodes'][number];

/** The page that is open as the browser tells it to a screen reader: what is passed over is left out. */
export async function accessibleTree(page: Page): Promise<Spoken> {
  const session = await page.context().newCDPSession(page);
  const { nodes } = tree.parse(await session.send('Accessibility.getFullAXTree'));
  await session.detach();
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const spokenOf = (node: RawNode): readonly Spoken[] => {
    const children = (node.childIds ?? []).flatMap((id) => {
      const child = byId.get(id);
      return child === undefined ? [] : spokenOf(child);
    });
    const role = String(node.role?.value ?? '');
    if (node.ignored || role === 'generic' || role === 'none') return children;
    return [{ role, name: String(node.name?.value ?? ''), children }];
  };
  const [root] = nodes[0] === undefined ? [] : spokenOf(nodes[0]);
  if (root === undefined) throw new Error('The page has nothing to say.');
  return root;
}

/** Everything below a thing that has one of the roles, in the order in which it is read. */
export function allOf(below: Spoken, ...roles: readonly string[]): readonly Spoken[] {
  return below.children.flatMap((child) => [
    ...(roles.includes(child.role) ? [child] : []),
    ...allOf(child, ...roles),
  ]);
}

/** What is read of a thing: its texts, one after the other. */
export function textOf(spoken: Spoken): string {
  return allOf(spoken, 'StaticText')
    .map(({ name }) => name)
    .join(' ')
    .trim();
}
