import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { drawBoardPicture } from '../picture/board-picture.ts';
import { shortName } from '../power/feed-words.ts';
import type { DrawingKind } from './kind.ts';

/** Picture of each finished board in dimetric axonometry after ISO 5456-3: for the cover, and for whoever gets the packet. */
export const picture: DrawingKind = {
  sheet: 'cover',
  openTo: 'everyone',
  unframed: true,
  pages: (plan, metrics) =>
    plan.boards
      .filter(({ placements }) => placements.length > 0)
      .map((board) =>
        drawBoardPicture(plan, metrics, board, {
          id: `picture-${board.id}`,
          title: `${board.title}, finished`,
          subject: board.title,
          documentType: 'Picture',
          description: describe(plan, board),
          scale: null,
          orientation: 'landscape',
          projection: null,
          notes: [],
          paint: () => [],
        }),
      ),
};

/** Thirds of a board, as a place on it is told. */
const thirds = {
  across: ['on the left', 'in the middle', 'on the right'],
  up: ['low', 'half way up', 'high'],
} as const;

/** What is seen, for who hears it read: each part with its place on the board, row by row from the top. */
function describe(
  { items }: Pick<BuildPlan, 'items'>,
  { title, placements, widthM, heightM }: PlanBoard,
): string {
  const third = (share: number): 0 | 1 | 2 => (share < 1 / 3 ? 0 : share < 2 / 3 ? 1 : 2);
  const told = placements
    .map((placement) => {
      const { xM, yM, widthM: wide, depthM: deep } = placement;
      return {
        placement,
        across: third((xM + wide / 2) / widthM),
        up: third((yM + deep / 2) / heightM),
      };
    })
    .toSorted((a, b) => b.up - a.up || a.across - b.across)
    .flatMap(({ placement, across, up }) => {
      const item = items.find(({ id }) => id === placement.item);
      if (!item) return [];
      const raised = placement.raisedM > 0 ? ', raised' : '';
      return [`${shortName(item)} ${thirds.across[across]}, ${thirds.up[up]}${raised}`];
    });
  return `${title} with its parts and looms, seen from the mounting side, from above and from the right. ${told.join('; ')}.`;
}
