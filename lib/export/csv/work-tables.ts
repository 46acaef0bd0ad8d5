import type { Finding } from '../../model/finding.ts';
import type { PlanMeasurement } from '../../model/plan/index.ts';
import { printedValue } from '../../model/printed/index.ts';
import { lineFigures } from '../../model/printed/record.ts';
import { type Direction, wholeSteps } from '../../model/quantity/safe-rounding.ts';
import { csvTable, listed } from './csv-table.ts';
import type { CsvTables } from './tables.ts';

/** What is fetched, drilled, set, done, measured and found. */
export const workTables = {
  'pick-list': ({ shop, job, pick }) =>
    csvTable({ shop, job }, pick, [
      { title: 'part', value: ({ part }) => part },
      { title: 'title', value: ({ title }) => title },
      { title: 'kind', value: ({ kind }) => kind },
      { title: 'quantity', value: ({ quantity, unit }) => amount(quantity, unit, 'up') },
      { title: 'unit', value: ({ unit }) => unit },
      {
        title: 'cut_length',
        length: 'length-taken',
        lengthM: ({ unit, quantity }) => (unit === 'm' ? quantity : null),
        feet: true,
      },
      { title: 'in_stock', value: ({ stockQuantity, unit }) => amount(stockQuantity, unit, 'down') },
      { title: 'short', value: ({ short, unit }) => amount(short, unit, 'up') },
    ]),
  'riser-pieces': ({ shop, job, boards }) =>
    csvTable(
      { shop, job },
      boards.flatMap(({ title, pieces }) => pieces.map((piece) => ({ board: title, ...piece }))),
      [
        { title: 'board', value: ({ board }) => board },
        { title: 'below', value: ({ carries }) => carries },
        { title: 'form', value: ({ form }) => form },
        { title: 'count', value: ({ count }) => count },
        { title: 'width', length: 'cut', lengthM: ({ widthM }) => widthM },
        { title: 'length', length: 'cut', lengthM: ({ lengthM }) => lengthM },
        { title: 'thickness', length: 'made', lengthM: ({ thicknessM }) => thicknessM },
        { title: 'layers', value: ({ layers }) => layers },
        { title: 'makes', length: 'made', lengthM: ({ makesM }) => makesM },
        {
          title: 'from_shelf',
          value: ({ parts }) => parts.map(({ part, count }) => `${count} x ${part}`).join('; '),
        },
        { title: 'pack', length: 'made', lengthM: ({ packM }) => packM },
        { title: 'hole', fit: () => 'clearance', diameterM: ({ holeM }) => holeM },
      ],
    ),
  drill: ({ shop, job, boards }) =>
    csvTable(
      { shop, job },
      boards.flatMap(({ id, holes }) => holes.map((hole) => ({ board: id, ...hole }))),
      [
        { title: 'board', value: ({ board }) => board },
        { title: 'number', value: ({ n }) => n },
        { title: 'x', length: 'position', lengthM: ({ xM }) => xM },
        { title: 'y', length: 'position', lengthM: ({ yM }) => yM },
        {
          title: 'bit',
          fit: ({ pilotFor }) => (pilotFor === null ? 'clearance' : 'pilot'),
          diameterM: ({ diameterM }) => diameterM,
        },
        { title: 'through', value: ({ depthM }) => (depthM === null ? 'yes' : 'no') },
        { title: 'depth', length: 'depth-drilled', lengthM: ({ depthM }) => depthM },
        { title: 'pilot_for', value: ({ pilotFor }) => pilotFor },
        { title: 'purpose', value: ({ purpose }) => purpose },
        { title: 'for', value: ({ of }) => of },
        { title: 'behind', value: ({ behind }) => behind },
      ],
    ),
  placement: ({ shop, job, boards }) =>
    csvTable(
      { shop, job },
      boards.flatMap(({ id, placements }) => placements.map((placement) => ({ board: id, ...placement }))),
      [
        { title: 'board', value: ({ board }) => board },
        { title: 'item', value: ({ item }) => item },
        { title: 'x', length: 'position', lengthM: ({ xM }) => xM },
        { title: 'y', length: 'position', lengthM: ({ yM }) => yM },
        { title: 'turn_deg', figure: 'angle', of: ({ turnDeg }) => turnDeg },
        { title: 'width', length: 'size', lengthM: ({ widthM }) => widthM },
        { title: 'depth', length: 'size', lengthM: ({ depthM }) => depthM },
        { title: 'height', length: 'size', lengthM: ({ heightM }) => heightM },
        { title: 'raised', length: 'made', lengthM: ({ raisedM }) => raisedM },
        { title: 'chosen', value: ({ chosen }) => chosen },
      ],
    ),
  presets: ({ shop, job, controls }) =>
    csvTable({ shop, job }, controls, [
      { title: 'item', value: ({ item }) => item },
      { title: 'control', value: ({ control }) => control },
      { title: 'preset', value: ({ preset }) => preset },
      { title: 'safe', value: ({ safe }) => (safe ? 'yes' : 'no') },
      { title: 'after_commissioning', value: ({ final }) => final.state },
      { title: 'set_with', value: ({ final }) => final.during },
      { title: 'chosen', value: ({ chosen }) => chosen },
      { title: 'why', value: ({ why }) => why },
    ]),
  'order-of-work': ({ shop, job, steps }) =>
    csvTable(
      { shop, job },
      steps.map((step, index) => ({ number: index + 1, ...step })),
      [
        { title: 'number', value: ({ number }) => number },
        { title: 'step', value: ({ id }) => id },
        { title: 'layer', value: ({ layer }) => layer },
        { title: 'place', value: ({ place }) => place },
        { title: 'after', value: ({ after }) => listed(after) },
        { title: 'text', value: ({ text }) => text },
        { title: 'tools', value: ({ tools }) => listed(tools) },
        { title: 'minutes', figure: 'time-taken', of: ({ minutes }) => minutes },
        { title: 'proof', value: ({ proof }) => proof },
      ],
    ),
  measurements: ({ shop, job, measurements }) =>
    csvTable({ shop, job }, measurements, [
      { title: 'measurement', value: ({ id }) => id },
      { title: 'what', value: ({ what }) => what },
      { title: 'when', value: ({ when }) => when },
      { title: 'predicted', value: (line) => recordValue(line, 'predicted') },
      { title: 'least', value: (line) => recordValue(line, 'least') },
      { title: 'greatest', value: (line) => recordValue(line, 'greatest') },
      { title: 'unit', value: ({ unit }) => unit },
      { title: 'as_built', value: ({ asBuilt }) => asBuilt },
      { title: 'state', value: ({ state }) => state },
      { title: 'explanation', value: ({ explanation }) => explanation },
    ]),
  findings: ({ shop, job, findings }) =>
    csvTable({ shop, job }, findings.flatMap(withFollows), [
      { title: 'level', value: ({ level }) => level },
      { title: 'rule', value: ({ rule }) => rule },
      { title: 'about', value: ({ related }) => listed(related) },
      { title: 'message', value: ({ message }) => message },
      { title: 'value', value: ({ value }) => value },
      { title: 'limit', value: ({ limit }) => limit },
      { title: 'unit', value: ({ unit }) => unit },
      { title: 'to_do', value: ({ remedy }) => remedy },
      { title: 'follows_from', value: ({ from }) => from },
      { title: 'source', value: ({ source }) => source },
      { title: 'mark', value: ({ mark }) => mark },
      { title: 'file', value: ({ where }) => where.file },
      { title: 'line', value: ({ where }) => where.line },
      { title: 'column', value: ({ where }) => where.column },
    ]),
  channels: ({ shop, job, audio }) =>
    csvTable({ shop, job }, audio.channels, [
      { title: 'channel', value: ({ id }) => id },
      { title: 'speakers', value: ({ speakers }) => listed(speakers) },
      { title: 'wiring', value: ({ wiring }) => wiring },
      { title: 'load_ohm', figure: 'load', of: ({ loadOhm }) => loadOhm },
      { title: 'minimum_ohm', figure: 'load-at-least', of: ({ minimumOhm }) => minimumOhm },
      {
        title: 'at_plug_from_ohm',
        figure: 'resistance-from',
        of: ({ dcResistanceOhm }) => dcResistanceOhm?.fromOhm,
      },
      {
        title: 'at_plug_to_ohm',
        figure: 'resistance-to',
        of: ({ dcResistanceOhm }) => dcResistanceOhm?.toOhm,
      },
      { title: 'power_W', figure: 'power', of: ({ powerW }) => powerW },
      { title: 'gain_voltage_V', figure: 'gain-voltage', of: ({ gainVoltageV }) => gainVoltageV },
      { title: 'tone_Hz', figure: 'frequency', of: ({ toneHz }) => toneHz },
      { title: 'wire_loss_dB', figure: 'loss', of: ({ wireLossDb }) => wireLossDb },
    ]),
  speakers: ({ shop, job, audio }) =>
    csvTable({ shop, job }, audio.speakers, [
      { title: 'speaker', value: ({ id }) => id },
      { title: 'channel', value: ({ channel }) => channel },
      { title: 'polarity', value: ({ polarity }) => polarity },
      { title: 'distance', length: 'measured', lengthM: ({ distanceM }) => distanceM, feet: true },
      { title: 'delay_ms', figure: 'delay', of: ({ delayMs }) => delayMs },
      { title: 'power_W', figure: 'power', of: ({ powerW }) => powerW },
    ]),
} as const satisfies CsvTables;

/** A figure of a line of the record as it is printed, so that what lies within the written limits is right. */
function recordValue(line: PlanMeasurement, which: 'predicted' | 'least' | 'greatest'): number | null {
  const [value, names] = [line[which], lineFigures(line)];
  return value === null || names === null ? value : printedValue(names[which], value);
}

/** Pieces by number; metres to the millimetre, what is taken up and what lies on the shelf down. */
function amount(quantity: number, unit: string, direction: Direction): number {
  return unit === 'm' ? wholeSteps(quantity * 1000, direction) / 1000 : quantity;
}

/** A finding with what only follows from it below it; of these the rule of the one that they follow from. */
function withFollows(finding: Finding): readonly (Finding & { readonly from: string })[] {
  const { follows = [], rule } = finding;
  return [{ ...finding, from: '' }, ...follows.map((one) => ({ ...one, from: rule }))];
}
