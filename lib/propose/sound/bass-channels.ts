import { figure, ohmsAtLeast } from '../../model/printed/told.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalAt } from '../draft/draft-device.ts';
import { routesBetween, whereIs } from '../draft/ways.ts';
import { joinsFor, joinsInSeries, type WiredOutput, wiredOutput } from './coil-wiring.ts';
import { bestWay, lawfulWays } from './driven-way.ts';
import { type AmplifierOutput, outputsOf } from './outputs.ts';
import type { DrivenGroup } from './signal-chain.ts';

/** What the choice for subwoofers rests on. */
interface BassChoice {
  readonly amplifier: DraftDevice;
  readonly group: DrivenGroup;
  /** Channels that nothing takes yet. */
  readonly free: readonly string[];
  /** Channels that other groups of this amplifier need. */
  readonly reserved: number;
  /** True for channels on which the band of the group can be made. */
  readonly canFilter: (channels: readonly string[]) => boolean;
}

/** A group of speakers on the outputs that drive it, with the reason. */
export interface DrivenOutputs {
  readonly group: DrivenGroup;
  readonly outputs: readonly WiredOutput[];
  readonly reason: string;
}

/**
 * The outputs for a group of subwoofers: all coils on one channel, on one bridge, or an output a speaker; of those that
 * the amplifier may drive with like power in all coils the most power that the speakers take; where all give more, the
 * least. Where that is too low a load, speakers in places that a route joins hang in series. Common practice, no source.
 * Asks where none does.
 */
export function bassOutputs(draft: Draft, choice: BassChoice): DrivenOutputs | null {
  const { group, amplifier } = choice;
  const usual = waysToDrive(choice);
  const isLawful = lawfulWays(usual).length > 0;
  const tried = isLawful ? usual : [...usual, ...waysInSeries(draft, choice)];
  const best = bestWay(amplifier, tried);
  if (best) return { group, ...best };
  askForLoad(draft, group, amplifier, tried.flat());
  return null;
}

function waysToDrive(choice: BassChoice): readonly WiredOutput[][] {
  const { amplifier, group } = choice;
  const usable = usableOutputs(choice);
  const leaves = (outputs: readonly AmplifierOutput[]) => leavesEnough(choice, outputs);
  const together = usable
    .filter((output) => leaves([output]) && holdsAll(amplifier, output, group.needy.length))
    .map((output) => [{ output, speakers: group.needy }]);
  const alone =
    group.needy.length < 2
      ? []
      : oneEach(usable, group.needy).filter((way) => leaves(way.map(({ output }) => output)));
  return [...together, ...alone].flatMap((way) =>
    joinsFor(way[0]?.speakers ?? []).map((join) =>
      way.flatMap(({ output, speakers }) => wiredOutput(output, speakers, join) ?? []),
    ),
  );
}

function usableOutputs({ amplifier, free, canFilter }: BassChoice): readonly AmplifierOutput[] {
  return outputsOf(amplifier).filter(
    ({ channels }) => channels.every((name) => free.includes(name)) && canFilter(channels),
  );
}

/** True where the groups beside keep the channels that they need. */
function leavesEnough({ free, reserved }: BassChoice, outputs: readonly AmplifierOutput[]): boolean {
  return free.length - outputs.flatMap(({ channels }) => channels).length >= reserved;
}

/** All speakers of the group in series on one output, where a route of the vehicle leads from each to the next. */
function waysInSeries(draft: Draft, choice: BassChoice): readonly WiredOutput[][] {
  const speakers = choice.group.needy;
  const next = speakers.slice(1);
  if (next.length === 0 || !next.every((one, at) => areJoined(draft, speakers[at] ?? one, one))) return [];
  const outputs = usableOutputs(choice).filter((output) => leavesEnough(choice, [output]));
  return outputs.flatMap((output) =>
    joinsInSeries(speakers).map((join) => [wiredOutput(output, speakers, join) ?? []].flat()),
  );
}

function areJoined(draft: Draft, one: DraftDevice, other: DraftDevice): boolean {
  const [from, to] = [one, other].map(({ id }) => whereIs(draft, { device: id, terminal: '' }));
  return !!from && !!to && routesBetween(draft, from, to).length > 0;
}

/** Speakers in parallel hang on the terminals of the amplifier, which must take a conductor of each. */
function holdsAll(amplifier: DraftDevice, { spec }: AmplifierOutput, speakers: number): boolean {
  return [spec.positive, spec.negative].every(
    (name) => (terminalAt(amplifier, name)?.conductors ?? 1) >= speakers,
  );
}

/** An output of one form for each speaker, in the order of the part. */
function oneEach(usable: readonly AmplifierOutput[], speakers: readonly DraftDevice[]) {
  return [false, true].flatMap((bridged) => {
    const own = usable.filter(({ channels }) => channels.length > 1 === bridged);
    if (own.length < speakers.length) return [];
    return [
      speakers.flatMap((speaker, at) => {
        const output = own[at];
        return output ? [{ output, speakers: [speaker] }] : [];
      }),
    ];
  });
}

function askForLoad(
  draft: Draft,
  { id, needy }: DrivenGroup,
  amplifier: DraftDevice,
  tried: readonly WiredOutput[],
): void {
  const ohm = tried.map(({ loadOhm }) => loadOhm).toSorted((one, other) => one - other);
  const loads = [...new Set(ohm.map(figure))];
  const least = Math.min(...tried.map(({ output }) => output.spec.minimum));
  const path = ['devices', id];
  if (loads.length === 0)
    draft.ask(
      path,
      `${amplifier.id} has no output left that can drive ${needy.map((one) => one.id).join(' and ')}`,
      'drive a group by another amplifier, or write channels: to put two speakers on one',
    );
  else
    draft.ask(
      path,
      `${id} can't be wired for ${amplifier.id}: with like power in all coils they give ${loads.join(' or ')} ohm, and ${ohmsAtLeast(least)} is its least`,
      'use an amplifier for that load, or speakers with other coils',
    );
}
