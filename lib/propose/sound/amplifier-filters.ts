import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { FilterPass, FilterType } from '../../model/vocabulary.ts';
import type { DraftDevice } from '../draft/draft-device.ts';

/** A filter that an amplifier makes by its own controls. */
export interface OwnFilter {
  readonly pass: FilterPass;
  readonly type: FilterType;
  readonly order: number;
  /** The corners that its knob reaches (Hz); both alike where it always cuts at one. */
  readonly fromHz: number;
  readonly toHz: number;
  /** True where it can't be put out of the way. */
  readonly always: boolean;
}

/** The filters that an amplifier makes for a channel, by its controls. */
export function ownFilters(amplifier: DraftDevice, channel: string): readonly OwnFilter[] {
  const controls = Object.values(amplifier.facts.controls).filter((one) => actsOn(amplifier, one, channel));
  const knob = controls.find(({ filter }) => filter?.range && filter.pass === undefined && !filter.passes);
  return controls.flatMap(({ filter }): OwnFilter[] => {
    if (!filter) return [];
    const { type, order, passes, pass, corner } = filter;
    if (type === undefined || order === undefined) return [];
    const range =
      filter.range ?? knob?.filter?.range ?? (corner === undefined ? null : { from: corner, to: corner });
    if (!range) return [];
    const reach = { type, order, fromHz: range.from, toHz: range.to };
    if (pass !== undefined) return [{ ...reach, pass, always: true }];
    return Object.values(passes ?? {}).map((one) => ({ ...reach, pass: one, always: false }));
  });
}

/** True where an amplifier makes a filter of this kind on all of some channels. */
export function makesFilter(amplifier: DraftDevice, channels: readonly string[], pass: FilterPass): boolean {
  return channels.every((channel) => ownFilters(amplifier, channel).some((one) => one.pass === pass));
}

/** True for a channel whose low-pass always cuts: it plays bass and nothing else. */
export function lowPassAlways(amplifier: DraftDevice, channel: string): boolean {
  return ownFilters(amplifier, channel).some(({ pass, always }) => pass === 'low-pass' && always);
}

function actsOn({ spec }: DraftDevice, { channels }: ControlSpec, channel: string): boolean {
  return channels ? channels.includes(channel) : spec.kind === 'amplifier' && channel in spec.channels;
}
