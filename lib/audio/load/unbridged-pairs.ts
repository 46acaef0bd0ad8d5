import { type Fault, faultOf } from '../../model/fault.ts';
import type { CoilTerminals } from './channel-wiring.ts';
import { joinedNodes } from './joined-nodes.ts';

/** An output of an amplifier: its two terminals. */
export interface OutputTerminals {
  readonly channel: string;
  readonly positive: string;
  readonly negative: string;
}

export interface PairCircuit {
  readonly amplifier: string;
  /** Its channels that are used singly, and the pairs that are used bridged. */
  readonly outputs: readonly OutputTerminals[];
  /** The pairs that it bridges, by the terminals that a bridged load hangs between. */
  readonly bridges: readonly OutputTerminals[];
  readonly coils: readonly CoilTerminals[];
  readonly joins: readonly (readonly [string, string])[];
}

/** Coils between one terminal each of two channels that the amplifier does not bridge there. */
export interface UnbridgedPair {
  readonly channels: readonly [string, string];
  readonly terminals: readonly [string, string];
  readonly coils: readonly string[];
  readonly fault: Fault<'pair-not-bridged'>;
}

/**
 * Loads that hang between two channels as if these were bridged, where the amplifier bridges no such pair, or bridges it
 * between other terminals. Two outputs work against each other only where their amplifier turns one over; between any
 * other two a load sees their difference: nothing, or a short. Outputs that a conductor joins are another fault.
 */
export function unbridgedPairs(circuit: PairCircuit): readonly UnbridgedPair[] {
  const { outputs, bridges, coils, joins } = circuit;
  const nodeOf = joinedNodes(joins);
  const terminals = outputs.flatMap(({ channel, positive, negative }) =>
    [positive, negative].map((terminal) => ({ channel, terminal, node: nodeOf(terminal) })),
  );
  return loads(
    coils,
    nodeOf,
    terminals.map(({ node }) => node),
  ).flatMap((own): UnbridgedPair[] => {
    const nodes = new Set(own.flatMap(({ positive, negative }) => [nodeOf(positive), nodeOf(negative)]));
    const [a, b, more] = terminals.filter(({ node }) => nodes.has(node));
    if (!a || !b || more || a.channel === b.channel || a.node === b.node) return [];
    const isBridge = bridges.some(({ positive, negative }) =>
      [positive, negative].every((terminal) => [a.terminal, b.terminal].includes(terminal)),
    );
    if (isBridge) return [];
    const channels = [a.channel, b.channel] as const;
    return [
      {
        channels,
        terminals: [a.terminal, b.terminal],
        coils: own.map(({ coil }) => coil),
        fault: notBridged(circuit, channels, [a.terminal, b.terminal], own),
      },
    ];
  });
}

/** The coils that hang together: those that meet at a point that no output is joined to. */
function loads(
  coils: readonly CoilTerminals[],
  nodeOf: (terminal: string) => string,
  outputs: readonly string[],
): readonly (readonly CoilTerminals[])[] {
  const loadOf = joinedNodes(
    coils.flatMap(({ coil, positive, negative }) =>
      [nodeOf(positive), nodeOf(negative)]
        .filter((node) => !outputs.includes(node))
        .map((node) => [coil, node] as const),
    ),
  );
  const names = new Set(coils.map(({ coil }) => loadOf(coil)));
  return [...names].map((name) => coils.filter(({ coil }) => loadOf(coil) === name));
}

function notBridged(
  { amplifier, bridges }: PairCircuit,
  channels: readonly [string, string],
  terminals: readonly [string, string],
  coils: readonly CoilTerminals[],
): Fault<'pair-not-bridged'> {
  const speakers = [...new Set(coils.map(({ speaker }) => speaker))];
  const them = coils.length === 1 ? 'it' : 'them';
  const made = bridges.map(({ positive, negative }) => `${positive} and ${negative}`).join(', or ');
  return faultOf(
    'pair-not-bridged',
    [...channels, ...speakers, ...coils.map(({ coil }) => coil), ...terminals],
    `${coils.map(({ coil }) => coil).join(' and ')} ${coils.length === 1 ? 'hangs' : 'hang'} between ${terminals.join(' and ')}, and ${amplifier} ${made === '' ? 'bridges no channels' : `bridges ${made} alone`}`,
    made === ''
      ? `wire ${them} between the two terminals of one channel`
      : `wire ${them} between ${made}, or between the two terminals of one channel`,
  );
}
