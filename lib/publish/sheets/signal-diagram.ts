import type { BuildPlan, PlanChannel, PlanSpeaker } from '../../model/plan/index.ts';
import { printed, printedNumber } from '../../model/printed/index.ts';
import { filterNames } from '../../model/vocabulary.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { spelledWithin } from '../words/words.ts';
import { lengthOr, none, type Written, writerFor } from '../words/written.ts';
import { builderSheet } from './sheet.ts';
import { sourceTables } from './source-tables.ts';
import { blank, dense, groupedTable, strong, type Table, tableOf } from './table.ts';

/** Signal and speakers: what each channel sees, what it is set to, where each speaker stands. */
export interface SignalDiagramSheet {
  readonly tables: readonly Table[];
}

function channelsTable(channels: readonly PlanChannel[]): Table {
  return tableOf(
    'Load of each channel, at the speaker plug',
    channels,
    [
      { title: 'Channel', cell: (one) => strong(one.id) },
      { title: 'Speakers', cell: (one) => (one.speakers.length === 0 ? none : one.speakers.join(', ')) },
      { title: 'Coils', cell: (one) => one.wiring },
      { title: 'Load', kind: 'figure', leads: true, cell: (one) => strong(printed('load', one.loadOhm)) },
      { title: 'Least', kind: 'figure', cell: (one) => printed('load-at-least', one.minimumOhm) },
      { title: 'Meter reads', kind: 'figure', cell: (one) => meterRange(one) },
      blank('Read'),
    ],
    (one) => one.id,
  );
}

function meterRange({ dcResistanceOhm }: PlanChannel): string {
  if (dcResistanceOhm === null) return none.text;
  return `${printedNumber('resistance-from', dcResistanceOhm.fromOhm)} to ${printed('resistance-to', dcResistanceOhm.toOhm)}`;
}

/** True for a plan that was frozen when gains were read with everything flat: its voltages are of that. */
function readFlat(channels: readonly PlanChannel[]): boolean {
  return channels.some(({ gain }) => gain !== null && gain.state === undefined);
}

function gainsTable(channels: readonly PlanChannel[]): Table {
  return tableOf(
    `Setting of gain: speakers off, ${readFlat(channels) ? 'filters and equalising flat' : 'filters loaded as below'}`,
    channels.filter((one) => one.speakers.length > 0),
    [
      { title: 'Channel', cell: (one) => strong(one.id) },
      { title: 'Tone', kind: 'figure', cell: (one) => printed('frequency', one.toneHz) },
      { title: 'Path at the tone', kind: 'figure', cell: pathText },
      {
        title: 'Meter shows',
        kind: 'figure',
        leads: true,
        cell: (one) => strong(printed('gain-voltage', one.gainVoltageV)),
      },
      { title: 'Set for', kind: 'figure', cell: powerSetFor },
      { title: 'Loss in the wire', kind: 'figure', cell: (one) => printed('loss', one.wireLossDb) },
      { title: 'Below its fellow', kind: 'figure', cell: belowText },
      { title: 'Damping', kind: 'figure', cell: (one) => printed('damping', one.damping) },
      {
        title: 'Margin to clipping',
        kind: 'figure',
        cell: (one) => printed('level-left', one.gain?.toneMarginDb),
      },
      blank('Set to'),
    ],
    (one) => one.id,
  );
}

/**
 * The power that the voltage of a gain is set for; beside it what the amplifier gives where its speakers take less, and the
 * level that the job asks for.
 */
function powerSetFor({ gain, powerW, level }: PlanChannel): Written {
  if (gain === null) return { text: none.text };
  const text = printed('power', gain.targetPowerW);
  const rated = printed('power', powerW);
  const beside = [
    ...(text === rated ? [] : [`the amplifier gives ${rated}`]),
    ...(level ? [`${printed('level', level.db)} by ${level.by.join(' and ')}, as the job says`] : []),
  ];
  return { text, ...(beside.length > 0 && { beside: beside.join('; ') }) };
}

/** How far a path is below its highest level at the tone, and what stands flat while its gain is set. */
function pathText({ gain }: PlanChannel): Written {
  const text = printed('level', gain?.pathDb);
  return gain?.state === 'equalising-flat' ? { text, beside: 'equalising and boost flat' } : { text };
}

/** How far its loss puts a channel below the fellow that loses least. */
function belowText({ belowDb }: PlanChannel): string {
  return belowDb !== null && belowDb >= 0.05 ? printed('loss', belowDb) : none.text;
}

/** Every way of wiring the coils of a channel that has more than one, with the power of each coil. */
function waysTable(channels: readonly PlanChannel[]): Table {
  const groups = channels
    .filter(({ wiringsInAll }) => (wiringsInAll ?? 0) > 1)
    .map(({ id, wirings, wiringsInAll, minimumOhm }) => ({
      title: `${id}, at least ${printed('load-at-least', minimumOhm)}: ${wirings.length} of ${wiringsInAll} ways`,
      things: wirings,
    }));
  return groupedTable('Ways of wiring the coils', groups, [
    { title: 'Way', kind: 'words', cell: (way) => ({ text: way.text, strong: way.chosen }) },
    { title: 'Load', kind: 'figure', leads: true, cell: (way) => printed('load', way.loadOhm) },
    { title: 'May be driven', cell: (way) => (way.mayDrive ? 'yes' : 'NO') },
    { title: 'Power', kind: 'figure', cell: (way) => printed('power', way.powerW) },
    { title: 'Each coil', kind: 'words', cell: coilPowers },
    { title: 'Wired so', cell: (way) => (way.chosen ? 'yes' : '') },
  ]);
}

function coilPowers({ coils, mayDrive }: PlanChannel['wirings'][number]): string {
  if (!mayDrive) return '';
  return coils.map(({ coil, powerW }) => `${coil} ${printed('power', powerW)}`).join(', ');
}

function filtersTable(channels: readonly PlanChannel[]): Table {
  const filters = channels.flatMap((one) => one.filters.map((filter) => ({ ...filter, channel: one.id })));
  return tableOf(
    'Filters',
    filters,
    [
      { title: 'Channel', cell: (one) => strong(one.channel) },
      { title: 'Stands at', cell: (one) => one.where },
      { title: 'Passes', cell: (one) => spelledWithin(one.pass) },
      { title: 'Type', cell: (one) => filterNames[one.type] },
      { title: 'Slope', kind: 'figure', cell: (one) => printed('slope', one.order * 6) },
      {
        title: 'Corner',
        kind: 'figure',
        leads: true,
        cell: (one) => strong(printed('frequency', one.cornerHz)),
      },
      { title: 'Set', kind: 'tick' },
    ],
    (one) => one.channel,
  );
}

/** Equalising and boosts as they stand for good. */
function peaksTable(channels: readonly PlanChannel[]): Table {
  const peaks = channels.flatMap((one) => one.peaks.map((peak) => ({ ...peak, channel: one.id })));
  return tableOf(
    'Equalising and boost',
    peaks,
    [
      { title: 'Channel', cell: (one) => strong(one.channel) },
      { title: 'Stands at', cell: (one) => one.where },
      { title: 'Centre', kind: 'figure', cell: (one) => printed('frequency', one.centreHz) },
      { title: 'Level', kind: 'figure', leads: true, cell: (one) => strong(printed('level', one.gainDb)) },
      { title: 'Q', kind: 'figure', cell: (one) => printed('sharpness', one.q) },
      { title: 'Set', kind: 'tick' },
    ],
    (one) => one.channel,
  );
}

function speakersTable(plan: BuildPlan, { item }: PlanNames): Table {
  const write = writerFor(plan.shop);
  return tableOf(
    'Speakers',
    plan.audio.speakers,
    [
      { title: 'Speaker', cell: (one) => strong(item(one.id), one.id) },
      { title: 'Channel', cell: (one) => one.channel ?? none },
      { title: 'Polarity', cell: (one) => polarityText(one, plan.audio.channels) },
      { title: 'At rated power', kind: 'figure', cell: (one) => printed('power', one.powerW) },
      {
        title: 'Distance',
        kind: 'figure',
        cell: (one) => lengthOr(one.distanceM, (lengthM) => write.short('measured', lengthM)),
      },
      {
        title: 'Delay',
        kind: 'figure',
        leads: true,
        cell: (one) => delayText(one, plan),
      },
      { title: 'Set', kind: 'tick' },
    ],
    (one) => one.id,
  );
}

/** A delay as it is set; of speakers that share an output, what each asks for stands beside. */
function delayText({ id, delayMs, delaySamples }: PlanSpeaker, { audio }: Pick<BuildPlan, 'audio'>): Written {
  const asked = audio.sharedDelays.flatMap(({ off }) => off).find(({ speaker }) => speaker === id)?.askedMs;
  const beside = [
    ...(delaySamples === null ? [] : [`${delaySamples} samples`]),
    ...(asked === undefined ? [] : [`shared, asks for ${printed('delay', asked)}`]),
  ];
  return { text: printed('delay', delayMs), ...(beside.length > 0 && { beside: beside.join(', ') }) };
}

/** As it is wired, and what a polarity tester meets besides: its mounting, and what turns the signal over before it. */
function polarityText(
  { polarity, mounted, reversedWhy, channel }: PlanSpeaker,
  channels: readonly PlanChannel[],
): string {
  const over = channels.find(({ id }) => id === channel)?.turnedBy ?? [];
  const before = over.length > 0 ? `, turned over by ${over.join(' and ')}` : '';
  const turned = `${mounted === 'reversed' ? ', mounted back to front' : ''}${before}`;
  return `${polarity}${turned}${reversedWhy === null ? '' : `: ${reversedWhy}`}`;
}

function signalModel(plan: BuildPlan): SignalDiagramSheet | null {
  const { channels } = plan.audio;
  const tables = [
    channelsTable(channels),
    waysTable(channels),
    gainsTable(channels),
    filtersTable(channels),
    peaksTable(channels),
    speakersTable(plan, namesOf(plan)),
    ...sourceTables(plan),
  ]
    .filter((table) => table.rows.length > 0)
    .map(dense);
  return tables.length === 0 ? null : { tables };
}

export const signalDiagram = builderSheet('signal-diagram', 'Signal and speakers', signalModel, {
  cautions: ['hearing'],
});
