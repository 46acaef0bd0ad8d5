import { ratedPointName } from '../../model/operating-points.ts';
import {
  buildPlanSchema,
  type DeviceDrop,
  type PlanConductor,
  type PlanFuse,
  type PlanPower,
  type PlanWire,
} from '../../model/plan/index.ts';
import { fuseForms } from '../../model/tables/fuse-forms.ts';
import { figureCell, lengthCell, listCell, noCell, textCell, wireCell } from '../cells.ts';
import { planTable } from '../table.ts';

const { power, wires } = buildPlanSchema.shape;
const fuse = power.shape.fuses.element.shape;
const conductor = power.shape.conductors.element.shape;
const load = power.shape.loads.element.shape;
const drop = power.shape.drops.element.shape;
const wire = wires.element.shape;
const end = wire.ends.def.items[0].shape;

/** Every fuse: its rating first. */
export const fusesTable = planTable<PlanFuse>({
  id: 'fuses',
  title: 'Fuses',
  rows: (plan) => plan.power.fuses,
  key: ({ id }) => id,
  keyLeaves: [fuse.id],
  columns: [
    {
      id: 'rating',
      title: 'Rating',
      leaves: [fuse.ratingA],
      cell: ({ ratingA }) => (ratingA === null ? noCell : { text: `${ratingA} A`, value: ratingA }),
    },
    {
      id: 'form',
      title: 'Form',
      leaves: [fuse.form],
      cell: ({ form }) => ({ text: fuseForms[form].name, value: form }),
    },
    { id: 'part', title: 'Part', leaves: [fuse.part], cell: ({ part }) => textCell(part) },
    { id: 'holder', title: 'Holder', leaves: [fuse.item], cell: ({ item }) => textCell(item) },
    { id: 'from', title: 'From', leaves: [fuse.from], cell: ({ from }) => textCell(from) },
    { id: 'to', title: 'To', leaves: [fuse.to], cell: ({ to }) => textCell(to) },
    {
      id: 'distance',
      title: 'From its source',
      leaves: [fuse.distanceM],
      cell: ({ distanceM }, look) =>
        distanceM === null ? noCell : lengthCell('from-source', distanceM, look),
    },
    {
      id: 'protects',
      title: 'Protects',
      leaves: [fuse.protects.element],
      cell: ({ protects }) => listCell(protects.toSorted()),
    },
  ],
});

/** A wire, with what it may carry where it is of the supply. */
interface Conductor {
  readonly wire: PlanWire;
  readonly conductor: PlanConductor | undefined;
}

/** An end as it is made and tightened. */
function endCell({ prep, torqueNm }: PlanWire['ends'][number]) {
  return listCell(torqueNm === undefined ? [prep] : [prep, figureCell('torque', torqueNm).text]);
}

/** Every wire: size and length first. */
export const conductorsTable = planTable<Conductor>({
  id: 'conductors',
  title: 'Conductors',
  rows: (plan) => {
    const known = new Map(plan.power.conductors.map((one) => [one.id, one]));
    return plan.wires.map((one) => ({ wire: one, conductor: known.get(one.id) }));
  },
  key: ({ wire: { id } }) => id,
  name: ({ wire: { id, label } }) => (label === '' ? id : `${label}, ${id}`),
  keyLeaves: [wire.id, wire.label],
  columns: [
    {
      id: 'size',
      title: 'Size',
      leaves: [wire.size.shape.label],
      cell: (one) => textCell(one.wire.size.label),
    },
    {
      id: 'length',
      title: 'Length',
      leaves: [wire.lengthM],
      cell: (one, look) => wireCell(one.wire.lengthM, look),
    },
    { id: 'label', title: 'Label', leaves: [wire.label], cell: (one) => textCell(one.wire.label) },
    { id: 'from', title: 'From', leaves: [wire.from], cell: (one) => textCell(one.wire.from) },
    { id: 'to', title: 'To', leaves: [wire.to], cell: (one) => textCell(one.wire.to) },
    { id: 'colour', title: 'Colour', leaves: [wire.colour], cell: (one) => textCell(one.wire.colour) },
    { id: 'part', title: 'Part', leaves: [wire.part], cell: (one) => textCell(one.wire.part) },
    { id: 'cable', title: 'In cable', leaves: [wire.cable], cell: (one) => textCell(one.wire.cable) },
    { id: 'run', title: 'Run', leaves: [wire.run], cell: (one) => textCell(one.wire.run) },
    {
      id: 'may-carry',
      title: 'May carry',
      leaves: [conductor.ampacityA],
      cell: (one) => figureCell('current-allowed', one.conductor?.ampacityA),
    },
    {
      id: 'first-end',
      title: 'Its end at From',
      leaves: [end.prep, end.torqueNm],
      cell: (one) => endCell(one.wire.ends[0]),
    },
    {
      id: 'last-end',
      title: 'Its end at To',
      leaves: [end.prep, end.torqueNm],
      cell: (one) => endCell(one.wire.ends[1]),
    },
  ],
});

/** What a device draws, and what it is left. */
interface Load {
  readonly load: PlanPower['loads'][number];
  readonly drop: DeviceDrop | undefined;
}

/** The load of every device. */
export const loadsTable = planTable<Load>({
  id: 'loads',
  title: 'Loads',
  rows: (plan) =>
    plan.power.loads.map((one) => ({
      load: one,
      drop: plan.power.drops.find(({ item, point }) => item === one.item && point === ratedPointName),
    })),
  key: (one) => one.load.item,
  keyLeaves: [load.item],
  columns: [
    {
      id: 'rated',
      title: 'Current at rated power',
      leaves: [load.ratedA],
      cell: (one) => figureCell('current-carried', one.load.ratedA),
    },
    {
      id: 'music',
      title: 'Current with music',
      leaves: [load.musicA],
      cell: (one) => figureCell('current-carried', one.load.musicA),
    },
    {
      id: 'fuses',
      title: 'Sum of its fuses',
      leaves: [load.fuseA],
      cell: (one) => figureCell('current-carried', one.load.fuseA),
    },
    {
      id: 'voltage',
      title: 'Voltage at rated power',
      leaves: [drop.voltageV],
      cell: (one) => figureCell('voltage', one.drop?.voltageV),
    },
  ],
});
