import { type Fault, faultOf } from '../../model/fault.ts';
import type { Polarity } from '../../model/vocabulary.ts';
import type { Wiring } from './coil-wiring.ts';
import { joinedNodes } from './joined-nodes.ts';
import { reduceToOne, type Strand } from './reduce-strands.ts';

/** A coil between two terminals, as the job links them. */
export interface CoilTerminals {
  readonly coil: string;
  readonly speaker: string;
  readonly positive: string;
  readonly negative: string;
}

/**
 * The speaker side of one channel as it is linked: terminals by name, `joins` the conductors between them.
 */
export interface ChannelCircuit {
  readonly channel: string;
  /** The output terminals; bridged, the positive of the one and the negative of the other. */
  readonly positive: string;
  readonly negative: string;
  /** Output terminals of every other channel: none of them may touch this circuit. */
  readonly otherOutputs: readonly string[];
  /** All coils of the job; those that the channel doesn't reach are left aside. */
  readonly coils: readonly CoilTerminals[];
  readonly joins: readonly (readonly [string, string])[];
}

/** How the coils of a channel are joined, and which way round each one is. */
export interface ChannelWiring {
  readonly wiring: Wiring;
  readonly polarity: readonly { readonly coil: string; readonly polarity: Polarity }[];
}

export type ChannelWiringFault = Fault<
  | 'channel-without-speaker'
  | 'channel-shorted'
  | 'channels-joined'
  | 'coil-shorted'
  | 'coil-left-open'
  | 'wiring-not-series-parallel'
>;

/**
 * Reads the wiring of a channel out of its links, by joining coils in parallel (between the same two points)
 * and in series (through a point that nothing else touches) until one is left. A coil is `reversed` where
 * current from the positive output enters at its negative terminal. What is no series-parallel wiring, or no
 * closed one, is a fault.
 */
export function channelWiring(circuit: ChannelCircuit): ChannelWiring | ChannelWiringFault {
  const nodeOf = joinedNodes(circuit.joins);
  const [plus, minus] = [nodeOf(circuit.positive), nodeOf(circuit.negative)];
  const strands = reached(circuit, nodeOf, plus, minus);
  const fault = circuitFault(circuit, nodeOf, strands, plus, minus);
  if (fault) return fault;
  const result = reduceToOne(strands, plus, minus);
  if (result.kind === 'whole')
    return {
      wiring: result.strand.wiring,
      polarity: result.strand.coils.map(({ coil, reversed }) => ({
        coil,
        polarity: reversed ? 'reversed' : 'normal',
      })),
    };
  if (result.kind === 'open') return leftOpen(circuit.channel, result.coils);
  if (result.kind === 'shorted') return shorted(circuit.channel, result.coils);
  return faultOf(
    'wiring-not-series-parallel',
    [circuit.channel, ...result.coils],
    `${result.coils.join(', ')} on channel ${circuit.channel} are joined neither in series nor in parallel`,
    'take out the conductor that joins the middles of two branches',
  );
}

/** The coils that the channel's outputs reach over coils and conductors. */
function reached(
  circuit: ChannelCircuit,
  nodeOf: (terminal: string) => string,
  plus: string,
  minus: string,
): readonly Strand[] {
  const all = circuit.coils.map(
    ({ coil, positive, negative }): Strand => ({
      from: nodeOf(positive),
      to: nodeOf(negative),
      wiring: { kind: 'coil', coil },
      coils: [{ coil, reversed: false }],
    }),
  );
  const nodes = new Set([plus, minus]);
  for (let before = 0; before !== nodes.size; ) {
    before = nodes.size;
    for (const { from, to } of all) if (nodes.has(from) || nodes.has(to)) nodes.add(from).add(to);
  }
  return all.filter(({ from }) => nodes.has(from));
}

function circuitFault(
  { channel, otherOutputs }: ChannelCircuit,
  nodeOf: (terminal: string) => string,
  strands: readonly Strand[],
  plus: string,
  minus: string,
): ChannelWiringFault | null {
  if (plus === minus)
    return faultOf(
      'channel-shorted',
      [channel],
      `the positive and the negative output of channel ${channel} are joined by a conductor`,
      'take out the link that joins them',
    );
  const nodes = new Set([plus, minus, ...strands.flatMap(({ from, to }) => [from, to])]);
  const others = otherOutputs.filter((terminal) => nodes.has(nodeOf(terminal)));
  if (others.length > 0)
    return faultOf(
      'channels-joined',
      [channel, ...others],
      `the speakers of channel ${channel} are also joined to ${others.join(', ')}`,
      'give each channel its own speakers, or bridge the channels where the amplifier allows it',
    );
  if (strands.length === 0)
    return faultOf(
      'channel-without-speaker',
      [channel],
      `channel ${channel} has no speaker`,
      'link a speaker to it, or leave it open with a reason',
    );
  const short = strands.filter(({ from, to }) => from === to).flatMap(({ coils }) => coils);
  return short.length > 0
    ? shorted(
        channel,
        short.map(({ coil }) => coil),
      )
    : null;
}

function shorted(channel: string, coils: readonly string[]): ChannelWiringFault {
  return faultOf(
    'coil-shorted',
    [channel, ...coils],
    `both ends of ${coils.join(', ')} on channel ${channel} are joined to one point, so that no power reaches it`,
    'take out the link that joins them',
  );
}

function leftOpen(channel: string, coils: readonly string[]): ChannelWiringFault {
  return faultOf(
    'coil-left-open',
    [channel, ...coils],
    `${coils.join(', ')} on channel ${channel} leads nowhere: one end has no way back to the other output`,
    'link the open end, or take the coil off the channel',
  );
}

type UnusedFault = Fault<'speaker-without-channel' | 'coil-left-open'>;

/**
 * A fault for each speaker none of whose coils is on a channel, and for each coil left off where another one
 * is.
 */
export function coilsWithoutChannel(
  coils: readonly CoilTerminals[],
  onChannels: ReadonlySet<string>,
): readonly UnusedFault[] {
  const speakers = [...new Set(coils.map(({ speaker }) => speaker))];
  return speakers.flatMap((speaker) => {
    const own = coils.filter((coil) => coil.speaker === speaker).map(({ coil }) => coil);
    const off = own.filter((coil) => !onChannels.has(coil));
    return off.length === 0 ? [] : [unusedFault(speaker, off, off.length === own.length)];
  });
}

function unusedFault(speaker: string, off: readonly string[], whole: boolean): UnusedFault {
  if (whole)
    return faultOf(
      'speaker-without-channel',
      [speaker],
      `speaker ${speaker} is on no channel`,
      'link it to an amplifier, or leave its terminals open with a reason',
    );
  return faultOf(
    'coil-left-open',
    [speaker, ...off],
    `speaker ${speaker} leaves ${off.join(', ')} open while another coil of it is driven`,
    'wire every coil of the speaker, or close its coils as the maker of the speaker says',
  );
}
