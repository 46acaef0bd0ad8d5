import { type Fault, faultOf, isPositive } from '../../model/fault.ts';

/** One voice coil. */
export interface Coil {
  /** Unique in its job, such as `sub-left.coil-1`. */
  readonly id: string;
  /** The speaker it belongs to; a dual-coil speaker has two coils. */
  readonly speaker: string;
  /** The catalogue entry of the speaker: coils of one part and one nominal load are interchangeable. */
  readonly part?: string;
  readonly nominalOhm: number;
  /** Direct-current resistance from the maker's data, left out where the part doesn't carry it. */
  readonly dcOhm?: number;
  /** Left out where its maker is silent. */
  readonly inductanceH?: number;
  /** A filter in its lead, which keeps bass from it alone. */
  readonly inLine?: { readonly fromHz: number; readonly order: number };
}

/** How coils are joined: a coil, or a group of two or more of these in series or in parallel. */
export type Wiring =
  | { readonly kind: 'coil'; readonly coil: string }
  | { readonly kind: 'series' | 'parallel'; readonly members: readonly Wiring[] };

export type WiringFaultName =
  | 'channel-without-speaker'
  | 'coil-load-unknown'
  | 'coil-id-twice'
  | 'coil-unknown'
  | 'coil-wired-twice'
  | 'coil-left-open'
  | 'group-too-small';
export type WiringFault = Fault<WiringFaultName>;

/** The coils of a wiring in the order in which they stand in it. */
export function coilsOf(wiring: Wiring): readonly string[] {
  return wiring.kind === 'coil' ? [wiring.coil] : wiring.members.flatMap(coilsOf);
}

/** The wiring in one line: `parallel(series(a, b), c)`. */
export function wiringText(wiring: Wiring): string {
  if (wiring.kind === 'coil') return wiring.coil;
  return `${wiring.kind}(${wiring.members.map(wiringText).join(', ')})`;
}

function groupFault(wiring: Wiring): WiringFault | null {
  if (wiring.kind === 'coil') return null;
  if (wiring.members.length < 2)
    return faultOf(
      'group-too-small',
      coilsOf(wiring),
      `a group in ${wiring.kind} has ${wiring.members.length} member; it takes two or more`,
      'name the coils or groups that are joined, or leave the group out',
    );
  for (const member of wiring.members) {
    const fault = groupFault(member);
    if (fault) return fault;
  }
  return null;
}

function coilSetFault(coils: readonly Coil[]): WiringFault | null {
  const seen = new Set<string>();
  for (const { id, speaker, nominalOhm } of coils) {
    if (seen.has(id))
      return faultOf('coil-id-twice', [id], `two coils are called ${id}`, 'give each coil an id of its own');
    seen.add(id);
    if (!isPositive(nominalOhm))
      return faultOf(
        'coil-load-unknown',
        [id, speaker],
        `the nominal load of coil ${id} of ${speaker} is not a load above 0 ohm`,
        "write the coil's nominal load in the part, such as 4 ohm",
      );
  }
  return null;
}

/**
 * What keeps `wiring` from joining exactly `coils`, each one once; null where nothing does. `channel` names
 * the channel in the message.
 */
export function wiringFault(
  channel: string,
  wiring: Wiring | null,
  coils: readonly Coil[],
): WiringFault | null {
  if (coils.length === 0 || wiring === null)
    return faultOf(
      'channel-without-speaker',
      [channel],
      `channel ${channel} has no speaker`,
      'link a speaker to it, or leave it open with a reason',
    );
  return coilSetFault(coils) ?? groupFault(wiring) ?? namingFault(channel, wiring, coils);
}

/** Each coil of the channel must stand in the wiring once, and no other. */
function namingFault(channel: string, wiring: Wiring, coils: readonly Coil[]): WiringFault | null {
  const wired = new Set<string>();
  const known = new Set(coils.map((coil) => coil.id));
  for (const id of coilsOf(wiring)) {
    if (!known.has(id))
      return faultOf(
        'coil-unknown',
        [id, channel],
        `channel ${channel} asks for coil ${id}, which is not on it`,
        'name a coil of its speakers',
      );
    if (wired.has(id))
      return faultOf(
        'coil-wired-twice',
        [id, channel],
        `coil ${id} stands twice in the wiring of channel ${channel}`,
        'let each coil stand once',
      );
    wired.add(id);
  }
  const open = coils.filter((coil) => !wired.has(coil.id)).map((coil) => coil.id);
  if (open.length === 0) return null;
  return faultOf(
    'coil-left-open',
    [...open, channel],
    `channel ${channel} leaves ${open.join(', ')} open: an open coil of a speaker takes no power and moves with the others`,
    'wire every coil of the speaker, or close its coils as the maker of the speaker says',
  );
}
