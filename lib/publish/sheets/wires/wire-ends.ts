import type { BuildPlan, WireEnd } from '../../../model/plan/index.ts';
import { printedMade } from '../../../model/printed/holes.ts';
import { printed } from '../../../model/printed/index.ts';
import { type Gauge, gaugeOf } from '../../page/strip-gauge.ts';
import { namesOf, type PlanNames } from '../../words/plan-names.ts';
import { spelled } from '../../words/words.ts';
import { lengthOr, none, type Writer, writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { type Cell, dense, groupedTable, groupsBy, strong, type Table, type Tick, ticks } from '../table.ts';

/** Every end that is made up, those of one kind together, with a gauge to hold them against. */
export interface WireEndsSheet {
  readonly ends: Table;
  readonly gauge: Gauge;
}

interface End extends WireEnd {
  readonly wire: string;
  /** `P3 A`. */
  readonly mark: string;
  readonly size: string;
}

/** Ends of one kind: one terminal, one size, one strip length, one torque. */
interface Kind {
  readonly first: End;
  readonly ends: readonly End[];
}

function endsOf(plan: BuildPlan): End[] {
  return plan.wires
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ id, label, size, ends }) =>
      ends.map((end, index) => ({
        ...end,
        wire: id,
        mark: `${label} ${index === 0 ? 'A' : 'B'}`,
        size: size.label,
      })),
    );
}

function kindsOf(ends: readonly End[], write: Writer): Kind[] {
  const key = (end: End): string =>
    [
      end.prep,
      end.part,
      end.size,
      lengthOr(end.stripM, (lengthM) => write.length('strip', lengthM)).text,
      end.torqueNm,
      end.shrink?.part,
      end.die,
      end.stud,
    ].join('|');
  return groupsBy(ends, key)
    .flatMap(({ things }): Kind[] => {
      const [first] = things;
      return first === undefined ? [] : [{ first, ends: things }];
    })
    .sort((a, b) => (a.first.prep < b.first.prep ? -1 : Number(a.first.prep > b.first.prep)));
}

function endTick(end: End): Tick {
  return { text: end.mark, strong: true, subject: end.wire };
}

function studCell({ stud, holeM }: End): Cell {
  if (stud === undefined) return none;
  return holeM === undefined ? { text: stud } : { text: stud, beside: printedMade(holeM) };
}

/** What an end of this kind is made up with: the part from the shelf, the die that crimps it, what goes over it. */
function kindText({ prep, part, die, shrink }: End, names: PlanNames, write: Writer): string {
  const terminal = part === null ? spelled(prep) : names.part(part);
  const crimped = die === undefined ? '' : `; die ${die}`;
  if (shrink === undefined) return `${terminal}${crimped}`;
  const over =
    shrink.part === null
      ? 'no heat-shrink that fits'
      : `${write.length('covered', shrink.lengthM).text} of ${names.part(shrink.part)}`;
  return `${terminal}${crimped}; ${over}`;
}

function endsTable(kinds: readonly Kind[], names: PlanNames, write: Writer): Table {
  return dense(
    groupedTable(
      'Ends, those of one kind together',
      groupsBy(kinds, ({ first }) => kindText(first, names, write)),
      [
        { title: 'Wire', cell: ({ first }) => strong(first.size) },
        {
          title: 'Strip',
          kind: 'figure',
          cell: ({ first }) => lengthOr(first.stripM, (lengthM) => write.length('strip', lengthM)).text,
        },
        {
          title: 'Torque',
          kind: 'figure',
          leads: true,
          cell: ({ first }) => (first.torqueNm === undefined ? none : printed('torque', first.torqueNm)),
        },
        { title: 'Stud, hole', cell: ({ first }) => studCell(first) },
        { title: 'Ends', kind: 'words', cell: ({ ends }) => ticks(ends.map(endTick)) },
      ],
    ),
  );
}

function endsModel(plan: BuildPlan): WireEndsSheet | null {
  const ends = endsOf(plan);
  if (ends.length === 0) return null;
  const write = writerFor(plan.shop);
  const stripsM = ends.flatMap(({ stripM }) => (stripM === null ? [] : [stripM]));
  return {
    ends: endsTable(kindsOf(ends, write), namesOf(plan), write),
    gauge: gaugeOf(stripsM, (lengthM) => write.length('strip', lengthM).text),
  };
}

export const wireEnds = builderSheet('wire-ends', 'Terminals and heat-shrink', endsModel);
