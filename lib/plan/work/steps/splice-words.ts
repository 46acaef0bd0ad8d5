import { linkEndOf } from '../../../model/content/resolved-job.ts';
import type { PlanJoint, PlanWire } from '../../../model/plan/index.ts';
import { shownTerminal } from '../../../model/plan/shown-names.ts';
import { lengthText, type Work } from '../work.ts';

/** The joints of some wires, to others and to leads that are there, as the step tells in which their ends are made; empty where they have none. */
export function jointsText(work: Work, wires: readonly PlanWire[]): string {
  const joints = jointsOf(work, wires).map((joint) => jointText(work, joint));
  const before = joints.length > 0 ? `; first join ${joints.join(', ')}` : '';
  const atLeads = leadsText(work, wires);
  if (before === '' && atLeads === '') return '';
  return `${before}${atLeads}; sleeve closed over the insulation, both labelled`;
}

/** What is done with them. */
export function jointActs(work: Work, wires: readonly PlanWire[]): readonly string[] {
  return [
    ...jointsOf(work, wires).map(({ id }) => `join:${id}`),
    ...leadEnds(wires).map(({ id, terminal }) => `join:${id} ${terminal}`),
    ...cutAt(wires).map((terminal) => `cap:${terminal}`),
  ];
}

const leadForms = {
  'supplied-lead': "join to the maker's own lead",
  tap: 'open the lead at the plug and join to it',
  'cut-lead': 'cut the lead a hand behind the plug and join to the end at the plug',
} as const;

/** What is done where one of the two is too thin for its barrel of the splice. */
const foldedTexts = {
  lead: ', the lead stripped twice as far and folded back on itself so that it fills its barrel',
  wire: ', the wire stripped twice as far and folded back on itself so that it fills its barrel',
} as const;

/** Ends that are joined to a lead, each with its wire. */
function leadEnds(wires: readonly PlanWire[]) {
  return wires.flatMap(({ id, label, ends }) =>
    ends.flatMap(({ terminal, form, part, folded }) =>
      form === 'supplied-lead' || form === 'tap' || form === 'cut-lead'
        ? [{ id, label, terminal, form, part, folded }]
        : [],
    ),
  );
}

/** What is joined to leads, by what it is joined to and by which splice: `; join to the maker's own lead by splice-18: L1+ at amp.IN1+`. */
function leadsText({ plan }: Work, wires: readonly PlanWire[]): string {
  const groups = new Map<string, string[]>();
  for (const { label, terminal, form, part, folded } of leadEnds(wires)) {
    const how = `${leadForms[form]} by ${part ?? 'a splice that takes both'}${folded ? foldedTexts[folded] : ''}`;
    groups.set(how, [...(groups.get(how) ?? []), `${label} at ${markedTerminal(plan, terminal)}`]);
  }
  return `${[...groups].map(([how, ends]) => `; ${how}: ${ends.join(', ')}`).join('')}${leftText(cutAt(wires).map((one) => markedTerminal(plan, one)))}`;
}

/** A terminal by its name, and by what is printed at it where that is another word: `source-unit.FL+ (5)`. */
function markedTerminal({ items }: Work['plan'], id: string): string {
  const { device, terminal } = linkEndOf(id);
  const mark = shownTerminal(
    items.find((one) => one.id === device),
    terminal,
  );
  return mark === terminal ? id : `${id} (${mark})`;
}

/** The terminals whose leads are cut: behind each an old wire is left. */
function cutAt(wires: readonly PlanWire[]): readonly string[] {
  return leadEnds(wires).flatMap(({ form, terminal }) => (form === 'cut-lead' ? [terminal] : []));
}

/** What becomes of the old wires behind leads that are cut; empty where none is. */
function leftText(terminals: readonly string[]): string {
  if (terminals.length === 0) return '';
  return `; the old wire behind each cut, to the speaker that the vehicle came with, stays where it lies: cap each by itself, tie it back and label it OLD with the mark of its lead: ${terminals.join(', ')}`;
}

function jointsOf({ plan: { joints = [] } }: Work, wires: readonly PlanWire[]): readonly PlanJoint[] {
  return joints.filter(({ id }) => wires.some((wire) => wire.id === id));
}

function jointText(work: Work, { label, trunkLabel, terminal, distanceM, part, at }: PlanJoint): string {
  const farM = lengthText(work, 'measured', distanceM);
  const where =
    at === undefined ? `${farM} before ${terminal}` : `at ${at}, ${farM} along it from ${terminal},`;
  return `${label} to ${trunkLabel} ${where} by ${part ?? 'a splice that takes both'}`;
}
