import type { PlanItem } from '../../../lib/model/plan/index.ts';
import type { Panel, TerminalRole } from '../../../lib/model/vocabulary.ts';
import { count, type SampleShape } from './sample-shape.ts';

type Terminal = PlanItem['terminals'][number];

function terminal(
  name: string,
  role: TerminalRole,
  panel: Panel | null = null,
  atM: number | null = null,
): Terminal {
  return { name, role, panel, atM };
}

interface ItemRequest {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly terminals: readonly Terminal[];
  readonly size?: readonly [widthM: number, depthM: number];
  readonly board?: string;
  readonly controls?: readonly string[];
  readonly origin?: 'job' | 'vehicle';
}

function item(request: ItemRequest): PlanItem {
  const { id, kind, title, terminals, size, board = null, controls = [], origin = 'job' } = request;
  return {
    id,
    part: `${kind}-part`,
    kind,
    title,
    partTitle: `Part of ${title}`,
    origin,
    board,
    seat: null,
    seatTitle: null,
    zone: 'cargo',
    side: 'left',
    massKg: 1,
    widthM: size?.[0] ?? null,
    depthM: size?.[1] ?? null,
    heightM: 0.05,
    cooling: kind === 'amplifier' ? { top: 'fins', bottom: 'fins' } : {},
    terminals: [...terminals],
    controls: controls.map((name, index) => {
      return { name, what: 'gain', form: 'knob', panel: 'left', atM: 0.1 + index * 0.012, positions: [] };
    }),
  };
}

/** Terminals along one panel, at equal distances. */
function along(
  panel: Panel,
  lengthM: number,
  ...named: readonly (readonly [string, TerminalRole])[]
): Terminal[] {
  return named.map(([name, role], index) =>
    terminal(name, role, panel, (lengthM * (index + 1)) / (named.length + 1)),
  );
}

const ampSize = [0.25, 0.165] as const;

function amplifierItem(index: number, channels: number, longNames: boolean): PlanItem {
  const [width, depth] = ampSize;
  const outputs = count(channels).flatMap((n): (readonly [string, TerminalRole])[] => [
    [`CH${n}+`, 'speaker-out-positive'],
    [`CH${n}-`, 'speaker-out-negative'],
  ]);
  return item({
    id: `amp-${index + 1}`,
    kind: 'amplifier',
    title: longNames ? `Amplifier for the speakers of zone number ${index + 1}` : `Amplifier ${index + 1}`,
    size: [width, depth],
    board: 'board',
    controls: ['GAIN', 'LEVEL'],
    terminals: [
      ...along(
        'right',
        depth,
        ['B+', 'supply-positive'],
        ['GND', 'supply-negative'],
        ['REM', 'turn-on-in'],
        ...outputs,
      ),
      ...count(channels).map((n) => terminal(`IN${n}`, 'signal-in', 'left', 0.012 * n)),
    ],
  });
}

function fixedItems(shape: SampleShape): PlanItem[] {
  const channels = shape.amplifiers.reduce((sum, each) => sum + each, 0);
  const ways = shape.amplifiers.length + (shape.processor ? 1 : 0);
  const battery = (id: string, origin: 'job' | 'vehicle'): PlanItem =>
    item({
      id,
      kind: 'battery',
      title: id === 'starter' ? 'Starter battery' : 'Second battery',
      origin,
      terminals: [terminal('POS', 'source-positive'), terminal('NEG', 'source-negative')],
    });
  const holder = (id: string, title: string): PlanItem =>
    item({
      id,
      kind: 'fuse-holder',
      title,
      terminals: [terminal('IN', 'feed-in'), terminal('OUT', 'feed-out')],
    });
  const processor = item({
    id: 'dsp',
    kind: 'processor',
    title: 'Processor',
    size: [0.14, 0.115],
    board: 'board',
    terminals: [
      ...along(
        'bottom',
        0.14,
        ['B+', 'supply-positive'],
        ['GND', 'supply-negative'],
        ['REM', 'turn-on-in'],
        ['REM-OUT', 'turn-on-out'],
      ),
      ...count(channels).map((n) => terminal(`IN${n}`, 'signal-in', 'left', 0.008 * n)),
      ...count(channels).map((n) => terminal(`OUT${n}`, 'signal-out', 'right', 0.008 * n)),
    ],
  });
  return [
    battery('starter', 'vehicle'),
    item({
      id: 'body',
      kind: 'body',
      title: 'Body',
      origin: 'vehicle',
      terminals: [terminal('wing-left', 'body'), terminal('floor-rear', 'body')],
    }),
    ...(shape.secondBattery ? [holder('link-fuse', 'Link fuse'), battery('second', 'job')] : []),
    holder('main-fuse', shape.longNames ? 'Main fuse beside the starter battery' : 'Main fuse'),
    item({
      id: 'dist',
      kind: 'distribution',
      title: 'Distribution',
      size: [0.1, 0.115],
      board: 'board',
      terminals: [
        ...along('right', 0.115, ['IN', 'feed-in']),
        ...along('left', 0.115, ...count(ways).map((n) => [`OUT${n}`, 'feed-out'] as const)),
      ],
    }),
    item({
      id: 'bar',
      kind: 'distribution',
      title: 'Ground bar',
      size: [0.045, 0.13],
      board: 'board',
      terminals: along('left', 0.13, ...count(ways + 1).map((n) => [`G${n}`, 'ground-bar'] as const)),
    }),
    item({
      id: 'source',
      kind: 'source-unit',
      title: 'Source unit',
      origin: 'vehicle',
      terminals: [
        terminal('REM-OUT', 'turn-on-out'),
        ...count(channels).map((n) => terminal(`OUT${n}`, 'signal-out')),
      ],
    }),
    ...(shape.processor ? [processor] : []),
  ];
}

function speakerItem(id: string): PlanItem {
  return item({
    id,
    kind: 'speaker',
    title: `Speaker ${id.replace('speaker-', '')}`,
    terminals: [terminal('C1+', 'coil-positive'), terminal('C1-', 'coil-negative')],
  });
}

/** Every item of a made-up job. */
export function sampleItems(shape: SampleShape): PlanItem[] {
  const channels = shape.amplifiers.reduce((sum, each) => sum + each, 0);
  return [
    ...fixedItems(shape),
    ...shape.amplifiers.map((own, index) => amplifierItem(index, own, shape.longNames)),
    ...count(channels).map((n) => speakerItem(`speaker-${n}`)),
  ];
}
