import type { Board } from '../../model/content/resolved-job.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { partOf } from '../look-up.ts';
import type { Case } from '../rule.ts';

/** A fixing of a board as written, with its part and its point looked up. */
export interface BoardFixing {
  readonly board: Board;
  readonly id: string;
  /** Its part in the catalogue. */
  readonly partId: string;
  readonly part: PartOf<'fixing'>;
  readonly point: string;
  readonly spot: VehicleSpace['sound-points'][string];
  readonly spacerM: number;
  readonly path: string;
}

/** Every fixing of the boards whose part and point are known: of a bolt that was proposed, the one that suits the sheet. */
export function fixingsOf({ job, plan }: Case): readonly BoardFixing[] {
  return job.boards.flatMap((board) =>
    Object.entries(board.given.fixings).flatMap(([id, { fixing: written, point, spacer }]): BoardFixing[] => {
      const planned = plan.boards.find((one) => one.id === board.id)?.fixings;
      const fixing = planned?.find((one) => one.id === id)?.part ?? written;
      const part = partOf(job, fixing);
      const spot = board.space['sound-points'][point];
      if (part?.kind !== 'fixing' || !spot) return [];
      const path = pointer(['boards', board.id, 'fixings', id]);
      return [{ board, id, partId: fixing, part, point, spot, spacerM: spacer ?? 0, path }];
    }),
  );
}

/** What a fixing lacks to go into the thread of its point, in words; null where nothing. */
export function misfit({ part: { form, thread }, spot: { stud } }: BoardFixing): string | null {
  if (form === 'wood-screw') return 'is a wood screw, which has no hold in a thread';
  if (form !== 'bolt' && form !== 'machine-screw')
    return `is a ${form.replace('-', ' ')}, which does not go through a board into a thread`;
  if (thread === undefined) return 'does not tell its thread';
  return thread === stud ? null : `has the thread ${thread}`;
}
