import { leastBassAwg } from '../../audio/load/bass-lead.ts';
import type { JobLink } from '../../model/content/job.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { isInLineFilter } from '../../model/kinds/index.ts';
import { awgAreaMm2 } from '../../model/tables/awg-sizes.ts';
import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, pairOf, terminalAt } from '../draft/draft-device.ts';
import type { DrivenOutputs } from '../sound/bass-channels.ts';
import { linkRole } from './runs.ts';

/** Areas within a tenth of a per cent are the same, as where an end is prepared. */
const grace = 1.001;

/** Joints into which two conductors are clamped or crimped together; a stud takes a lug of each. */
const holdsTogether: readonly TerminalSpec['joint'][] = [
  'set-screw',
  'screw-clamp',
  'binding-post',
  'blade-tab',
  'plug',
];

/**
 * Joins a proposed jumper between the coils of a speaker, or on to a filter in the lead of another one, to the lead before the terminal where the two do not go into it
 * together: its maker allows one conductor, or less in all than both come to. The sizes are those of their cables, or of
 * the bass lead that the load asks for.
 */
export function joinJumpers(draft: Draft, driven: readonly DrivenOutputs[]): void {
  for (const [id, link] of Object.entries(draft.links)) {
    const device = draft.device(linkEndOf(link.from).device);
    const other = draft.device(linkEndOf(link.to).device);
    if (link.joint) continue;
    const isJumper = device !== null && (other?.id === device.id || isFilterBeside(device, other));
    if (!isJumper || !draft.isProposed('links', id) || linkRole(draft, link) !== 'speaker') continue;
    const loadOhm = driven
      .flatMap(({ outputs }) => outputs)
      .find(({ speakers }) => speakers.some((one) => one.id === device.id))?.loadOhm;
    const shared = sharedEnd(draft, device, id, link);
    if (!shared) continue;
    const areas = [id, shared.trunk].map((one) => areaOf(draft, one, shared.terminals, loadOhm ?? null));
    if (shared.terminals.every((terminal) => takesBoth(terminal, areas))) continue;
    draft.refineLink(
      id,
      { joint: { with: shared.trunk } },
      `joined to ${shared.trunk} before the terminal, which does not take both`,
    );
  }
}

/** True for a filter in the lead of another speaker, which hangs at this one. */
function isFilterBeside({ spec }: DraftDevice, other: DraftDevice | null): boolean {
  return spec.kind === 'speaker' && isInLineFilter(other?.spec);
}

/** The end of a jumper at which another link ends too, the first of these, and the terminals there. */
function sharedEnd(draft: Draft, device: DraftDevice, id: string, { from, to }: JobLink) {
  for (const end of [from, to]) {
    const { terminal } = linkEndOf(end);
    const names = pairOf(device, terminal) ?? [terminal];
    const [trunk] = draft.linksAt(device.id, names[0] ?? terminal).filter((one) => one !== id);
    const terminals = names.flatMap((name) => terminalAt(device, name) ?? []);
    const other = trunk === undefined ? undefined : draft.links[trunk];
    // Of two jumpers the later one is joined to the earlier, and not the other way round.
    if (trunk !== undefined && other && other.joint?.with !== id) return { trunk, terminals };
  }
  return null;
}

/** The area of a conductor of a link (mm2): of its cable, as written, or of a bass lead for the load that goes into the terminal. */
function areaOf(
  draft: Draft,
  id: string,
  terminals: readonly TerminalSpec[],
  loadOhm: number | null,
): number {
  const link = draft.links[id];
  const part = link?.cable === undefined ? undefined : draft.cables[link.cable]?.part;
  const spec = part === undefined ? undefined : draft.around.parts[part];
  const own = spec?.kind === 'cable' ? spec.conductors[link?.conductors?.[0] ?? ''] : undefined;
  const reel = link?.wire === undefined ? undefined : draft.around.parts[link.wire];
  const told =
    own?.size.areaMm2 ?? link?.size?.areaMm2 ?? (reel?.kind === 'wire' ? reel.size.areaMm2 : undefined);
  if (told !== undefined) return told;
  const takes = terminals.flatMap((terminal) => terminal.takes ?? []);
  const leastMm2 = Math.max(0, ...takes.map(({ from }) => from.areaMm2));
  const mostMm2 = Math.min(...takes.map(({ to }) => to.areaMm2));
  const bassAwg = loadOhm === null ? null : leastBassAwg(loadOhm);
  return Math.max(leastMm2, Math.min(mostMm2, bassAwg === null ? 0 : awgAreaMm2(bassAwg)));
}

function takesBoth({ joint, conductors, takes }: TerminalSpec, areas: readonly number[]): boolean {
  if (!holdsTogether.includes(joint)) return true;
  const bothMm2 = areas.reduce((sum, areaMm2) => sum + areaMm2, 0);
  return conductors >= areas.length && (takes === undefined || bothMm2 <= takes.to.areaMm2 * grace);
}
