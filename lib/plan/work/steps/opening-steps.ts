import { printedMade } from '../../../model/printed/holes.ts';
import { lengthText, minutesFor, type Step, step, type Work } from '../work.ts';
import { safe } from './board-in.ts';
import { trimOff } from './trim-steps.ts';

/** The id of the step in which the openings of a place are cut. */
const openingStep = (seat: string): string => `opening-${seat}`;

/** What is mounted at a place waits for its opening, where one is still to be cut; else for the battery alone. */
export function beforeMount(work: Work, seat: string | null): Step['waitsFor'] {
  const cut = seat !== null && work.openings.some((one) => one.seat === seat);
  const opening = cut ? [{ step: openingStep(seat), why: 'its opening is cut first' }] : [];
  return [safe, ...trimOff(work, zonesOf(work, seat)), ...opening];
}

/** The zones of what is mounted at a place. */
function zonesOf({ plan }: Work, seat: string | null) {
  return plan.items.filter((item) => item.origin === 'job' && item.seat === seat).map(({ zone }) => zone);
}

/** Openings in panels that are still to be cut: by size, after a look at what lies behind, with the battery off. */
export function openingSteps(work: Work): Step[] {
  const seats = [...new Set(work.openings.map(({ seat }) => seat))];
  return seats.map((seat) => {
    const own = work.openings.filter((one) => one.seat === seat);
    const sizes = own.map(({ item, cutOutM }) =>
      cutOutM === null
        ? `for ${item} by the template of its maker, who is not quoted in its part`
        : `for ${item} ${lengthText(work, 'told', cutOutM)} (${printedMade(cutOutM)}) across`,
    );
    return step(openingStep(seat), [safe, ...trimOff(work, zonesOf(work, seat))], {
      layer: 'place',
      place: 'vehicle',
      by: 'vehicle',
      text: `Cut the opening at ${seat}: ${sizes.join('; ')}. First take the panel off or look behind it: no airbag, no window or its track, no lock rod, no wiring, no tank, no line; hold the speaker against it with the window down and up. Take the burr off and paint bare metal`,
      tools: ['hole saw or jigsaw', 'template', 'eye protection', 'touch-up paint'],
      minutes: minutesFor(work, 'drill-hole', own.length),
      acts: own.map(({ item }) => `opening:${item}`),
      proof:
        'The speaker drops in without force and its frame covers the rim all round; nothing behind it moves against it',
    });
  });
}
