import type { ProposalDoubt, WrittenValue } from '../../model/content/proposal.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { BuildPlan, PlanBoard, PlanPlacement, PlanWire } from '../../model/plan/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';

/** What of a job can be kept by itself. */
export const keptKinds = ['places', 'ports', 'links', 'settings', 'labels'] as const;
export type KeptKind = (typeof keptKinds)[number];

/** One thing that a job leaves out, as its file would say it. */
export interface KeptValue {
  readonly kind: KeptKind;
  /** Key by key from the top of the file. */
  readonly path: readonly string[];
  readonly value: WrittenValue;
  /** What it left to be looked at: once it is written, no finding asks any more. */
  readonly doubt?: ProposalDoubt;
}

/** What of a job its kept values are taken from. */
type KeptJob = Pick<Job, 'links' | 'shop' | 'boards'>;

/**
 * All that a job leaves out and its plan proposes, each as the job file would say it: what rules proposed, then the ports,
 * places, settings and labels that the plan came to. In this order: what comes later says more of what stands before it.
 */
export function keptValues(job: KeptJob, plan: BuildPlan): readonly KeptValue[] {
  return [
    ...(plan.proposals ?? []).map(({ path, says, doubt }): KeptValue => {
      return { kind: keptKindOf(path), path, value: JSON.parse(says), ...(doubt && { doubt }) };
    }),
    ...keptPorts(job, plan.wires),
    ...plan.boards.flatMap((board) => keptPlaces(job, board)),
    ...keptSettings(plan),
    ...keptLabels(job, plan.wires),
  ];
}

/** Of what kind something is that a rule proposed, by where the job file would say it. */
export function keptKindOf([section, , field]: readonly string[]): KeptKind {
  if (section === 'boards') return 'places';
  // Which ends an input has decides what its links name.
  if (field === 'speaker-level' || field === 'summed-inside') return 'links';
  return section === 'devices' && field !== undefined ? 'settings' : 'links';
}

/** The port of each end that leaves open which of several it takes. */
function keptPorts({ links }: KeptJob, wires: readonly PlanWire[]): readonly KeptValue[] {
  return links.flatMap((link) =>
    (link.open ?? []).flatMap(({ end }): KeptValue[] => {
      const wire = wires.find(({ id }) => id === link.id);
      return wire ? [{ kind: 'ports', path: ['links', linkName(link.id), end], value: wire[end] }] : [];
    }),
  );
}

/** Where a board and all that stands on it was placed, and the sheet that the board is cut from. */
function keptPlaces({ boards, shop }: KeptJob, board: PlanBoard): readonly KeptValue[] {
  const text = (lengthM: number) => tapeText(lengthM, shop.units);
  const at = ({ xM, yM }: { readonly xM: number; readonly yM: number }) => ({ x: text(xM), y: text(yM) });
  const given = boards.find(({ id }) => id === board.id)?.given;
  const value = (path: readonly string[], one: WrittenValue): KeptValue => ({
    kind: 'places',
    path,
    value: one,
  });
  const own = ['boards', board.id];
  return [
    ...(board.sheetChosen === 'computed' ? [value([...own, 'sheet'], board.sheet)] : []),
    ...(given && !given.at ? [value([...own, 'at'], at(board.datumInSpace))] : []),
    ...board.placements
      .filter(({ chosen }) => chosen === 'computed')
      .flatMap((placement: PlanPlacement): KeptValue[] => {
        const device = ['devices', placement.item];
        return [
          value([...device, 'at'], at(placement)),
          ...(placement.turnDeg === 0 ? [] : [value([...device, 'turn'], placement.turnDeg)]),
          ...(placement.raisedM === 0 ? [] : [value([...device, 'raised'], text(placement.raisedM))]),
        ];
      }),
  ];
}

/** How each control stands before first power-up. */
function keptSettings({ controls }: Pick<BuildPlan, 'controls'>): readonly KeptValue[] {
  return controls.flatMap(({ item, control, preset, chosen }): KeptValue[] =>
    chosen === 'given'
      ? []
      : [{ kind: 'settings', path: ['devices', item, 'settings', control], value: preset }],
  );
}

/** The label of each link; none where its conductors do not share one. */
function keptLabels({ links }: KeptJob, wires: readonly PlanWire[]): readonly KeptValue[] {
  const own = links.filter(({ origin, given }) => origin === 'job' && given?.label === undefined);
  const names = [...new Set(own.map(({ id }) => linkName(id)))];
  return names.flatMap((name): KeptValue[] => {
    const labels = wires.filter(({ link }) => link === name).map(labelStem);
    const [label, ...others] = new Set(labels);
    const isOne = label !== undefined && label !== '' && others.length === 0;
    return isOne ? [{ kind: 'labels', path: ['links', name, 'label'], value: label }] : [];
  });
}

/** A label without the sign of its conductor, which is put to it anew. */
function labelStem({ label, sign }: PlanWire): string {
  return sign && label.endsWith(sign) ? label.slice(0, -sign.length) : label;
}
