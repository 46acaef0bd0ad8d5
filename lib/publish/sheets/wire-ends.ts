import type { BuildPlan, WireEnd } from '../../model/plan/index.ts';
import { type Gauge, gaugeOf } from '../gauge.ts';
import { namesOf, type PlanNames } from '../plan-names.ts';
import { lengthOr, measure, none, type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { type Cell, groupsBy, strong, type Table, type Tick, tableOf, ticks } from './table.ts';

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
      lengthOr(end.stripM, write.length).text,
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
  return holeM === undefined ? { text: stud } : { text: stud, beside: measure(holeM * 1000, 'mm', 1) };
}

function shrinkCell({ shrink }: End, names: PlanNames, write: Writer): Cell {
  if (shrink === undefined) return none;
  if (shrink.part === null) return { text: 'none that fits' };
  return { text: names.part(shrink.part), beside: write.length(shrink.lengthM).text };
}

function endsTable(kinds: readonly Kind[], names: PlanNames, write: Writer): Table {
  return tableOf('Ends, those of one kind together', kinds, [
    {
      title: 'Terminal',
      kind: 'words',
      cell: ({ first }) => strong(first.prep, first.part === null ? undefined : names.part(first.part)),
    },
    { title: 'Wire', cell: ({ first }) => first.size },
    { title: 'Strip', kind: 'figure', cell: ({ first }) => lengthOr(first.stripM, write.length).text },
    {
      title: 'Torque',
      kind: 'figure',
      cell: ({ first }) => (first.torqueNm === undefined ? none : measure(first.torqueNm, 'N m', 1)),
    },
    { title: 'Stud, hole', cell: ({ first }) => studCell(first) },
    { title: 'Heat-shrink', kind: 'words', cell: ({ first }) => shrinkCell(first, names, write) },
    { title: 'Die', cell: ({ first }) => first.die ?? '' },
    { title: 'Ends', cell: ({ ends }) => ticks(ends.map(endTick)) },
  ]);
}

function endsModel(plan: BuildPlan): WireEndsSheet | null {
  const ends = endsOf(plan);
  if (ends.length === 0) return null;
  const write = writerFor(plan.shop);
  const stripsM = ends.flatMap(({ stripM }) => (stripM === null ? [] : [stripM]));
  return {
    ends: endsTable(kindsOf(ends, write), namesOf(plan), write),
    gauge: gaugeOf(stripsM, (lengthM) => write.length(lengthM).text),
  };
}

export const wireEnds = builderSheet('wire-ends', 'Terminals and heat-shrink', endsModel);
