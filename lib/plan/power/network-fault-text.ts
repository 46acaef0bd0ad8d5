import type { NetworkFault } from '../../power/network/network-fault.ts';

/** So many names are told; of more, how many there are. */
const mostNames = 6;

/** What an element stands for: elements are called by it, with what they are of it behind a colon. */
export function standsFor(element: string): string {
  return element.replace(/:[\w-]+$/, '');
}

function namesOf(ids: readonly string[]): string {
  const names = [...new Set(ids)];
  const told = names.slice(0, mostNames);
  const more = names.length - told.length;
  if (more > 0) return `${told.join(', ')} and ${more} more`;
  const last = told.at(-1) ?? 'nothing';
  return told.length < 2 ? last : `${told.slice(0, -1).join(', ')} and ${last}`;
}

/** Why a network can't be computed, in the names of links, devices and terminals. */
export function faultText({ fault, of, nodes, message }: NetworkFault, referenceNode: string): string {
  const things = namesOf(of.map(standsFor));
  if (fault === 'network-floating') {
    // What lies between two terminals is no place that anyone can look for.
    const terminals = nodes.filter((node) => standsFor(node) === node);
    const have = new Set(terminals).size > 1 ? 'have' : 'has';
    return `${namesOf(terminals)} ${have} no way to ${referenceNode} but through a device that draws current`;
  }
  if (fault === 'network-zero-resistance-loop')
    return `${things} form a loop without resistance: how its current divides is not determined`;
  if (fault === 'network-stiff-sources-in-parallel')
    return `${things} are sources without resistance side by side: how they share the current is not determined`;
  return plainly(message);
}

/** A message of the solver with what its elements stand for in the place of their ids. */
export function plainly(message: string): string {
  return message.replace(/(?<=[\w+.-]):(?:load|emf|fuse|conductor|in|out|(?:from|to)-(?:crimp|bolt))\b/g, '');
}
