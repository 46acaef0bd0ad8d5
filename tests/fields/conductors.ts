import { linkEndOf } from '../../lib/model/content/resolved-job.ts';
import { type Outcome, outcomeOfEdits } from './run-row.ts';
import { dataOf, type Edit, gone, type JobSheet, type Sheet } from './shop.ts';

/** What a tired apprentice does with a conductor. */
export const faults = [
  'ends swapped',
  'wrong terminal',
  'missing',
  'twice',
  'too thin',
  'too short',
  'ten times too long',
] as const;
export type Fault = (typeof faults)[number];

/** A conductor as it stands in a file. */
export interface Conductor {
  readonly sheet: Sheet;
  readonly job: JobSheet;
  readonly id: string;
  readonly written: Readonly<Record<string, unknown>>;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const under = (data: unknown, key: string): Record<string, unknown> => {
  const value = isRecord(data) ? data[key] : undefined;
  return isRecord(value) ? value : {};
};

/** Every conductor of a file: of a job, or of the vehicle. */
export function conductorsOf(sheet: Sheet, job: JobSheet): readonly Conductor[] {
  return Object.entries(under(dataOf(sheet), 'links')).flatMap(([id, written]) =>
    isRecord(written) ? [{ sheet, job, id, written }] : [],
  );
}

/** The terminals of the device that a reference stands in, of a job or of the vehicle. */
function terminalsBeside({ sheet, job }: Conductor, reference: string): readonly string[] {
  const { device } = linkEndOf(reference);
  const vehicle = dataOf('vehicle');
  if (device === 'body') return Object.keys(under(vehicle, 'grounds'));
  const own = sheet === 'vehicle' ? {} : under(under(dataOf(job), 'devices'), device);
  const fitted = under(under(vehicle, 'fitted'), device);
  const part = own.part ?? fitted.part;
  const spec = under(under(dataOf('parts'), 'parts'), String(part));
  return Object.keys(under(spec, 'terminals'));
}

/** Another terminal of the device at the far end: the next one of its part; of a pair, of the next pair. */
function wrongTerminal(conductor: Conductor): string | null {
  const to = String(conductor.written.to);
  const { device, terminal } = linkEndOf(to);
  const names = terminalsBeside(conductor, to);
  const isPair = !names.includes(terminal);
  const choices = isPair
    ? [...new Set(names.filter((name) => /[+-]$/.test(name)).map((name) => name.slice(0, -1)))].filter(
        (stem) => names.includes(`${stem}-`),
      )
    : names;
  const next = choices[(choices.indexOf(terminal) + 1) % choices.length];
  return next === undefined || next === terminal ? null : `${device}.${next}`;
}

/** What a fault writes; null where a conductor can't have it. */
export function editsFor(conductor: Conductor, fault: Fault): readonly Edit[] | null {
  const { sheet, id, written } = conductor;
  const edit = (key: string, value: unknown): Edit => ({ sheet, keys: ['links', id, key], value });
  const { from, to, length } = written;
  const isLead = written.cable !== undefined;
  switch (fault) {
    case 'ends swapped':
      return [edit('from', to), edit('to', from)];
    case 'wrong terminal': {
      const other = wrongTerminal(conductor);
      return other === null ? null : [edit('to', other)];
    }
    case 'missing':
      return [{ sheet, keys: ['links', id], value: gone }];
    case 'twice':
      return [{ sheet, keys: ['links', `${id}-again`], value: { ...written, length: length ?? '5 m' } }];
    case 'too thin':
      return isLead ? null : [edit('size', '24 AWG'), ...(written.wire ? [edit('wire', gone)] : [])];
    case 'too short':
      return [edit('length', '10 mm')];
    case 'ten times too long':
      return length === undefined ? [edit('length', '40 m')] : [edit('length', tenfold(String(length)))];
  }
}

/** `6 in` as `60 in`. */
const tenfold = (written: string) =>
  written.replace(/^[\d.]+/, (digits) => String(Number((10 * Number(digits)).toFixed(6))));

/** What is told of a conductor with a fault, as it stands alone in a sound job; null where it can't have it. */
export function outcomeFor(conductor: Conductor, fault: Fault): Outcome | null {
  const edits = editsFor(conductor, fault);
  return edits && outcomeOfEdits(conductor.job, [], edits);
}
