import type { Draft } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';

/** The one pair of posts of the box that a speaker stands in. */
export interface BoxPosts {
  readonly box: DraftDevice;
  readonly plus: string;
  readonly minus: string;
}

/** The posts at which a run to a speaker ends: the lead from there on is the box's. Null where its box has no single pair. */
export function postsOf(draft: Draft, speaker: DraftDevice): BoxPosts | null {
  const boxes = draft.own.filter(({ seat, spec }) => spec.kind === 'enclosure' && seat === speaker.seat);
  const speakers = draft.own.filter(({ seat, spec }) => spec.kind === 'speaker' && seat === speaker.seat);
  const [box, second] = speaker.seat === null ? [] : boxes;
  if (!box || second || speakers.length !== 1) return null;
  const [plus, ...pluses] = terminalsWith(box, 'coil-positive');
  const [minus, ...minuses] = terminalsWith(box, 'coil-negative');
  if (plus === undefined || minus === undefined || pluses.length + minuses.length > 0) return null;
  return { box, plus, minus };
}

/** The speaker that a device is or, as the box with its posts, stands for; the id itself for any other. */
export function speakerAt(draft: Draft, id: string): string {
  const device = draft.device(id);
  if (device?.spec.kind !== 'enclosure') return id;
  const inside = draft.own.find(({ seat, spec }) => spec.kind === 'speaker' && seat === device.seat);
  return inside && postsOf(draft, inside) ? inside.id : id;
}
