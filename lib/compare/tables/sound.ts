import {
  buildPlanSchema,
  type PlanChannel,
  type PlanControl,
  type PlanFilter,
  type PlanSpeaker,
} from '../../model/plan/index.ts';
import { printedTone } from '../../model/printed/index.ts';
import { filterNames } from '../../model/vocabulary.ts';
import { figureCell, listCell, textCell } from '../cells.ts';
import { planTable } from '../table.ts';

const { audio, controls } = buildPlanSchema.shape;
const channel = audio.shape.channels.element.shape;
const filter = channel.filters.element.shape;
const least = channel.least.unwrap().shape;
const speaker = audio.shape.speakers.element.shape;
const control = controls.element.shape;

/** Every channel: what it sees and how it is set. */
export const channelsTable = planTable<PlanChannel>({
  id: 'channels',
  title: 'Channels',
  rows: (plan) => plan.audio.channels,
  key: ({ id }) => id,
  keyLeaves: [channel.id],
  columns: [
    {
      id: 'load',
      title: 'Load',
      leaves: [channel.loadOhm],
      cell: ({ loadOhm }) => figureCell('load', loadOhm),
    },
    {
      id: 'least-load',
      title: 'Least load',
      leaves: [least.ohm],
      cell: ({ least: seen }) => figureCell('load', seen?.ohm ?? null),
    },
    {
      id: 'speakers',
      title: 'Speakers',
      leaves: [channel.speakers.element],
      cell: ({ speakers }) => listCell(speakers),
    },
    { id: 'wiring', title: 'Coils', leaves: [channel.wiring], cell: ({ wiring }) => textCell(wiring) },
    {
      id: 'power',
      title: 'Power',
      leaves: [channel.powerW],
      cell: ({ powerW }) => figureCell('power', powerW),
    },
    {
      id: 'gain-voltage',
      title: 'Gain set to',
      leaves: [channel.gainVoltageV],
      cell: ({ gainVoltageV }) => figureCell('gain-voltage', gainVoltageV),
    },
    {
      id: 'filters',
      title: 'Filters',
      leaves: [filter.where, filter.pass, filter.type, filter.order, filter.cornerHz],
      cell: ({ filters }) => textCell(filters.map(filterText).join('; ')),
    },
  ],
});

function filterText({ where, pass, type, order, cornerHz }: PlanFilter): string {
  return `${where} ${pass} ${printedTone(cornerHz)}, ${filterNames[type]}, order ${order}`;
}

/** Every speaker: when it plays, and which way round. */
export const speakersTable = planTable<PlanSpeaker>({
  id: 'speakers',
  title: 'Speakers',
  rows: (plan) => plan.audio.speakers,
  key: ({ id }) => id,
  keyLeaves: [speaker.id],
  columns: [
    {
      id: 'delay',
      title: 'Delay',
      leaves: [speaker.delayMs],
      cell: ({ delayMs }) => figureCell('delay', delayMs),
    },
    {
      id: 'polarity',
      title: 'Polarity',
      leaves: [speaker.polarity],
      cell: ({ polarity }) => textCell(polarity),
    },
    { id: 'channel', title: 'Channel', leaves: [speaker.channel], cell: (one) => textCell(one.channel) },
    {
      id: 'power',
      title: 'Power',
      leaves: [speaker.powerW],
      cell: ({ powerW }) => figureCell('power', powerW),
    },
  ],
});

/** Every switch and knob: before first power-up, and as it is handed over. */
export const settingsTable = planTable<PlanControl>({
  id: 'settings',
  title: 'Settings',
  rows: (plan) => plan.controls,
  key: ({ item, control: name }) => `${item}.${name}`,
  keyLeaves: [control.item, control.control],
  columns: [
    {
      id: 'preset',
      title: 'Before first power',
      leaves: [control.preset],
      cell: ({ preset }) => textCell(preset),
    },
    {
      id: 'final',
      title: 'After commissioning',
      leaves: [control.final.shape.state],
      cell: ({ final }) => textCell(final.state),
    },
  ],
});
