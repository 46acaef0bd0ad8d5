import { type BuildPlan, buildPlanSchema, type PlanItem } from '../../model/plan/index.ts';
import { listCell, textCell } from '../cells.ts';
import { planTable } from '../table.ts';

const { job, vehicle, items } = buildPlanSchema.shape;
const item = items.element.shape;

/** What is said of the whole job. */
export const jobTable = planTable<BuildPlan>({
  id: 'job',
  title: 'Job',
  rows: (plan) => [plan],
  key: () => 'job',
  keyLeaves: [],
  columns: [
    { id: 'title', title: 'Title', leaves: [job.shape.title], cell: (plan) => textCell(plan.job.title) },
    {
      id: 'vehicle',
      title: 'Vehicle',
      leaves: [vehicle.shape.id, vehicle.shape.title],
      cell: ({ vehicle: { id, title } }) => ({ text: title, value: id, exact: `${id} ${title}` }),
    },
    {
      id: 'fabricator',
      title: 'Fabricator',
      leaves: [job.shape.fabricator],
      cell: (plan) => textCell(plan.job.fabricator),
    },
    {
      id: 'drawn-by',
      title: 'Drawn by',
      leaves: [job.shape.drawnBy],
      cell: (plan) => textCell(plan.job.drawnBy),
    },
    {
      id: 'approved-by',
      title: 'Approved by',
      leaves: [job.shape.approvedBy],
      cell: (plan) => textCell(plan.job.approvedBy),
    },
    {
      id: 'notes',
      title: 'Notes',
      leaves: [job.shape.notes.element],
      cell: (plan) => textCell(plan.job.notes.join(' ')),
    },
  ],
});

/** Every device: which part it is, and where it stands. */
export const partsTable = planTable<PlanItem>({
  id: 'parts',
  title: 'Parts',
  rows: (plan) => plan.items,
  key: ({ id }) => id,
  keyLeaves: [item.id],
  columns: [
    {
      id: 'part',
      title: 'Part',
      leaves: [item.part, item.partTitle],
      cell: ({ part, partTitle }) => ({ text: partTitle, value: part, exact: `${part} ${partTitle}` }),
    },
    { id: 'title', title: 'Title', leaves: [item.title], cell: ({ title }) => textCell(title) },
    {
      id: 'stands',
      title: 'Stands',
      leaves: [item.board, item.seat, item.seatTitle],
      cell: ({ board, seat, seatTitle }) => {
        const text = board ?? seatTitle ?? seat;
        return text === null
          ? textCell(null)
          : { text, value: board ?? seat, exact: `${board} ${seat} ${seatTitle}` };
      },
    },
    {
      id: 'in-vehicle',
      title: 'In the vehicle',
      leaves: [item.zone, item.side],
      cell: ({ zone, side }) => listCell([zone, side]),
    },
    { id: 'held', title: 'Held by', leaves: [item.held], cell: ({ held }) => textCell(held) },
  ],
});
