import { actsOn, writtenNames } from '../../audio/filter/filter-offers.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { PlanFilter } from '../../model/plan/index.ts';
import { parseQuantity, writeQuantity } from '../../model/quantity/quantity.ts';
import type { FilterPass } from '../../model/vocabulary.ts';
import { isSameState } from './path/control-state.ts';

/** How a filter control stands after commissioning. */
export interface FilterState {
  /** Null where nothing tells. */
  readonly state: string | null;
  readonly why: string;
}

/** One filter that a device has for some of its channels or outputs: a switch, a knob for the corner, or both. */
export interface BuiltInFilter {
  /** Channels of an amplifier; outputs of another device. */
  readonly channels: readonly string[];
  /** What it lets through after commissioning; null where it stands at a position that lets everything through. */
  readonly pass: FilterPass | null;
  readonly cornerHz: number | null;
  /** True where the job asks for it under `filters:`. */
  readonly asked: boolean;
  readonly shape: Pick<PlanFilter, 'type' | 'order'> | null;
  readonly states: ReadonlyMap<string, FilterState>;
}

/** The state of a knob that stands at its OFF, as it is printed there. */
const offState = 'OFF';

type Named = readonly [name: string, spec: ControlSpec];

/**
 * The filters of a device as its controls stand after commissioning. The job's own state goes first; then a filter
 * that the job asks of the channel; what it asks nothing of stands out of the way: a switch where it lets everything
 * through, a knob at the stop that takes least. A filter before the amplifier is then the only one at its corner.
 */
export function finalFilters(device: Device): readonly BuiltInFilter[] {
  const controls = Object.entries(device.facts.controls).filter(([, { filter }]) => filter);
  const switches = controls.filter(([, { filter }]) => filter?.passes);
  const knobs = controls.filter(([, { filter }]) => !filter?.passes);
  const shared = (a: ControlSpec, b: ControlSpec) =>
    actsOn(device, a).some((one) => actsOn(device, b).includes(one));
  return [
    ...switches.map((own) => {
      const knob = knobs.find(([, spec]) => !spec.filter?.pass && shared(spec, own[1]));
      return switched(device, own, knob ?? null);
    }),
    ...knobs.filter(([, { filter }]) => filter?.pass).map((knob) => turned(device, knob)),
  ];
}

/** The filters that the job asks of some channels of an amplifier, or of some outputs of another device. */
export function askedOf(device: Device, channels: readonly string[]): readonly PlanFilter[] {
  const places = channels.flatMap((name) => writtenNames(device, name));
  return [...new Set(places)].flatMap((where) =>
    (device.given?.filters[where] ?? []).map(({ corner, ...filter }) => ({
      ...filter,
      where,
      cornerHz: corner,
    })),
  );
}

/** The job's own words for the state of a control after commissioning. */
function ownState({ given }: Device, name: string): FilterState | null {
  const state = given?.['after-commissioning'][name];
  return state === undefined ? null : { state, why: 'as the job says' };
}

function switched(device: Device, [name, spec]: Named, knob: Named | null): BuiltInFilter {
  const { passes = {}, corner, type, order } = spec.filter ?? {};
  const channels = actsOn(device, spec);
  const asked = askedOf(device, channels).find(({ pass }) => Object.values(passes).includes(pass));
  const own = ownState(device, name);
  const state: FilterState =
    own ??
    (asked
      ? { state: positionOf(passes, asked.pass), why: 'as filtered' }
      : { state: flatOf(spec), why: 'all passes' });
  const pass = passes[state.state ?? ''] ?? null;
  const states = new Map([[name, state]]);
  const knobState = knob && knobBeside(device, knob, pass === null ? null : asked, name);
  if (knob && knobState) states.set(knob[0], knobState);
  const cornerHz = knobState ? hertzOf(knobState.state) : (asked?.cornerHz ?? corner ?? null);
  return {
    channels,
    pass,
    cornerHz: pass === null ? null : cornerHz,
    asked: pass !== null && asked?.pass === pass,
    shape: type && order ? { type, order } : null,
    states,
  };
}

function positionOf(passes: Readonly<Record<string, FilterPass>>, pass: FilterPass): string | null {
  return Object.keys(passes).find((position) => passes[position] === pass) ?? null;
}

/** The position that lets everything through; null for a switch that has none. */
function flatOf({ positions = [], filter }: ControlSpec): string | null {
  return positions.find((position) => filter?.passes?.[position] === undefined) ?? null;
}

/** A knob that only moves the corner of a switch. */
function knobBeside(
  device: Device,
  [name, spec]: Named,
  asked: PlanFilter | null | undefined,
  mode: string,
): FilterState {
  const own = ownState(device, name);
  if (own) return own;
  if (asked) return { state: hertzText(asked.cornerHz), why: 'as filtered' };
  const state = device.given?.settings[name] ?? spec.safe;
  return { state, why: `idle unless ${mode} cuts` };
}

/** A knob with a filter of its own, which is in the path unless its turn ends in OFF and it stands there. */
function turned(device: Device, [name, spec]: Named): BuiltInFilter {
  const { pass = null, type, order, off } = spec.filter ?? {};
  const channels = actsOn(device, spec);
  const asked = askedOf(device, channels).find((filter) => filter.pass === pass);
  const state: FilterState =
    ownState(device, name) ??
    (asked ? { state: hertzText(asked.cornerHz), why: 'as filtered' } : outOfTheWay(spec));
  const isOff = off !== undefined && state.state !== null && isSameState(state.state, offState);
  return {
    channels,
    pass: isOff ? null : pass,
    cornerHz: hertzOf(state.state),
    asked: asked !== undefined && !isOff,
    shape: type && order ? { type, order } : null,
    states: new Map([[name, state]]),
  };
}

/** How a knob stands of which no filter is asked: at its OFF, else at the stop that takes least. */
function outOfTheWay({ filter, final }: ControlSpec): FilterState {
  if (filter?.off !== undefined) return { state: offState, why: 'all passes' };
  const outHz = filter?.pass === 'low-pass' ? filter.range?.to : filter?.range?.from;
  return outHz === undefined
    ? { state: final ?? null, why: 'no filter is asked of it' }
    : { state: hertzText(outHz), why: 'out of the way' };
}

function hertzText(cornerHz: number): string {
  return writeQuantity(cornerHz, 'frequency');
}

function hertzOf(text: string | null): number | null {
  const read = text === null ? null : parseQuantity(text, 'frequency');
  return typeof read === 'number' ? read : null;
}

/**
 * The filters that a device leaves in the path of a channel or an output after commissioning, beside those that the job
 * asks of it: of a knob without an off position, of a switch that the job leaves on.
 */
export function filtersLeftIn(device: Device, channel: string, where: string): PlanFilter[] {
  const names = channel.split('+');
  return finalFilters(device).flatMap(({ channels, pass, cornerHz, asked, shape }): PlanFilter[] =>
    !asked && pass !== null && cornerHz !== null && shape && channels.some((one) => names.includes(one))
      ? [{ where, pass, ...shape, cornerHz }]
      : [],
  );
}
