import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import type { ConductorRole } from '../../../lib/model/vocabulary.ts';
import { count, type SampleShape } from './sample-shape.ts';

const signs = ['+', '-'] as const;

interface Link {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly role: ConductorRole;
  readonly awg: string;
}

function link(id: string, from: string, to: string, role: ConductorRole, awg: string): Link {
  return { id, from, to, role, awg };
}

function feedLinks(shape: SampleShape): Link[] {
  const devices = [
    ...shape.amplifiers.map((_, index) => `amp-${index + 1}`),
    ...(shape.processor ? ['dsp'] : []),
  ];
  const chain = shape.secondBattery
    ? [
        link('link-tail', 'starter.POS', 'link-fuse.IN', 'power', '4'),
        link('link', 'link-fuse.OUT', 'second.POS', 'power', '4'),
        link('second-ground', 'second.NEG', 'body.floor-rear', 'ground', '4'),
        link('tail', 'second.POS', 'main-fuse.IN', 'power', '4'),
      ]
    : [link('tail', 'starter.POS', 'main-fuse.IN', 'power', '4')];
  return [
    ...chain,
    link('strap', 'starter.NEG', 'body.wing-left', 'ground', '2'),
    link('feed', 'main-fuse.OUT', 'dist.IN', 'power', '4'),
    ...devices.map((id, index) => link(`feed-${id}`, `dist.OUT${index + 1}`, `${id}.B+`, 'power', '8')),
    ...devices.map((id, index) => link(`ground-${id}`, `${id}.GND`, `bar.G${index + 2}`, 'ground', '8')),
    link('ground-body', 'bar.G1', 'body.floor-rear', 'ground', '4'),
  ];
}

function audioLinks(shape: SampleShape): Link[] {
  const hub = shape.processor ? 'dsp' : 'source';
  const links: Link[] = shape.processor
    ? [link('turn-on-dsp', 'source.REM-OUT', 'dsp.REM', 'turn-on', '18')]
    : [];
  let nth = 0;
  shape.amplifiers.forEach((channels, index) => {
    const amp = `amp-${index + 1}`;
    links.push(link(`turn-on-${amp}`, `${hub}.REM-OUT`, `${amp}.REM`, 'turn-on', '18'));
    for (const n of count(channels)) {
      nth += 1;
      if (shape.processor) links.push(link(`in-${nth}`, `source.OUT${nth}`, `dsp.IN${nth}`, 'signal', '24'));
      links.push(link(`signal-${nth}`, `${hub}.OUT${nth}`, `${amp}.IN${n}`, 'signal', '24'));
      for (const sign of signs)
        links.push(
          link(`to-${nth}.${sign}`, `${amp}.CH${n}${sign}`, `speaker-${nth}.C1${sign}`, 'speaker', '16'),
        );
    }
  });
  return links;
}

const letters: Readonly<Record<ConductorRole, string>> = {
  power: 'P',
  ground: 'G',
  speaker: 'L',
  signal: 'S',
  'turn-on': 'T',
  control: 'C',
};

/** Wires with labels that count up within their role; the two of a pair share a number. */
function wiresOf(links: readonly Link[]): PlanWire[] {
  const numbers = new Map<string, number>();
  const counts = new Map<string, number>();
  return links.map(({ id, from, to, role, awg }): PlanWire => {
    const pair = id.replace(/\.[+-]$/, '');
    const number = numbers.get(pair) ?? (counts.get(role) ?? 0) + 1;
    numbers.set(pair, number);
    counts.set(role, Math.max(number, counts.get(role) ?? 0));
    const end = (at: string): PlanWire['ends'][number] => {
      return { terminal: at, prep: 'ferrule', part: null, stripM: null, loopM: 0 };
    };
    const sign = /[+-]$/.exec(id)?.[0] ?? '';
    return {
      id,
      link: pair,
      label: `${letters[role]}${number}${sign}`,
      origin: 'job',
      from,
      to,
      role,
      size: awgSize(awg),
      colour: sign === '-' ? 'WH/BK' : role === 'ground' ? 'BK' : 'WH',
      lengthM: 0.4 + number / 7,
      measured: 'given',
      part: null,
      board: 'board',
      run: null,
      zones: [],
      covering: [],
      ends: [end(from), end(to)],
    };
  });
}

/** Every wire of a made-up job. */
export function sampleWires(shape: SampleShape): PlanWire[] {
  return wiresOf([...feedLinks(shape), ...audioLinks(shape)]);
}
