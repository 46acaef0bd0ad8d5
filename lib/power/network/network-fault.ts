import { type Fault, faultOf } from '../../model/fault.ts';

/** What makes a network impossible to compute: a fault of the elements in `of`, with the nodes that are to blame. */
export interface NetworkFault extends Fault<NetworkFaultName> {
  readonly nodes: readonly string[];
}

const remedies = {
  'network-duplicate-id': 'give each link and device a name of its own',
  'network-unknown-node': 'see that both ends of every link are wired through to a battery',
  'network-not-a-number': "correct the value in the part, or in the shop's rules",
  'network-negative-value': "correct the value in the part, or in the shop's rules",
  'network-joined-to-itself': 'lead the link to another terminal',
  'network-zero-resistance-loop': 'give the conductors of the loop their length, or take one of them out',
  'network-short-circuit': 'take out the link that joins the two poles of a source',
  'network-stiff-sources-in-parallel':
    "write the batteries' internal resistance in their parts, or keep them apart",
  'network-converter-impossible': "correct the charger's limit and efficiency in its part",
  'network-floating':
    'lead the ground of every device and the negative post of every battery to the body, and each feed to a source',
} as const;

/** The names of all that makes a network impossible to compute: ids of findings. */
export type NetworkFaultName = keyof typeof remedies;

/** Builds a fault of a network, with what mends it. */
export function networkFault(
  name: NetworkFaultName,
  {
    elements = [],
    nodes = [],
  }: { readonly elements?: readonly string[]; readonly nodes?: readonly string[] },
  message: string,
): NetworkFault {
  return { ...faultOf(name, elements, message, remedies[name]), nodes };
}
