import type { ReadJob } from '../../model/content/resolved-job.ts';
import type { PlanOutput } from '../../model/plan/index.ts';
import { type OutputFact, outputFactSchema } from '../../model/vocabulary.ts';
import { hasRole, terminalNameOf } from '../look-up.ts';
import { listed } from '../words.ts';

type Used = readonly Pick<PlanOutput, 'id' | 'missing'>[];

/** How each fact of an output is written once it is measured. */
const written: Readonly<Record<OutputFact, string>> = {
  bandwidth: 'bandwidth: { from: 30 Hz, to: 18 kHz }',
  polarity: 'polarity: normal',
  'greatest clean voltage': 'clean-voltage: 8 V',
  'direct-current offset': 'offset: 0 V',
  'equalising that moves with the level': 'equalising: none',
  'load sensing': 'load-sensing: false',
  'noise cancelling': 'noise-cancelling: false',
  chimes: 'chimes: false',
};

/** What is missing of any of some outputs; everything where the plan tells of none. */
function missingOf(used: Used): readonly OutputFact[] {
  const missing = used.flatMap((output) => output.missing);
  return outputFactSchema.options.filter((fact) => used.length === 0 || missing.includes(fact));
}

/** The outputs of which something is missing, where that is not all of them: ` (OUT1, OUT2)`. */
export function unmeasuredText(used: Used): string {
  const open = used.filter(({ missing }) => missing.length > 0);
  const names = [...new Set(open.map(({ id }) => terminalNameOf(id)))];
  return names.length === 0 ? '' : ` in full: of ${listed(names)} still ${listed([...missingOf(used)])}`;
}

/** What is still to be measured of a source that came with the vehicle, and the line to write it in. */
export function unmeasuredRemedy(job: ReadJob, source: string, used: Used): string {
  const missing = missingOf(used);
  const first = used.find((output) => output.missing.length > 0);
  const name = first ? terminalNameOf(first.id) : 'SP1';
  const measured = missing.filter((fact) => fact !== 'chimes');
  const chimes = missing.includes('chimes')
    ? 'see that chimes and warnings still sound, since losing one stops the job'
    : '';
  const steps = [...(measured.length > 0 ? [`measure at each channel: ${measured.join(', ')}`] : []), chimes];
  const isSpeaker = used.length === 0 || used.some(({ id }) => !hasRole(job, id, 'signal-out'));
  const rated =
    missing.includes('greatest clean voltage') && isSpeaker
      ? '. Until the clean voltage is read, powers: of its outputs (such as 4 ohm: 18 W of the leaflet) tells it'
      : '';
  const line = `${name}: { ${missing.map((fact) => written[fact]).join(', ')} }`;
  return `${steps.filter((text) => text !== '').join('; ')}; and write it at the outputs of ${source} in the vehicle's file (fitted: ${source}: outputs:), such as ${line}${rated}`;
}
