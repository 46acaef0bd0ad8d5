import { shortName } from '../../draw/power/feed-words.ts';
import type { BuildPlan, PlanChannel, PlanControl, PlanItem } from '../../model/plan/index.ts';
import { noFigure, printed, printedTone } from '../../model/printed/index.ts';
import { blank, groupedTable, groupsBy, strong, type Table, tableOf } from '../sheets/table.ts';
import { joined } from '../words/words.ts';

/** How every switch and knob stands at hand-over, device by device. Null where there is none. */
export function settingsTable({ controls, items }: Pick<BuildPlan, 'controls' | 'items'>): Table | null {
  if (controls.length === 0) return null;
  const names = nameBy(items);
  return groupedTable(
    'Switches and knobs as they were left',
    groupsBy(controls, ({ item }) => names(item)),
    [
      { title: 'Control', kind: 'words', cell: ({ control }) => strong(control) },
      { title: 'As delivered', kind: 'words', cell: stateText },
    ],
  );
}

const stateText = ({ final }: PlanControl): string => final.state ?? 'set by ear';

function nameBy(items: readonly PlanItem[]): (id: string) => string {
  const names = new Map(items.map((item) => [item.id, shortName(item)]));
  return (id) => names.get(id) ?? '';
}

/** The tones that each speaker is given, and how long its sound is held back so that all arrive together. */
export function tonesTable({ audio, items }: Pick<BuildPlan, 'audio' | 'items'>): Table | null {
  const names = nameBy(items);
  const driven = audio.channels.filter(({ speakers }) => speakers.length > 0);
  if (driven.length === 0) return null;
  const rows = driven.flatMap((channel) => channel.speakers.map((speaker) => ({ channel, speaker })));
  const delayed = audio.speakers.some(({ delayMs }) => delayMs !== null);
  return tableOf('What each speaker plays', rows, [
    { title: 'Speaker', kind: 'words', cell: ({ speaker }) => strong(names(speaker)) },
    { title: 'Tones', kind: 'words', cell: ({ channel }) => tonesText(channel) },
    ...(delayed
      ? [
          {
            title: 'Held back',
            kind: 'figure' as const,
            cell: ({ speaker }: { readonly speaker: string }) =>
              printed('delay', audio.speakers.find(({ id }) => id === speaker)?.delayMs),
          },
        ]
      : []),
  ]);
}

/** The corners nearest to each other are those that are heard: the highest from below, the lowest from above. */
function tonesText({ filters }: Pick<PlanChannel, 'filters'>): string {
  const corners = (isUp: boolean): number[] =>
    filters.filter(({ pass }) => (pass === 'low-pass') !== isUp).map(({ cornerHz }) => cornerHz);
  const [fromHz, toHz] = [corners(true), corners(false)];
  const from = fromHz.length > 0 ? printedTone(Math.max(...fromHz)) : null;
  const to = toHz.length > 0 ? printedTone(Math.min(...toHz)) : null;
  if (from !== null && to !== null) return `${from} to ${to}`;
  if (from !== null) return `${from} and higher`;
  return to === null ? 'all' : `${to} and lower`;
}

/** One line of the record as its owner reads it. */
interface Line {
  readonly what: string;
  readonly predicted: string;
  readonly read: string;
}

/** What was read at hand-over beside what was predicted, in plain words; none of it without a reading. */
export function readingsTable(plan: Pick<BuildPlan, 'measurements' | 'items' | 'audio'>): Table | null {
  const lines = plan.measurements.flatMap((line): Line[] => {
    const what = line.asBuilt === undefined ? null : lineWords(plan, line.id);
    if (what === null) return [];
    return [
      { what, predicted: figureOf(line.predicted, line.unit), read: figureOf(line.asBuilt, line.unit) },
    ];
  });
  if (lines.length === 0) return null;
  return tableOf('Readings beside what was predicted', lines, [
    { title: 'Reading', kind: 'words', cell: ({ what }) => strong(what) },
    { title: 'Predicted', kind: 'figure', cell: ({ predicted }) => predicted },
    { title: 'At hand-over', kind: 'figure', cell: ({ read }) => strong(read) },
    blank('At the next visit'),
  ]);
}

function figureOf(value: number | null | undefined, unit: string): string {
  if (value === null || value === undefined) return noFigure;
  if (unit === 'V') return Math.abs(value) < 1 ? printed('small-voltage', value) : printed('voltage', value);
  return unit === 'A' ? printed('milliamperes-carried', value * 1000) : noFigure;
}

const ofVehicle: Readonly<Record<string, string>> = {
  'battery-rest': 'Battery, vehicle at rest',
  'battery-charging': 'Battery, engine running',
  'key-off-draw': 'Current drawn while the vehicle is parked',
};

const ofDevice: Readonly<Record<string, string>> = {
  'voltage.engine-off': 'supply with the engine off, music',
  'voltage.music': 'supply with the engine running, music',
};

/** What a line of the record is to an owner; null of one that tells only the bench something. */
function lineWords({ items, audio }: Pick<BuildPlan, 'items' | 'audio'>, id: string): string | null {
  const known = ofVehicle[id];
  if (known !== undefined) return known;
  const item = items.find((one) => id.startsWith(`${one.id}.`));
  if (!item) return null;
  const supply = ofDevice[id.slice(item.id.length + 1)];
  if (supply !== undefined) return `${shortName(item)}: ${supply}`;
  const channel = audio.channels.find((one) => id === `${one.id}.gain`);
  const names = nameBy(items);
  return channel && channel.speakers.length > 0
    ? `${shortName(item)}: greatest clean output to ${joined(channel.speakers.map(names))}`
    : null;
}
