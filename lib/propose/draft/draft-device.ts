import type { JobDevice } from '../../model/content/job.ts';
import { partAsUsed } from '../../model/content/part-as-used.ts';
import { bodyId } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { type Part, type PartFacts, partFacts } from '../../model/kinds/index.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import { isPortPattern, matchesPattern } from '../../model/ports/port-pattern.ts';
import {
  type Origin,
  type Row,
  type TerminalRole,
  untoldSide,
  type VehicleSide,
  type ZoneKind,
} from '../../model/vocabulary.ts';
import type { OpenedJob } from './draft-terms.ts';

/** A device of the job or of the vehicle while the job is completed: its part is known, its links may be missing. */
export interface DraftDevice {
  readonly id: string;
  readonly origin: Origin;
  readonly partId: string;
  readonly spec: Part;
  readonly facts: PartFacts;
  /** As the job wrote it, or as it is proposed; null for what came with the vehicle. */
  readonly given: JobDevice | null;
  readonly board: string | null;
  readonly seat: string | null;
  readonly zone: ZoneKind;
  readonly side: VehicleSide;
  /** The row of seats that its place plays to. */
  readonly row: Row | null;
  /** Terminals that the vehicle leaves open by itself. */
  readonly leftOpen: readonly string[];
}

type Parts = Readonly<Record<string, Part>>;

/** A device of the job; null where its part is not known or is not mounted: the reader tells that. */
export function jobDraftDevice(
  id: string,
  given: JobDevice,
  job: Pick<OpenedJob, 'boards' | 'space'>,
  vehicle: Vehicle,
  parts: Parts,
): DraftDevice | null {
  const part = parts[given.part];
  if (!part || id === bodyId) return null;
  const spec = partAsUsed(part, given);
  const facts = partFacts(spec);
  if (!facts.footprint) return null;
  const board = given.on === undefined ? undefined : job.boards[given.on];
  const space = board && vehicle.spaces[board.space ?? job.space ?? ''];
  const place = given.in === undefined ? undefined : vehicle.places[given.in];
  return {
    id,
    origin: 'job',
    partId: given.part,
    spec,
    facts,
    given,
    board: board ? (given.on ?? null) : null,
    seat: place ? (given.in ?? null) : null,
    zone: space?.zone ?? place?.zone ?? 'cabin',
    side: space?.side ?? place?.side ?? 'middle',
    row: place?.row ?? null,
    leftOpen: [],
  };
}

/** True for a device of the job whose board or place there is not: the reader tells that. */
export function standsNowhere({ origin, board, seat }: DraftDevice): boolean {
  return origin === 'job' && board === null && seat === null;
}

/** The devices that came with a vehicle. */
export function fittedDraftDevices(vehicle: Vehicle, parts: Parts): readonly DraftDevice[] {
  return Object.entries(vehicle.fitted).flatMap(([id, fitted]): DraftDevice[] => {
    const spec = parts[fitted.part];
    if (!spec) return [];
    return [
      {
        id,
        origin: 'vehicle',
        partId: fitted.part,
        spec,
        facts: partFacts(spec),
        given: null,
        board: null,
        seat: null,
        zone: fitted.zone,
        side: fitted.side ?? untoldSide,
        row: null,
        leftOpen: Object.keys(fitted['left-open']),
      },
    ];
  });
}

/** The terminals of a device that have a role, in the order of its part. */
export function terminalsWith({ facts }: DraftDevice, ...roles: readonly TerminalRole[]): readonly string[] {
  return terminalsOf(facts.terminals, ...roles);
}

/** A terminal of a device by its name. */
export function terminalAt({ facts }: DraftDevice, name: string): TerminalSpec | null {
  return facts.terminals[name] ?? null;
}

/** The pair of terminals that a name stands for, `CH1` for `CH1+` and `CH1-`; null where it is none. */
export function pairOf({ facts }: DraftDevice, name: string): readonly [string, string] | null {
  const [plus, minus] = [`${name}+`, `${name}-`];
  return facts.terminals[plus] && facts.terminals[minus] ? [plus, minus] : null;
}

/** The terminals that a name stands for, by their ids: itself, both of a pair, or the first free port of a pattern. */
export function terminalsNamed(
  device: DraftDevice,
  name: string,
  isFree: (terminal: string) => boolean,
): readonly string[] {
  const { terminals } = device.facts;
  const pair = terminals[name] ? null : pairOf(device, name);
  if (pair) return pair.map((one) => `${device.id}.${one}`);
  if (terminals[name] || !isPortPattern(name)) return [`${device.id}.${name}`];
  const port = Object.keys(terminals).find((one) => matchesPattern(name, one) && isFree(one));
  return port === undefined ? [] : [`${device.id}.${port}`];
}
