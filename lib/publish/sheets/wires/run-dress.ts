import type { BuildPlan, PlanPass, PlanRun } from '../../../model/plan/index.ts';
import { coveringCuts } from '../../../plan/wiring/runs/runs.ts';
import type { PlanNames } from '../../words/plan-names.ts';
import { spelled } from '../../words/words.ts';
import { none, type Writer } from '../../words/written.ts';
import { dense, groupedTable, strong, type Table, tick } from '../table.ts';

interface Stretch extends PlanPass {
  /** The grommet at the sharp edge where it begins; empty where there is none. */
  readonly grommet: string;
}

/** The stretches of a run, each with the grommet where it begins: of an older plan they stand in the order of its zones. */
function stretchesOf(run: PlanRun, names: PlanNames, write: Writer): Stretch[] {
  const left = [...run.grommets];
  return (run.passes ?? []).map((pass, stretch): Stretch => {
    const at = left.findIndex((one) =>
      one.stretch === undefined ? one.zone === pass.zone : one.stretch === stretch,
    );
    const [grommet] = at < 0 ? [] : left.splice(at, 1);
    if (!grommet) return { ...pass, grommet: '' };
    const lacking = grommet.unmeasured
      ? "the vehicle's own, bore not measured"
      : grommet.own
        ? "the vehicle's own"
        : 'none that fits';
    const part = grommet.part === null ? lacking : names.part(grommet.part);
    const holeM = grommet.holeM ?? (grommet.drilledBefore === undefined ? undefined : grommet.madeForM);
    const hole = holeM === undefined ? '' : `, hole ${write.bore(holeM, 'pilot')}`;
    const drilled = grommet.drilledBefore === undefined ? '' : ', to be drilled';
    const beside = grommet.beside?.length ? `, also ${grommet.beside.join(', ')}` : '';
    return { ...pass, grommet: `${part}${hole}${drilled}${beside}` };
  });
}

/** What covers, holds and guards each run, zone by zone, and why; null where the job has no runs. */
export function dressTable({ runs }: Pick<BuildPlan, 'runs'>, names: PlanNames, write: Writer): Table | null {
  const groups = runs
    .map((run) => ({
      title: `${run.title} (${run.side}): bundle ${write.length('size', run.bundleM).text}`,
      things: stretchesOf(run, names, write),
    }))
    .filter(({ things }) => things.length > 0);
  if (groups.length === 0) return null;
  const table = groupedTable<Stretch>('Dress, way by way, zone by zone', groups, [
    { title: 'Zone', cell: ({ zone }) => strong(spelled(zone)) },
    { title: 'Length', kind: 'figure', cell: ({ lengthM }) => write.wire('way', lengthM).text },
    {
      title: 'Covering',
      kind: 'words',
      cell: ({ covering, reason }) => {
        const name = covering === null ? 'bare' : names.part(covering);
        return reason === 'given' ? name : `${name}${covering === null ? ',' : ':'} ${reason}`;
      },
    },
    {
      title: 'Ties or clips',
      kind: 'words',
      cell: ({ tie, ties }) =>
        ties === 0 ? none : { text: `${ties} x ${tie === null ? 'none that fits' : names.part(tie)}` },
    },
    { title: 'Grommet', kind: 'words', cell: ({ grommet }) => grommet },
    tick('Done'),
  ]);
  return dense(table);
}

/** A length of covering that is cut for a run. */
export interface CoveringPiece {
  readonly run: string;
  readonly title: string;
  readonly part: string;
  readonly lengthM: number;
}

/** Every length of covering to cut: one piece for stretches that follow one another under the same covering. */
export function coveringPieces({ runs }: Pick<BuildPlan, 'runs'>): CoveringPiece[] {
  return runs.flatMap((run) =>
    coveringCuts(run).map(([part, lengthM]) => ({ run: run.id, title: run.title, part, lengthM })),
  );
}
