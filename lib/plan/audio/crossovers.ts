import { channelWiring } from '../../audio/load/channel-wiring.ts';
import type { Device, Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { inLineFilter } from '../../model/kinds/crossover.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import type { PlanFilter } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import type { Polarity } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import { remarkFault } from '../remark-fault.ts';
import type { CoilField } from './load/amplifier-output.ts';

type Crossover = PartOf<'crossover'>;

/** A speaker at a way of a passive crossover. */
export interface BehindCrossover {
  readonly crossover: string;
  readonly speaker: string;
  readonly coils: readonly { readonly coil: string; readonly polarity: Polarity }[];
  /** What its way lets through, as filters at which nothing is set. */
  readonly filters: readonly PlanFilter[];
}

/** A crossover as its amplifier sees it: one load, whatever hangs on its ways; one in the lead of a speaker only from its corner on. */
export function crossoverAsCoil({ id, part, spec }: Device): CoilField | null {
  if (spec?.kind !== 'crossover') return null;
  const [positive = ''] = terminalsOf(spec.terminals, 'coil-positive');
  const [negative = ''] = terminalsOf(spec.terminals, 'coil-negative');
  const coil = `${id}.${stemName(positive)}`;
  const inLine = inLineFilter(spec);
  return {
    coils: [
      {
        id: coil,
        speaker: id,
        ...(part !== null && { part }),
        nominalOhm: spec.load,
        ...(inLine && { inLine }),
      },
    ],
    terminals: [{ coil, speaker: id, positive: `${id}.${positive}`, negative: `${id}.${negative}` }],
    joins: [],
    speakerW: new Map([[id, spec.power]]),
  };
}

/** The speakers at the ways of every crossover whose input is linked; a way that drives none, or is shorted, stops the job. */
export function planCrossovers(
  job: Job,
  field: CoilField,
  linked: ReadonlySet<string>,
  book: PlanBook,
): readonly BehindCrossover[] {
  const all = job.devices.flatMap((device) =>
    device.spec?.kind === 'crossover' ? [{ device, spec: device.spec }] : [],
  );
  const outputs = all.flatMap(({ device, spec }) =>
    Object.keys(spec.ways).flatMap((way) => endsOfWay(device.id, way)),
  );
  return all.flatMap(({ device, spec }) =>
    Object.keys(spec.ways).flatMap((way): BehindCrossover[] => {
      const [positive, negative] = endsOfWay(device.id, way);
      if (!linked.has(positive) && !linked.has(negative)) return [];
      const wiring = channelWiring({
        channel: `${device.id}.${way}`,
        positive,
        negative,
        otherOutputs: outputs.filter((end) => end !== positive && end !== negative),
        coils: field.terminals,
        joins: field.joins,
      });
      if (isFault(wiring)) {
        remarkFault(wiring, device, book);
        return [];
      }
      return bySpeaker(field, wiring.polarity).map((one) => ({
        crossover: device.id,
        ...one,
        filters: filtersOfWay(device.id, way, spec),
      }));
    }),
  );
}

function endsOfWay(device: string, way: string): readonly [positive: string, negative: string] {
  return [`${device}.${way}+`, `${device}.${way}-`];
}

function bySpeaker(
  field: CoilField,
  coils: BehindCrossover['coils'],
): readonly Pick<BehindCrossover, 'speaker' | 'coils'>[] {
  const speakerOf = (coil: string) => field.terminals.find((one) => one.coil === coil)?.speaker ?? '';
  const speakers = [...new Set(coils.map(({ coil }) => speakerOf(coil)))];
  return speakers.map((speaker) => ({
    speaker,
    coils: coils.filter(({ coil }) => speakerOf(coil) === speaker),
  }));
}

function filtersOfWay(device: string, way: string, { ways, order }: Crossover): readonly PlanFilter[] {
  const band = ways[way];
  const filter = (pass: 'high-pass' | 'low-pass', cornerHz: number): PlanFilter => ({
    where: `${device}.${way}`,
    pass,
    type: 'butterworth',
    order,
    cornerHz,
    inLead: true,
  });
  return [
    ...(band?.fromHz === undefined ? [] : [filter('high-pass', band.fromHz)]),
    ...(band?.toHz === undefined ? [] : [filter('low-pass', band.toHz)]),
  ];
}

/** The speakers of a channel, those behind its crossovers in place of these. */
export function speakersBehind(
  speakers: readonly string[],
  behind: readonly BehindCrossover[],
  job: Pick<Job, 'devices'>,
): string[] {
  const isCrossover = (id: string) =>
    job.devices.some((one) => one.id === id && one.spec?.kind === 'crossover');
  return speakers.flatMap((id) =>
    isCrossover(id) ? behind.filter(({ crossover }) => crossover === id).map(({ speaker }) => speaker) : [id],
  );
}

/** What the coils of a speaker behind a crossover are at the amplifier: turned round once more where the crossover is. */
export function polaritiesBehind(
  { coils }: BehindCrossover,
  atChannel: Polarity | undefined,
): readonly { readonly coil: string; readonly polarity: Polarity }[] {
  if (atChannel === undefined) return [];
  return coils.map(({ coil, polarity }) => ({
    coil,
    polarity: polarity === atChannel ? 'normal' : 'reversed',
  }));
}
