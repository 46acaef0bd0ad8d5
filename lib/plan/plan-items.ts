import type { Device, Job } from '../model/content/resolved-job.ts';
import { isFuseTap } from '../model/kinds/distribution.ts';
import type { TerminalSpecs } from '../model/kinds/fields/terminal-spec.ts';
import type { PlanItem } from '../model/plan/index.ts';
import { unmarkedTerminal } from '../model/vocabulary.ts';

/** Every device of a job as the sheets show it: those of the job, and those of the vehicle that a link touches. */
export function planItems(job: Job): PlanItem[] {
  const touched = new Set(job.links.flatMap(({ from, to }) => [from.device, to.device]));
  return job.devices
    .filter(({ id, origin }) => origin === 'job' || touched.has(id))
    .map((device) => planItem(device, job));
}

function planItem(device: Device, job: Job): PlanItem {
  const { facts, spec } = device;
  const print = facts.footprint;
  return {
    id: device.id,
    part: device.part,
    kind: spec?.kind ?? 'body',
    title: device.title,
    partTitle: spec?.title ?? device.title,
    origin: device.origin,
    board: device.board,
    seat: device.seat,
    seatTitle: job.vehicle.places[device.seat ?? '']?.title ?? null,
    zone: device.zone,
    side: device.side,
    ...(device.sideOpen === true && { sideOpen: true }),
    ...ownFuses(device),
    ...(device.spec?.kind === 'distribution' && isFuseTap(device.spec) && { tap: true as const }),
    massKg: print?.massKg ?? null,
    widthM: print?.widthM ?? null,
    depthM: print?.depthM ?? null,
    heightM: print?.heightM ?? null,
    ...(device.given?.['brought-by'] && { broughtBy: device.given['brought-by'] }),
    ...(device.given?.held !== undefined && { held: device.given.held }),
    cooling: definedOnly(print?.cooling ?? {}),
    terminals: itemTerminals(facts.terminals),
    controls: Object.entries(facts.controls).map(([name, control]) => {
      const { what, form, panel, at, positions = [], filter } = control;
      const off = filter?.off === undefined ? {} : { off: filter.off };
      return { name, what, form, panel, atM: at ?? null, positions, ...off };
    }),
  };
}

/** The fuses that a device brings: those in its chassis; of a source unit of the vehicle its fuse, wherever it sits. */
function ownFuses({ spec, origin }: Device): Pick<PlanItem, 'ownFuses'> {
  const supply = spec && 'supply' in spec ? spec.supply : undefined;
  if (supply === undefined || !('fuses-fitted' in supply)) return {};
  const { fuse: ratingA, 'fuses-fitted': count } = supply;
  const isTold = count > 0 || (origin === 'vehicle' && spec?.kind === 'source-unit');
  return isTold ? { ownFuses: { count, ratingA } } : {};
}

/** Terminals as sheets call them: by the maker's mark; those without one are numbered in the order of the file. */
function itemTerminals(terminals: TerminalSpecs): PlanItem['terminals'] {
  const unmarked = Object.keys(terminals).filter((name) => terminals[name]?.mark === unmarkedTerminal);
  return Object.entries(terminals).map(([name, { role, mark, panel, at }]) => {
    const nth = unmarked.indexOf(name) + 1;
    const shown = nth > 0 ? `port ${nth}` : mark;
    return { name, role, ...(shown !== undefined && { shown }), panel: panel ?? null, atM: at ?? null };
  });
}

function definedOnly<K extends string, V>(
  record: Readonly<Partial<Record<K, V | undefined>>>,
): Partial<Record<K, V>> {
  const kept: Partial<Record<K, V>> = {};
  for (const key in record) {
    const value = record[key];
    if (value !== undefined) kept[key] = value;
  }
  return kept;
}
