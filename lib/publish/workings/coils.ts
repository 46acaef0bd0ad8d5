import type { BuildPlan } from '../../model/plan/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { workingOr } from '../words/written.ts';

/** The ways of wiring the coils of each channel, the chosen one marked. */
export function coilWirings({ audio }: Pick<BuildPlan, 'audio'>): Table {
  const ways = audio.channels.flatMap(({ id, wirings }) => wirings.map((way) => ({ ...way, channel: id })));
  return tableOf(
    'Ways of wiring the coils',
    ways,
    [
      { title: 'Channel', cell: (way) => strong(way.channel) },
      { title: 'Way', cell: (way) => ({ text: way.text, strong: way.chosen }) },
      { title: 'Load', kind: 'figure', cell: (way) => workingOr(way.loadOhm, 'ohm', 3) },
      { title: 'May be driven', cell: (way) => (way.mayDrive ? 'yes' : 'NO') },
      { title: 'Power', kind: 'figure', cell: (way) => workingOr(way.powerW, 'W', 1) },
      { title: 'Chosen', cell: (way) => (way.chosen ? 'yes' : '') },
    ],
    (way) => way.channel,
  );
}
