/** The pictures of the writing guide: where a measure starts, and which way it runs. */
export const guidePictures = {
  board: 'A board, seen from the mounting side: x to the right, y upwards, from the datum',
  cuts: 'Where the measures of a cut start',
  space: 'A space of a vehicle, seen from the mounting side',
  footprint: 'A part seen from above, before any turn',
  panels: 'Where a terminal or a control stands on its panel',
  turns: 'Turns of a part on its board, counter-clockwise',
  rib: 'A rib on the rear of a board',
  route: 'A route through the vehicle, in stretches from its first end',
  vehicle: 'Sides and directions of the vehicle',
  channels: 'Terminals of a channel and of a bridge',
} as const satisfies Record<string, string>;
export type GuidePicture = keyof typeof guidePictures;
