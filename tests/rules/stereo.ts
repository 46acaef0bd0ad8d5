import type { Case } from '../../lib/rules/rule.ts';
import { planKept } from '../plan/plan-kept.ts';
import { entry, jobOf, partIn } from './case.ts';
import { type Written, withoutBoard, written } from './content.ts';

/** A job in the vehicle with its own plan, not a made-up one: no board is laid out. */
export function plannedCase(change: (content: Written) => void): Case {
  const content = written();
  change(content);
  withoutBoard(content);
  const job = jobOf(content);
  return { job, plan: planKept(job).plan };
}

/**
 * The small job with a left and a right tweeter on a channel each, behind a processor with two inputs; the source has a
 * left and a right output that say so.
 */
export function stereo(change: (content: Written) => void = () => {}): Case {
  return plannedCase((content) => {
    const { job, vehicle } = content;
    Object.assign(vehicle, {
      places: { ...vehicle.places, 'right-door': { title: 'Right door', zone: 'cabin', side: 'right' } },
    });
    for (const id of ['sub', 'box', 'tweeter']) delete job.devices[id];
    job.devices.left = { part: 'tweeter', in: 'door' };
    job.devices.right = { part: 'tweeter', in: 'right-door' };
    for (const link of ['radio-signal', 'speaker-1', 'speaker-2']) delete job.links[link];
    Object.assign(job.links, {
      'in-left': { from: 'radio.LEFT', to: 'dsp.IN-A' },
      'in-right': { from: 'radio.RIGHT', to: 'dsp.IN-B' },
      'to-left': { from: 'amp.CH1', to: 'left.T' },
      'to-right': { from: 'amp.CH2', to: 'right.T' },
    });
    job.runs = {
      left: { route: 'left-sill', links: ['main', 'to-left'] },
      right: { route: 'right-sill', links: ['in-left', 'in-right', 'to-right'] },
    };
    const radio = partIn(content, 'radio', 'source-unit');
    delete radio.terminals.OUT;
    Object.assign(radio.terminals, { LEFT: output, RIGHT: output });
    radio.outputs = { LEFT: { side: 'left' }, RIGHT: { side: 'right' } };
    const dsp = partIn(content, 'dsp', 'processor');
    delete dsp.terminals.IN;
    Object.assign(dsp.terminals, { 'IN-A': input, 'IN-B': input });
    dsp['sample-rate'] = '96 kHz';
    entry(job.devices, 'dsp').filters = { OUT1: [highPass('3 kHz')], OUT2: [highPass('3 kHz')] };
    change(content);
  });
}

/** The same in the front row, with a source whose line outputs are named FL, FR, RL and RR, two of which are linked. */
export function crossedPair(
  left: string,
  right: string,
  change: (content: Written) => void = () => {},
): Case {
  return stereo((content) => {
    const { job, vehicle } = content;
    const radio = partIn(content, 'radio', 'source-unit');
    for (const name of ['LEFT', 'RIGHT']) delete radio.terminals[name];
    delete radio.outputs;
    Object.assign(radio.terminals, { FL: output, FR: output, RL: output, RR: output });
    for (const place of ['door', 'right-door']) entry(vehicle.places, place).row = 'front';
    entry(job.links, 'in-left').from = `radio.${left}`;
    entry(job.links, 'in-right').from = `radio.${right}`;
    entry(job.devices, 'dsp').mix = { OUT1: ['IN-A'], OUT2: ['IN-B'] };
    change(content);
  });
}

const output = { role: 'signal-out', joint: 'phono', signal: '4 V' } as const;
const input = { role: 'signal-in', joint: 'phono', signal: '2 V' } as const;

export const highPass = (corner: string) =>
  ({ pass: 'high-pass', type: 'linkwitz-riley', order: 4, corner }) as const;

/** Distances of the two doors from the listener. */
export function measured({ vehicle }: Written, leftM: string, rightM: string): void {
  entry(vehicle.places, 'door').distance = leftM;
  entry(vehicle.places, 'right-door').distance = rightM;
}

/** Both tweeters in parallel on the first channel. */
export function onOneChannel({ job }: Written): void {
  entry(job.links, 'to-right').from = 'amp.CH1';
}

/** A lead with a conductor for each side, and links that take one each. */
export function withLead(content: Written, conductors: Readonly<Record<string, string>>): void {
  content.parts.lead = {
    kind: 'cable',
    title: 'Lead',
    form: 'coaxial',
    conductors: {
      white: { size: '24 AWG', colour: 'WH', side: 'left' },
      red: { size: '24 AWG', colour: 'RD', side: 'right' },
    },
    insulation: '80 C',
    for: ['signal'],
  };
  content.job.cables = { ...content.job.cables, lead: { part: 'lead' } };
  for (const [link, conductor] of Object.entries(conductors))
    Object.assign(entry(content.job.links, link), { cable: 'lead', conductors: [conductor] });
}
