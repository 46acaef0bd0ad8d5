import { type Side, type TurnDeg, turnedSide } from '../../board/layout/item.ts';
import type { BuildPlan, PlanControl, PlanItem } from '../../model/plan/index.ts';
import type { OffStop } from '../../model/vocabulary.ts';

/** A control as its panel shows it. */
export interface PanelControl {
  readonly set: PlanControl;
  /** `knob`, `switch`, `slide` or `menu`. */
  readonly form: string;
  /** Names of its positions; none for one that turns or slides freely. */
  readonly positions: readonly string[];
  /** The stop at which its OFF lies, of a knob that has one. */
  readonly off?: OffStop | undefined;
}

/** One panel of a device, or its menu: the controls from left to right as one sees them facing it. */
export interface PanelStrip {
  readonly item: PlanItem;
  /** `left panel`, `face` or `menu`. */
  readonly panel: string;
  /** True for what is set in a menu: it is no surface of the part. */
  readonly isMenu: boolean;
  /** How it lies on its board, in words. */
  readonly lies: string;
  readonly controls: readonly PanelControl[];
}

const places = ['left', 'top', 'right', 'bottom', 'face', 'menu'] as const;
type Place = (typeof places)[number];

/** Every panel of the job that has controls, device by device in the order of the plan. */
export function panelStrips(plan: Pick<BuildPlan, 'items' | 'controls' | 'boards'>): PanelStrip[] {
  const placements = new Map(plan.boards.flatMap(({ placements: own }) => own.map((one) => [one.item, one])));
  return plan.items.flatMap((item) => {
    const own = plan.controls.filter((control) => control.item === item.id);
    const turn = turnOf(placements.get(item.id)?.turnDeg);
    return places.flatMap((place): PanelStrip[] => {
      const controls = own.map((set) => asSeen(item, set)).filter((one) => placeOf(one) === place);
      if (controls.length === 0) return [];
      const facing = facingWords(place, turn);
      return [
        {
          ...{ item, panel: panelName(place), isMenu: place === 'menu', lies: facing },
          controls: fromTheLeft(place, controls),
        },
      ];
    });
  });
}

function asSeen({ controls }: PlanItem, set: PlanControl): PanelControl {
  const known = controls.find(({ name }) => name === set.control);
  return { set, form: known?.form ?? 'menu', positions: known?.positions ?? [], off: known?.off };
}

function placeOf({ form, set }: PanelControl): Place {
  return form === 'menu' ? 'menu' : set.panel;
}

function panelName(place: Place): string {
  return place === 'face' || place === 'menu' ? place : `${place} panel`;
}

/**
 * Places along a panel count upwards and to the right as the part is seen from above; to one who faces a left or
 * a top panel, with the board as the ground, they run the other way.
 */
function fromTheLeft(place: Place, controls: readonly PanelControl[]): readonly PanelControl[] {
  const inOrder = controls.toSorted((a, b) => a.set.order - b.set.order);
  return place === 'left' || place === 'top' ? inOrder.toReversed() : inOrder;
}

/** What lies at the left hand of one who faces a panel that looks to a side of the board. */
const leftHand: Readonly<Record<Side, string>> = {
  left: 'top',
  top: 'right edge',
  right: 'bottom',
  bottom: 'left edge',
};

function facingWords(place: Place, turnDeg: TurnDeg | null): string {
  if (place === 'menu') return 'set by its software';
  if (turnDeg === null) return 'seen facing it';
  if (place === 'face') return 'looks off the board';
  const side = turnedSide(place, turnDeg);
  const way = { left: 'left', right: 'right', top: 'up', bottom: 'down' }[side];
  return `looks ${way} on the board; seen facing it, its left end towards the ${leftHand[side]} of the board`;
}

function turnOf(turnDeg: number | undefined): TurnDeg | null {
  if (turnDeg === undefined) return null;
  const quarter = ((Math.round(turnDeg / 90) % 4) + 4) % 4;
  return quarter === 0 ? 0 : quarter === 1 ? 90 : quarter === 2 ? 180 : 270;
}
