import { planAudio } from '../../../lib/plan/audio/audio.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { buildCircuit } from '../../../lib/plan/power/circuit/circuit.ts';
import { jobOf } from '../../rules/case.ts';
import { type Written, written } from '../../rules/content.ts';

/** The audio side alone of the small job of the rules' tests, with its workings and what was noticed. */
export function plannedAudio(change: (content: Written) => void = () => {}) {
  const content = written();
  change(content);
  const job = jobOf(content);
  const devices = new Map(job.devices.map((device) => [device.id, device]));
  const book = new PlanBook();
  const { audio } = planAudio(job, devices, buildCircuit(job, devices), book);
  const placed = book.remarks();
  return { job, devices, audio, traces: book.traces(), placed, remarks: placed.map(({ remark }) => remark) };
}

/** An output that came with the vehicle, of which all is known. */
export const knownOutput = {
  bandwidth: { from: '30 Hz', to: '18 kHz' },
  polarity: 'normal',
  'clean-voltage': '3.5 V',
  offset: '0 V',
  equalising: 'none',
  'load-sensing': false,
  'noise-cancelling': false,
  chimes: false,
} as const;
