import { strokeObstacles } from '../drawn-strokes.ts';
import type { Obstacle } from '../lettering/obstacle-index.ts';
import { type TextLabel, textObstacles } from '../lettering/view-labels.ts';
import { types } from '../line-styles.ts';
import { grown } from '../paper.ts';
import { shortName } from '../power/feed-words.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import type { ItemOnBoard } from './item-on-board.ts';
import { fanNames } from './name-fan.ts';
import type { OutsideNames } from './panel-lettering.ts';
import type { BoardScene } from './scaled-sheet.ts';

/** What of an item found no room inside it. */
export interface ItemLettering {
  readonly onBoard: ItemOnBoard;
  readonly outside: readonly OutsideNames[];
  /** Whether its own name did. */
  readonly named: boolean;
}

/** The items themselves as obstacles: a leader goes outwards and does not run across one. */
export function bodiesOf(items: readonly ItemOnBoard[]): Obstacle[] {
  return items.map(({ item, box }) => ({ id: bodyOf(item.id), box: grown(box, -0.3) }));
}

function bodyOf(item: string): string {
  return `body ${item}`;
}

/** Fans the names out beside their items; what finds no room there, and the items' own names, become labels. */
export function letterOutside(
  drawing: Drawing,
  { room }: BoardScene,
  items: readonly ItemOnBoard[],
  lettered: readonly ItemLettering[],
  linesOf?: (text: string) => readonly string[],
): TextLabel[] {
  const group = openGroup(drawing, drawing.svg, 'names');
  const far = { over: items.map(({ item }) => bodyOf(item.id)) };
  const fixed = [...bodiesOf(items), ...strokeObstacles(drawing)];
  return lettered.flatMap(({ onBoard, outside, named }): TextLabel[] => {
    const { id } = onBoard.item;
    const loose = outside.flatMap((names) => {
      const obstacles = [...fixed, ...textObstacles(drawing)];
      return fanNames(drawing, openSubject(drawing, group, id), names, obstacles, room);
    });
    const labels = loose.map(({ ids, text, anchors }): TextLabel => {
      const texts = linesOf?.(text) ?? [text];
      const oblique = linesOf !== undefined;
      return {
        ...{ id: ids.join(' '), lines: texts, type: types.terminal, anchors, own: [id, bodyOf(id)] },
        ...{ subject: id, oblique, within: oblique ? [bodyOf(id)] : [] },
        ...(oblique && { far }),
      };
    });
    return named ? labels : [...labels, nameLabel(onBoard, linesOf === undefined ? null : far)];
  });
}

/** The name of an item beside it: small, and with no leader that runs level or upright, where wires are drawn. */
function nameLabel({ item, box }: ItemOnBoard, far: TextLabel['far'] | null): TextLabel {
  const amongWires = far !== null;
  return {
    id: `name ${item.id}`,
    lines: [shortName(item)],
    type: amongWires ? types.terminal : types.item,
    anchors: [box],
    own: [item.id, bodyOf(item.id)],
    subject: item.id,
    oblique: amongWires,
    ...(amongWires && { far }),
    within: amongWires ? [bodyOf(item.id)] : [],
  };
}
