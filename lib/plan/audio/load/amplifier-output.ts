import type { CoilTerminals } from '../../../audio/load/channel-wiring.ts';
import type { Coil } from '../../../audio/load/coil-wiring.ts';
import type { Device } from '../../../model/content/resolved-job.ts';
import type { PartOf } from '../../../model/kinds/index.ts';

/** An output of an amplifier as it is used: one channel, or two bridged. */
export interface Output {
  readonly id: string;
  readonly device: Device;
  readonly part: Amplifier;
  readonly name: string;
  readonly spec: Channel;
  readonly bridgedWith: string | null;
  /** Supply that its amplifier is sized at (V), and how many times the usual voltage of the vehicle its system has. */
  readonly sizingV: number;
  readonly systemShare: number;
}

/** What the coils of a job are, and which terminals the speaker links join. */
export interface CoilField {
  readonly coils: readonly Coil[];
  readonly terminals: readonly CoilTerminals[];
  readonly joins: readonly (readonly [string, string])[];
  /** Longest power that a speaker may take, by its id. */
  readonly speakerW: ReadonlyMap<string, number>;
}

export type Amplifier = PartOf<'amplifier'>;

export type Channel = Amplifier['bridges'][string];
