/** What to do when something stops, the safe things first. Common practice, no source. */
export function whenItStops(hasFuses: boolean): readonly string[] {
  return [
    'Smoke, a smell of burning, or a part that is too hot to touch: stop where it is safe, switch the engine off, get everybody out and call the fire service. Touch no cable.',
    'Otherwise switch the music off at the radio, and park before you look for the cause.',
    ...(hasFuses
      ? [
          'Find what went silent in the table of fuses. One fuse may feed several things.',
          'Take that fuse out and look at it: the strip in a blown fuse is broken. Put in a new one of the same kind with the rating that stands in the table. Do so once.',
          'A fuse that is held by screws or bolts is changed by a workshop, with the negative lead off every battery first.',
          'It blows again: leave it out, keep the system off and call the shop. Never put in a larger fuse, a wire or foil in its place: the cable behind it can catch fire.',
        ]
      : []),
    'Nothing is blown, and there is still no sound: leave the system off and call the shop.',
  ];
}
