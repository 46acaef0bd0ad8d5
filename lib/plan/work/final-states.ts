import { actsOn } from '../../audio/filter/filter-offers.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { PlanAudio, PlanChannel, PlanControl } from '../../model/plan/index.ts';
import { writeQuantity } from '../../model/quantity/quantity.ts';
import { finalFilters } from '../audio/final-filters.ts';
import { boostsOf } from '../audio/path/path-peaks.ts';
import { channelNames } from '../audio/signal-path.ts';
import type { TurnOnState } from './turn-on-state.ts';

type Final = PlanControl['final'];
type Told = Pick<Final, 'state' | 'why'>;
/** What the states follow from: what is heard, and how far up a source stood where its clean voltage was read. */
interface Heard extends Pick<PlanAudio, 'channels' | 'inputs'> {
  readonly cleanAt?: string | null;
}

type Stage = Exclude<Final['during'], 'presets'>;

/**
 * When a control that changes is set: filters first, for a tone must lie inside the band that they leave, and the
 * reading is reckoned through them.
 */
const stages: Readonly<Record<ControlSpec['what'], Stage>> = {
  'crossover-mode': 'filters',
  crossover: 'filters',
  subsonic: 'filters',
  'input-mode': 'filters',
  'turn-on-mode': 'filters',
  'ground-mode': 'filters',
  other: 'filters',
  gain: 'gains',
  level: 'delays',
  boost: 'filters',
  phase: 'delays',
};

/** What does not stay as it was preset, and what no part data tell of, nobody can set. */
const untold: readonly ControlSpec['what'][] = ['gain', 'crossover-mode', 'crossover', 'subsonic'];

/**
 * How every control of a device stands when the job is handed over: a filter control by the filters of the job, a gain
 * by the reading of its channels, a switch for the turn-on as the links ask, another as its part says; what nothing
 * changes stays as it was preset.
 */
export function finalStates(
  device: Device,
  presets: Readonly<Record<string, string>>,
  audio: Heard,
  byJob: ReadonlyMap<string, TurnOnState> = new Map(),
): Map<string, Final> {
  const filters = new Map(finalFilters(device).flatMap(({ states }) => [...states]));
  return new Map(
    Object.entries(device.facts.controls).map(([name, spec]) => {
      const asked = byJob.get(name);
      const preset = presets[name] ?? asked?.state ?? spec.safe;
      const own = device.given?.['after-commissioning'][name];
      const { state, why }: Told =
        own !== undefined
          ? { state: own, why: 'as the job says' }
          : (filters.get(name) ??
            gainState(device, spec, audio) ??
            levelState(device, name, spec, audio) ??
            (asked ? { state: asked.state, why: 'stays' } : partState(spec, preset)));
      const during = state === preset ? 'presets' : stageOf(device, name, spec, audio);
      return [name, { state, why, chosen: own === undefined ? 'computed' : 'given', during }];
    }),
  );
}

/** A boost stands in the path while the gain is set, unless the reading is reckoned with it flat: then it comes after. */
function stageOf(device: Device, name: string, spec: ControlSpec, { channels }: Heard): Stage {
  if (spec.what !== 'boost') return stages[spec.what];
  const isKnown = boostsOf(device).some(({ control, peaks }) => control === name && peaks !== null);
  const isFlat = channels.some(
    (channel) =>
      channel.gain?.state === 'equalising-flat' && isOneOf(device.id, actsOn(device, spec), channel),
  );
  return isKnown && !isFlat ? stages.boost : 'delays';
}

/** True for a channel of the amplifier that has one of the names, alone or bridged. */
function isOneOf(amplifier: string, names: readonly string[], { id }: PlanChannel): boolean {
  return id.startsWith(`${amplifier}.`) && channelNames({ id, amplifier }).some((one) => names.includes(one));
}

/** What the part says, or as it was preset. */
function partState({ final, what }: ControlSpec, preset: string): Told {
  if (final !== undefined) return { state: final, why: 'as its part says' };
  if (untold.includes(what)) return { state: null, why: '' };
  return { state: preset, why: 'stays' };
}

/** The level of an output is what the speakers behind it are to play at; what nothing asks of it stays. */
function levelState({ id }: Device, name: string, { what }: ControlSpec, { channels }: Heard): Told | null {
  if (what !== 'level') return null;
  const own = channels.filter(({ level }) => level?.by.includes(`${id}.${name}`));
  const [level] = own.flatMap((channel) => channel.level ?? []);
  if (!level) return null;
  return {
    state: writeQuantity(level.db, 'level'),
    why: `quieter: ${own.flatMap((one) => one.speakers).join(', ')}`,
  };
}

/** A gain is set by a reading: of its channels for an amplifier, of its inputs for what stands before one. */
function gainState(device: Device, spec: ControlSpec, audio: Heard): Told | null {
  if (spec.what !== 'gain' || spec.final !== undefined) return null;
  if (device.spec?.kind === 'source-unit') return volumeState(audio.cleanAt ?? null);
  return device.spec?.kind === 'amplifier'
    ? byChannels(device, actsOn(device, spec), audio.channels)
    : byInputs(device, audio.inputs);
}

function byChannels({ id }: Device, names: readonly string[], channels: readonly PlanChannel[]): Told | null {
  const own = channels.filter((channel) => channel.loadOhm !== null && isOneOf(id, names, channel));
  if (own.length === 0) return { state: 'stays fully down', why: 'nothing is wired to its channels' };
  const targets = own.flatMap(({ id: channel, gainVoltageV, toneHz }) =>
    gainVoltageV === null ? [] : [{ channel: channel.slice(id.length + 1), gainVoltageV, toneHz }],
  );
  const [first] = targets;
  if (!first) return { state: null, why: 'no voltage is known for its channels' };
  const alike = targets.every(
    (one) => one.gainVoltageV === first.gainVoltageV && one.toneHz === first.toneHz,
  );
  const text = (list: readonly string[], { gainVoltageV, toneHz }: typeof first) =>
    `${gainVoltageV} V at ${list.join(' and ')}, ${writeQuantity(toneHz, 'frequency')}`;
  return alike
    ? {
        state: text(
          targets.map(({ channel }) => channel),
          first,
        ),
        why: 'by the meter',
      }
    : {
        state: targets.map((one) => text([one.channel], one)).join('; '),
        why: 'by the meter: stop at the first reached',
      };
}

/** The volume of a source: gains are set with it where its voltage was read, and it plays no higher. */
function volumeState(at: string | null): Told {
  return at === null
    ? { state: 'as far up as its outputs stay clean', why: 'mark it: gains are set there' }
    : { state: `at most ${at}`, why: 'gains are set there' };
}

/** What stands before the amplifiers takes the greatest clean voltage that arrives, and no more. */
function byInputs({ id }: Device, inputs: PlanAudio['inputs']): Told | null {
  const arriving = inputs
    .filter(({ input }) => input.startsWith(`${id}.`))
    .flatMap(({ sourceV }) => sourceV ?? []);
  if (arriving.length === 0)
    return { state: "just below clipping at the source's clean level", why: 'set by the meter' };
  return {
    state: `just below clipping with ${Math.max(...arriving)} V at its inputs`,
    why: 'the most that arrives clean',
  };
}
