import { layoutPictures } from '../../../draw/layouts/layout-picture.ts';
import { drawingText } from '../../../draw/surface.ts';
import type { BuildPlan, PlanBoard } from '../../../model/plan/index.ts';
import { printed } from '../../../model/printed/index.ts';
import { shippedMetrics } from '../../site/shipped-metrics.ts';
import type { Writer } from '../../words/written.ts';
import { type ColumnOf, dense, strong, type Table, tableOf } from '../table.ts';

type Found = Pick<PlanBoard, 'proposals'>;
type Proposal = PlanBoard['proposals'][number];

/** A layout drawn beside what it scores. */
export interface LayoutFigure {
  readonly svg: string;
  readonly words: string;
}

/** The layouts that the search found, drawn side by side; none where there is nothing to compare. */
export function layoutFigures(plan: Pick<BuildPlan, 'job'>, board: PlanBoard): LayoutFigure[] {
  return layoutPictures(plan, board, shippedMetrics()).map(({ rank, drawing, unplaced }) => {
    const score = printed('score', board.proposals[rank - 1]?.total ?? 0);
    const missing = unplaced.length > 0 ? `; no room for ${unplaced.join(', ')}` : '';
    const svg = drawingText(drawing, { colours: 'properties' });
    return { svg, words: `Layout ${rank}${rank === 1 ? ', built' : ''}: score ${score}${missing}` };
  });
}

/** What a score is made up of, as the search calls it and as the sheet does. */
const scoreParts = [
  ['length', 'Length'],
  ['crossings', 'Crossings'],
  ['far', 'Led far'],
  ['bends', 'Bends'],
  ['reach', 'Reach'],
  ['wanted', 'Ground leads'],
  ['signalToPower', 'Signal to power'],
  ['facing', 'Ends to exits'],
  ['access', 'Access'],
  ['air', 'Air'],
  ['balance', 'Balance'],
  ['margin', 'Margin'],
  ['heads', 'Heads'],
  ['alignment', 'In line'],
  ['gaps', 'Gaps'],
  ['pairs', 'Pairs'],
  ['companions', 'Ground beside feed'],
] as const;

/** The layouts that the search found, best first, each with the places of its parts. */
export function layoutsTable({ proposals }: Found, write: Writer): Table | null {
  if (proposals.length === 0) return null;
  const ranked = proposals.map((proposal, index) => ({ ...proposal, rank: index + 1 }));
  return dense(
    tableOf(
      'Layouts found, each wired on trial. The first is built',
      ranked,
      [
        { title: 'No.', kind: 'figure', cell: ({ rank }) => strong(String(rank)) },
        ...countColumns(proposals),
        { title: 'Score', kind: 'figure', cell: ({ total }) => printed('score', total) },
        {
          title: `Places: x, y (${write.unit}), turn`,
          kind: 'words',
          cell: (proposal) => placesText(proposal, write),
        },
      ],
      ({ rank }) => String(rank),
    ),
  );
}

/** What goes before the score, in this order; nothing of layouts that no wire was tried in. */
function countColumns(proposals: readonly Proposal[]): ColumnOf<Proposal>[] {
  if (proposals.every(({ wired }) => wired === undefined)) return [];
  const count = (
    title: string,
    of: (wired: NonNullable<Proposal['wired']>) => number,
  ): ColumnOf<Proposal> => ({
    title,
    kind: 'figure',
    cell: ({ wired }) => (wired ? String(of(wired)) : ''),
  });
  return [
    count('Wires without a way', ({ wiresWithoutWay }) => wiresWithoutWay),
    count('Too short', ({ wiresTooShort }) => wiresTooShort),
    count('Cautions', ({ cautions }) => cautions),
  ];
}

function placesText({ placements }: Proposal, write: Writer): string {
  return placements
    .map(({ item, xM, yM, turnDeg }) =>
      [
        item,
        `${write.bare('position', xM).text},`,
        `${write.bare('position', yM).text},`,
        printed('angle', turnDeg),
      ]
        .join(' ')
        .replaceAll(' ', '\u00a0'),
    )
    .join('; ');
}

/** What the score of each layout is made up of, side by side, as far as it is anything. */
export function scoresTable({ proposals }: Found): Table | null {
  const parts = scoreParts.filter(([part]) =>
    proposals.some(({ score }) => Math.abs(score[part] ?? 0) >= 0.005),
  );
  if (parts.length === 0) return null;
  return dense(
    tableOf(
      'What the layouts score, in metres of wire. Fewer wires without a way, then fewer that are too short, then fewer cautions go before a lower score',
      parts,
      [
        { title: 'For', cell: ([, title]) => strong(title) },
        ...proposals.map(({ score }, index) => ({
          title: `No. ${index + 1}`,
          kind: 'figure' as const,
          cell: ([part]: (typeof scoreParts)[number]) => printed('score', score[part] ?? 0),
        })),
      ],
    ),
  );
}
