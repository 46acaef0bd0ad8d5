import type { PlanNames } from '../../words/plan-names.ts';
import { counted } from '../../words/words.ts';
import { none, type Writer } from '../../words/written.ts';
import { type Group, groupedTable, groupsBy, strong, type Table, tick } from '../table.ts';
import { longestFirst, type Piece } from './piece.ts';

/** What has no ends to make up has no boxes for them. */
function endless({ ends: [, other] }: Piece): string {
  return other === null ? none.text : '';
}

/** What is cut, reel by reel, the longest first. */
export function cutsTable(pieces: readonly Piece[], names: PlanNames, write: Writer): Table {
  const groups = groupsBy(
    [...longestFirst(pieces)].sort((a, b) => (a.reel < b.reel ? -1 : Number(a.reel > b.reel))),
    ({ reel }) => reel,
  ).map(({ title, things }): Group<Piece> => {
    const totalM = things.reduce((sum, piece) => sum + piece.lengthM, 0);
    const name = title === none.text || title === null ? 'No reel chosen' : names.part(title);
    return {
      title: `${name}: ${counted(things.length, 'piece')}, ${write.wire('length-taken', totalM).text} altogether`,
      things,
    };
  });
  return groupedTable(
    'Cut, reel by reel, the longest first',
    groups,
    [
      { title: 'Label', cell: (piece) => strong(piece.label) },
      {
        title: 'Cut to',
        kind: 'figure',
        leads: true,
        cell: ({ lengthM, cutAs }) => strong(write.wire('wire', lengthM).text, cutAs ?? undefined),
      },
      { title: 'End A', cell: ({ ends: [text, other] }) => ({ text, wide: other === null }) },
      { title: 'End B', cell: ({ ends }) => ends[1] ?? '' },
      tick('Cut'),
      tick('A', endless),
      tick('B', endless),
      tick('Pull-test', endless),
      tick('Label'),
    ],
    ({ subject }) => subject,
  );
}
