import type { PlanBoard, PlanRib } from '../../../model/plan/index.ts';
import type { PlanNames } from '../../words/plan-names.ts';
import { counted } from '../../words/words.ts';
import type { Writer } from '../../words/written.ts';
import { dense, strong, type Table, tableOf, tick } from '../table.ts';

const faces = { rear: 'rear', mounting: 'mounting side' } as const;

/** Where each rib of a board runs, by its centre line, how it is made and by what it is fixed; null where it has none. */
export function ribTable(board: PlanBoard, partOf: PlanNames['part'], write: Writer): Table | null {
  if (board.ribs.length === 0) return null;
  return dense(
    tableOf(
      `Ribs, ${board.title}: centre lines, seen from the mounting side`,
      board.ribs,
      [
        { title: 'Rib', cell: ({ id, face }) => strong(id, faces[face]) },
        { title: 'From x', kind: 'figure', cell: ({ from }) => write.length('position', from.xM) },
        { title: 'From y', kind: 'figure', cell: ({ from }) => write.length('position', from.yM) },
        { title: 'To x', kind: 'figure', cell: ({ to }) => write.length('position', to.xM) },
        { title: 'To y', kind: 'figure', cell: ({ to }) => write.length('position', to.yM) },
        { title: 'Width', kind: 'figure', cell: ({ widthM }) => write.short('cut', widthM) },
        { title: 'Height', kind: 'figure', cell: ({ heightM }) => write.short('cut', heightM) },
        { title: 'Made of', cell: (rib) => madeOf(rib) },
        { title: 'Fixed by', cell: (rib) => fixedBy(rib, partOf) },
        tick('Done'),
      ],
      ({ id }) => id,
    ),
  );
}

function madeOf({ sheet, strips, form }: PlanRib): { text: string; beside: string } {
  return { text: counted(strips, 'strip'), beside: `${sheet}, ${form === 'flat' ? 'flat' : 'on edge'}` };
}

function fixedBy(
  { screw, joint, glue }: PlanRib,
  partOf: PlanNames['part'],
): { text: string; beside?: string } {
  const screws = screw ? counted(screw.count, 'screw') : 'no screw of the catalogue';
  const parts = [...(screw ? [partOf(screw.part)] : []), ...(glue ? [partOf(glue)] : [])];
  return {
    text: joint === 'glued' ? `glue, ${screws}` : screws,
    ...(parts.length > 0 ? { beside: parts.join('; ') } : {}),
  };
}
