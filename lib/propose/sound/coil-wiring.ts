import { channelLoad } from '../../audio/load/amplifier-load.ts';
import type { Coil, Wiring } from '../../audio/load/coil-wiring.ts';
import { wiringLoad } from '../../audio/load/loads.ts';
import { isFault } from '../../model/fault.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { DraftDevice } from '../draft/draft-device.ts';
import { type AmplifierOutput, modeOf } from './outputs.ts';

/** How several are joined, or that there is only one. */
export type Join = 'one' | 'series' | 'parallel';

/** How the coils of each speaker are joined, and the speakers of one output. */
export interface CoilJoin {
  readonly coils: Join;
  readonly speakers: Join;
}

/** Speakers on an output, wired one way, with what that gives. */
export interface WiredOutput {
  readonly output: AmplifierOutput;
  readonly speakers: readonly DraftDevice[];
  readonly join: CoilJoin;
  readonly loadOhm: number;
  /** Null where the amplifier may not drive it, or its coils get unlike powers. */
  readonly powerW: number | null;
  /** What the speakers take together (W). */
  readonly takenW: number;
}

/** The coils of a speaker in the order of its part, with their pairs of terminals; a passive crossover is one of its load. */
export function coilsOf({ spec }: DraftDevice) {
  if (spec.kind === 'crossover') {
    const [positive = ''] = terminalsOf(spec.terminals, 'coil-positive');
    const [negative = ''] = terminalsOf(spec.terminals, 'coil-negative');
    return [{ name: stemName(positive), positive, negative, nominal: spec.load }];
  }
  return spec.kind === 'speaker' ? Object.entries(spec.coils).map(([name, coil]) => ({ name, ...coil })) : [];
}

/** Ways to join the coils of speakers on one output: first those in which one that fails silences least. */
export function joinsFor(speakers: readonly DraftDevice[]): readonly CoilJoin[] {
  const most = Math.max(0, ...speakers.map((one) => coilsOf(one).length));
  const between = speakers.length > 1 ? 'parallel' : 'one';
  if (most < 2) return [{ coils: 'one', speakers: between }];
  return [
    { coils: 'series', speakers: between },
    { coils: 'parallel', speakers: between },
  ];
}

/** Ways to join coils with the speakers in series, one after the other: one that fails silences all. */
export function joinsInSeries(speakers: readonly DraftDevice[]): readonly CoilJoin[] {
  return joinsFor(speakers).map(({ coils }) => ({ coils, speakers: 'series' }));
}

/** Speakers on an output, with their load and power; null where a coil or a rating is not known. */
export function wiredOutput(
  output: AmplifierOutput,
  speakers: readonly DraftDevice[],
  join: CoilJoin,
): WiredOutput | null {
  const coils = speakers.flatMap((speaker) =>
    coilsOf(speaker).map(
      ({ name, nominal }): Coil => ({
        id: `${speaker.id}.${name}`,
        speaker: speaker.id,
        nominalOhm: nominal,
      }),
    ),
  );
  const each = speakers.flatMap((speaker) => {
    const own = coils.filter((coil) => coil.speaker === speaker.id).map(({ id }) => leaf(id));
    return own.length === 0 ? [] : [joined(join.coils === 'series' ? 'series' : 'parallel', own)];
  });
  if (each.length === 0) return null;
  const channel = `${output.amplifier}.${output.name}`;
  const load = wiringLoad(channel, joined(join.speakers === 'series' ? 'series' : 'parallel', each), coils);
  if (isFault(load)) return null;
  const { mayDrive, power } = channelLoad(channel, load, modeOf(output));
  const shares = load.shares.map(({ share }) => share);
  const isEven = Math.max(...shares) <= 1.01 * Math.min(...shares);
  const takenW = speakers.reduce(
    (sum, { spec }) => sum + (spec.kind === 'speaker' || spec.kind === 'crossover' ? spec.power : 0),
    0,
  );
  return {
    output,
    speakers,
    join,
    loadOhm: load.loadOhm.value,
    powerW: mayDrive && isEven && !('fault' in power) ? power.powerW.value : null,
    takenW,
  };
}

const leaf = (coil: string): Wiring => ({ kind: 'coil', coil });

function joined(kind: 'series' | 'parallel', members: readonly Wiring[]): Wiring {
  const [only, second] = members;
  return only && !second ? only : { kind, members };
}
