import type { BuildPlan, PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import { spelled } from '../words.ts';
import { lengthOr, measure, measureOr, none, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { blank, strong, type Table, tableOf } from './table.ts';

/** Signal and speakers: what each channel sees, what it is set to, where each speaker stands. */
export interface SignalDiagramSheet {
  readonly channels: Table | null;
  readonly gains: Table | null;
  readonly filters: Table | null;
  readonly speakers: Table | null;
}

function channelsTable(channels: readonly PlanChannel[]): Table | null {
  if (channels.length === 0) return null;
  return tableOf(
    'Load of each channel',
    channels,
    [
      { title: 'Channel', cell: (one) => strong(one.id, `${one.positive}, ${one.negative}`) },
      { title: 'Speakers', cell: (one) => (one.speakers.length === 0 ? none : one.speakers.join(', ')) },
      { title: 'Wiring', cell: (one) => one.wiring },
      { title: 'Load', kind: 'figure', cell: (one) => strong(measureOr(one.loadOhm, 'ohm', 1)) },
      { title: 'Least allowed', kind: 'figure', cell: (one) => measure(one.minimumOhm, 'ohm', 1) },
      { title: 'Meter reads', kind: 'figure', cell: (one) => meterRange(one) },
      { title: 'Read', kind: 'blank' },
    ],
    (one) => one.id,
  );
}

function meterRange({ dcResistanceOhm }: PlanChannel): string {
  if (dcResistanceOhm === null) return none.text;
  return `${measure(dcResistanceOhm.fromOhm, '', 1)} to ${measure(dcResistanceOhm.toOhm, 'ohm', 1)}`;
}

function gainsTable(channels: readonly PlanChannel[]): Table | null {
  const driven = channels.filter((one) => one.speakers.length > 0);
  if (driven.length === 0) return null;
  return tableOf(
    'Setting of gain, speakers off',
    driven,
    [
      { title: 'Channel', cell: (one) => strong(one.id) },
      { title: 'Tone', kind: 'figure', cell: (one) => measure(one.toneHz, 'Hz', 0) },
      { title: 'Meter shows', kind: 'figure', cell: (one) => strong(measureOr(one.gainVoltageV, 'V', 1)) },
      { title: 'Power', kind: 'figure', cell: (one) => measureOr(one.powerW, 'W', 0) },
      { title: 'Loss in the wire', kind: 'figure', cell: (one) => measureOr(one.wireLossDb, 'dB', 2) },
      blank('Set to'),
    ],
    (one) => one.id,
  );
}

const filterNames = {
  butterworth: 'Butterworth',
  'linkwitz-riley': 'Linkwitz-Riley',
  bessel: 'Bessel',
} as const satisfies Record<PlanFilter['type'], string>;

function filtersTable(channels: readonly PlanChannel[]): Table | null {
  const filters = channels.flatMap((one) => one.filters.map((filter) => ({ ...filter, channel: one.id })));
  if (filters.length === 0) return null;
  return tableOf(
    'Filters',
    filters,
    [
      { title: 'Channel', cell: (one) => strong(one.channel) },
      { title: 'Stands at', cell: (one) => one.where },
      { title: 'Passes', cell: (one) => spelled(one.pass) },
      { title: 'Type', cell: (one) => filterNames[one.type] },
      { title: 'Slope', kind: 'figure', cell: (one) => measure(one.order * 6, 'dB/octave', 0) },
      { title: 'Corner', kind: 'figure', cell: (one) => strong(measure(one.cornerHz, 'Hz', 0)) },
    ],
    (one) => one.channel,
  );
}

function speakersTable(plan: BuildPlan): Table | null {
  if (plan.audio.speakers.length === 0) return null;
  const write = writerFor(plan.shop);
  const titles = new Map(plan.items.map((item) => [item.id, item.title]));
  return tableOf(
    'Speakers',
    plan.audio.speakers,
    [
      { title: 'Speaker', cell: (one) => strong(titles.get(one.id) ?? one.id, one.id) },
      { title: 'Channel', cell: (one) => one.channel ?? none },
      { title: 'Polarity', cell: (one) => spelled(one.polarity) },
      { title: 'Power', kind: 'figure', cell: (one) => measureOr(one.powerW, 'W', 0) },
      { title: 'From the listener', kind: 'figure', cell: (one) => lengthOr(one.distanceM, write.length) },
      { title: 'Delay', kind: 'figure', cell: (one) => measureOr(one.delayMs, 'ms', 2) },
    ],
    (one) => one.id,
  );
}

function signalModel(plan: BuildPlan): SignalDiagramSheet | null {
  const { channels, speakers } = plan.audio;
  if (channels.length + speakers.length === 0) return null;
  return {
    channels: channelsTable(channels),
    gains: gainsTable(channels),
    filters: filtersTable(channels),
    speakers: speakersTable(plan),
  };
}

export const signalDiagram = builderSheet('signal-diagram', 'Signal and speakers', signalModel, {
  cautions: ['hearing'],
});
