import type { ControlSpec } from '../../model/kinds/fields/control-spec.ts';
import type { Part, PartFacts } from '../../model/kinds/index.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import {
  type FilterPass,
  type FilterType,
  filterPassSchema,
  filterTypeSchema,
} from '../../model/vocabulary.ts';

/** What is asked for its filters: the part of a device and its terminals and controls. */
export interface FilterMaker {
  readonly spec: Part | null;
  readonly facts: Pick<PartFacts, 'terminals' | 'controls'>;
}

/** A filter that a device can make at one of its outputs, as its part says. */
export interface FilterOffer {
  readonly pass: FilterPass;
  readonly types: readonly FilterType[];
  readonly orders: readonly number[];
  /** The corners that it reaches (Hz); both alike where it always cuts at one. */
  readonly fromHz: number;
  readonly toHz: number;
  /** True where it can't be put out of the way. */
  readonly always: boolean;
  /** True where it is set in a menu, each of them by itself; knobs and switches of an output share their positions. */
  readonly inMenu: boolean;
}

/** What filters are told by: the channels of an amplifier; the outputs of another device, a pair by its own name. */
export function filteredNames({ spec, facts }: FilterMaker): readonly string[] {
  if (spec?.kind === 'amplifier') return Object.keys(spec.channels);
  const outputs = terminalsOf(facts.terminals, 'signal-out', 'speaker-out-positive', 'speaker-out-negative');
  return [...new Set(outputs.map(stemName))];
}

/** The channels of an amplifier, or the outputs of another device, that a control acts on. */
export function actsOn(device: FilterMaker, { channels }: ControlSpec): readonly string[] {
  if (!channels) return filteredNames(device);
  return device.spec?.kind === 'amplifier' ? channels : channels.map(stemName);
}

/** The terminals and pairs at which a filter for a channel or an output may be written. */
export function writtenNames({ spec }: FilterMaker, name: string): readonly string[] {
  const channel = spec?.kind === 'amplifier' ? spec.channels[name] : undefined;
  const { positive, negative } = channel ?? { positive: `${name}+`, negative: `${name}-` };
  return [...new Set([positive, negative, stemName(positive), ...(channel ? [] : [name])])];
}

/**
 * The filters that a device can make on a channel or at an output: those of its menu, and those of its switches and
 * knobs. What neither tells of it does not make.
 */
export function filterOffers(device: FilterMaker, name: string): readonly FilterOffer[] {
  return [...menuOffers(device, name), ...controlOffers(device, name)];
}

type MenuMaker = Extract<Part, { 'filter-orders'?: unknown }>;

/** The menu of a part that makes filters in one; null for one that does not. */
export function filterMenu(spec: Part | null): MenuMaker | null {
  if (!spec || !('filter-orders' in spec || 'filters-at' in spec)) return null;
  return spec['filter-orders']?.length || spec['filters-at'] ? spec : null;
}

function menuOffers(device: FilterMaker, name: string): readonly FilterOffer[] {
  const menu = filterMenu(device.spec);
  if (!menu || !filteredNames(device).includes(name)) return [];
  const written = writtenNames(device, name);
  const own = written.flatMap((one) => menu['filters-at']?.[one] ?? [])[0];
  const outputs = menu['filter-outputs'];
  if (!own && outputs && !written.some((one) => outputs.includes(one))) return [];
  const orders = own?.orders ?? menu['filter-orders'] ?? [];
  if (orders.length === 0) return [];
  const range = own?.range ?? menu['filter-range'] ?? { from: 0, to: Number.POSITIVE_INFINITY };
  return filterPassSchema.options.map((pass) => ({
    pass,
    types: own?.types ?? menu['filter-types'] ?? filterTypeSchema.options,
    orders,
    fromHz: range.from,
    toHz: range.to,
    always: false,
    inMenu: true,
  }));
}

function controlOffers(device: FilterMaker, name: string): readonly FilterOffer[] {
  const controls = Object.values(device.facts.controls).filter((one) => actsOn(device, one).includes(name));
  const knob = controls.find(({ filter }) => filter?.range && filter.pass === undefined && !filter.passes);
  return controls.flatMap(({ filter }): FilterOffer[] => {
    if (!filter) return [];
    const { type, order, passes, pass, corner, off } = filter;
    if (type === undefined || order === undefined) return [];
    const range =
      filter.range ?? knob?.filter?.range ?? (corner === undefined ? null : { from: corner, to: corner });
    if (!range) return [];
    const offer = { types: [type], orders: [order], fromHz: range.from, toHz: range.to, inMenu: false };
    if (pass !== undefined) return [{ ...offer, pass, always: off === undefined }];
    return Object.values(passes ?? {}).map((one) => ({ ...offer, pass: one, always: false }));
  });
}

/** What to write at the controls whose filter of a kind is told in part alone, and so counts for none. */
function lackingOf({ facts }: FilterMaker, pass: FilterPass): readonly string[] {
  return Object.entries(facts.controls).flatMap(([name, { filter }]) => {
    const passes = [filter?.pass, ...Object.values(filter?.passes ?? {})];
    if (!filter || !passes.includes(pass)) return [];
    const lacks = [
      ...(filter.type === undefined ? [`type: ${filterTypeSchema.options.join(' or ')}`] : []),
      ...(filter.order === undefined ? ['order:'] : []),
    ];
    return lacks.length > 0 ? [`${lacks.join(' and ')} under filter: of ${name}`] : [];
  });
}

/** What to write into parts whose filters of a kind are told in part alone; null where none is. */
export function partlyToldText(
  makers: readonly (FilterMaker & { readonly partId: string })[],
  pass: FilterPass,
): string | null {
  const lacking = new Set(
    makers.flatMap((maker) => lackingOf(maker, pass).map((told) => `${told} in ${maker.partId}`)),
  );
  return lacking.size > 0
    ? `a filter that is told in part counts for none: write ${[...lacking].join(' and ')}`
    : null;
}

/** True where a device can make a filter of this kind on all of some channels or outputs. */
export function offersFilter(device: FilterMaker, names: readonly string[], pass: FilterPass): boolean {
  return names.every((name) => filterOffers(device, name).some((one) => one.pass === pass));
}

/** True for a channel whose low-pass always cuts: it plays bass and nothing else. */
export function lowPassAlways(device: FilterMaker, name: string): boolean {
  return filterOffers(device, name).some(({ pass, always }) => pass === 'low-pass' && always);
}
