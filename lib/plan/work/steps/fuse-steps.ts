import { printed } from '../../../model/printed/index.ts';
import { bankFuses } from '../readings/bank-fuses.ts';
import { hasSound, itemOf, minutesFor, readingsOf, type Step, step, type Work } from '../work.ts';

const vehicle = { place: 'vehicle', by: 'vehicle' } as const;

/** Fits the fuses once the battery is on, that of a bank after the bank is charged; no step where the job has none. */
export function fuseSteps(work: Work): Step[] {
  return work.plan.power.fuses.length > 0 ? [fitFuses(work), ...chargeBanks(work)] : [];
}

function fitFuses(work: Work): Step {
  const banks = bankFuses(work.plan).map(({ fuse }) => fuse);
  const fuses = work.plan.power.fuses.filter(({ id }) => !banks.includes(id));
  const behind = fuses.filter(({ source }) => source === null).map(({ id }) => id);
  const atSource = fuses.filter(({ source }) => source !== null).map(({ id }) => id);
  const order = [...behind, ...atSource];
  return step('fuses', [{ step: 'battery-on', why: 'the fuse closes the circuit, not the battery clamp' }], {
    layer: 'power',
    ...vehicle,
    text: `Fit the fuses${behind.length > 0 && atSource.length > 0 ? ', branches first and those at the source last' : ''}: ${order.join(', ')}${slotsText(work)}`,
    tools: ['fuse puller', 'meter'],
    minutes: minutesFor(work, 'fit-fuse', order.length),
    acts: order.map((id) => `fit-fuse:${id}`),
    proof: `Each rating is that of the fuse list${hasSound(work) ? '; source at its lowest level, so that nothing plays yet' : ''}`,
  });
}

/** Whoever plugs a tap in takes the fuse of its slot out: it goes back into the tap. */
function slotsText({ plan: { items, power } }: Work): string {
  const taps = items.filter(({ id, tap }) => tap && power.fuses.some(({ item }) => item === id));
  return taps
    .map(
      ({ id }) =>
        `; ${id} plugs into its slot with the fuse that was in the slot back in it, at the rating that it had`,
    )
    .join('');
}

/** An empty bank is as good as a short: it is charged through a resistor before its fuse goes in. */
function chargeBanks(work: Work): Step[] {
  return bankFuses(work.plan).map(({ fuse, bank }, index, all) => {
    const readings = readingsOf(work, 'banks').filter((id) => itemOf(id) === bank);
    return step(
      `charge-${bank}`,
      [
        {
          step: index === 0 ? 'fuses' : `charge-${all[index - 1]?.bank ?? ''}`,
          why: 'the bank is charged from the feed, and its own fuse goes in last',
        },
      ],
      {
        layer: 'power',
        ...vehicle,
        text: `Charge ${bank}: bridge the empty holder of ${fuse} with a resistor or a lamp for ${work.systemV} V until less than ${printed('voltage-at-most', work.bankWithinV)} stands across it, take the bridge off, read the bank and across the holder, then fit ${fuse}`,
        tools: ['meter', 'charging resistor', 'fuse puller'],
        minutes: minutesFor(work, 'fit-fuse') + minutesFor(work, 'take-reading', readings.length),
        acts: [...readings.map((id) => `measure:${id}`), `fit-fuse:${fuse}`],
        proof: `Less than ${printed('voltage-at-most', work.bankWithinV)} across the open holder before the fuse goes in; no spark as it does`,
      },
    );
  });
}
