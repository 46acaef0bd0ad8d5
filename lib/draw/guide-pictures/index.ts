import { type GuidePicture, guidePictures } from '../../model/writing/guide-pictures.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type Drawing, drawingText, layPaper, openDrawing } from '../surface.ts';
import { boardWays, cutWays, ribWays, turnWays } from './board-pictures.ts';
import { channelWays, footprintWays, panelWays } from './part-pictures.ts';
import { type Sketch, sketchOn } from './sketch.ts';
import { routeWays, spaceWays, vehicleWays } from './vehicle-pictures.ts';

interface Way {
  readonly heightMm: number;
  /** Read out by a screen reader. */
  readonly tells: string;
  readonly draw: (sketch: Sketch) => void;
}

/** A picture is read on a phone, where it is as wide as the screen. */
const widthMm = 112;

const ways: Readonly<Record<GuidePicture, Way>> = {
  board: {
    heightMm: 86,
    tells:
      'The datum is the lower left corner. x runs to the right, y upwards. A part is measured to the lower left corner of its footprint.',
    draw: boardWays,
  },
  cuts: {
    heightMm: 92,
    tells:
      'A notch is measured from the left end of its edge, a cut corner along both edges, a hole and a slot to their middle, a window to its lower left corner, from the datum or from the corner that is named.',
    draw: cutWays,
  },
  rib: {
    heightMm: 92,
    tells:
      'Distance runs from the named side of the board to the middle of the rib, start from the left or lower end of that side, height away from the face.',
    draw: ribWays,
  },
  turns: {
    heightMm: 68,
    tells:
      'A part that has its power end on the right has it on top after a turn of 90, on the left after 180, below after 270. Its place is that of its lower left corner after the turn.',
    draw: turnWays,
  },
  footprint: {
    heightMm: 88,
    tells:
      'Width runs from left to right, depth from the lower to the upper edge, height away from the board. A hole is measured from the left and the lower edge to its middle.',
    draw: footprintWays,
  },
  panels: {
    heightMm: 74,
    tells:
      'On an upper or lower edge a terminal is measured from the left end, on a left or right edge from the lower end. The face looks away from the board.',
    draw: panelWays,
  },
  channels: {
    heightMm: 68,
    tells:
      'Channel 1 has its positive terminal CH1+ and its negative terminal CH1-. The bridge 1+2 goes from CH1+ to CH2-.',
    draw: channelWays,
  },
  space: {
    heightMm: 104,
    tells:
      'The datum is the lower left corner of the plane, seen from the mounting side. A sound point is measured to its middle, an obstacle to its lower left corner. Depth is what is free before the plane.',
    draw: spaceWays,
  },
  route: {
    heightMm: 70,
    tells:
      'A route begins at one end and is told stretch by stretch. A sharp edge or a hole is told with the stretch that begins there. It may end at the edge of a space.',
    draw: routeWays,
  },
  vehicle: {
    heightMm: 102,
    tells:
      "The vehicle from above: left and right as seen from the driver's seat, looking forward. Distances run from the listener's head to each speaker.",
    draw: vehicleWays,
  },
};

/** A picture of the writing guide as SVG text, its colours left to the page. */
export function drawGuidePicture(name: GuidePicture, metrics: TextMetrics): string {
  return drawingText(guideDrawing(name, metrics), { colours: 'properties' });
}

/** The same before it is written as text. */
export function guideDrawing(name: GuidePicture, metrics: TextMetrics): Drawing {
  const { heightMm, tells, draw } = ways[name];
  const drawing = openDrawing({
    job: 'writing',
    sheet: name,
    widthMm,
    heightMm,
    title: guidePictures[name],
    description: tells,
    metrics,
  });
  layPaper(drawing);
  draw(sketchOn(drawing));
  return drawing;
}
