import type { Coil, Wiring } from '../../../lib/audio/load/coil-wiring.ts';

/**
 * How a channel's speakers are joined, as the trade says it: first the coils of each speaker, then the
 * speakers.
 */
export interface BySpeaker {
  readonly coils: 'series' | 'parallel';
  readonly speakers: 'series' | 'parallel';
}

/**
 * The wiring in which the coils of each speaker are joined one way and the speakers another. Groups of one
 * fall away, so that it does for single coils and for one speaker alone. Null where there is no coil.
 */
export function wireBySpeaker(coils: readonly Coil[], how: BySpeaker): Wiring | null {
  const speakers = new Map<string, Wiring[]>();
  for (const { speaker, id } of coils)
    speakers.set(speaker, [...(speakers.get(speaker) ?? []), { kind: 'coil', coil: id }]);
  return group(
    how.speakers,
    [...speakers.values()].flatMap((members) => group(how.coils, members) ?? []),
  );
}

function group(kind: 'series' | 'parallel', members: readonly Wiring[]): Wiring | null {
  return members.length > 1 ? { kind, members } : (members[0] ?? null);
}
