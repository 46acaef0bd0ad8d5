import { z } from 'zod';
import { outputFactsSchema } from '../content/output-facts.ts';
import { vehicleSchema } from '../content/vehicle.ts';
import { faultBy, faultless, id, text } from '../fields.ts';
import { column, optionalColumn } from './asked-table.ts';
import { voltageOrPower } from './power-into-load.ts';
import { type Station, side, zone } from './station.ts';

const vehicle = vehicleSchema.shape;
const ground = vehicle.grounds.valueType.shape;
const link = vehicle.links.unwrap().valueType.shape;
const ambient = vehicle.ambient.unwrap().shape;
const output = outputFactsSchema.shape;

/** One voltage, or both ends of one that varies. */
const chargingField = z.string().check(
  faultless((written) => {
    const ends = written.split(/\s+to\s+/);
    return ends.length > 2
      ? 'is no range: write both ends, such as 12.6 V to 14.8 V'
      : (ends.map((one) => faultBy(vehicle['charging-voltage'], one)).find((fault) => fault !== null) ??
          null);
  }),
);

/** What is told of the vehicle as a whole. */
export const itself: Station = {
  id: 'vehicle',
  title: 'The vehicle itself',
  tables: [
    {
      key: 'title',
      asks: 'What the vehicle is called on the sheets: kind, doors, year',
      by: 'eye',
      columns: [column('title', 'title', vehicle.title, 'Estate car, five doors')],
      rows: 1,
    },
    {
      key: 'supply',
      asks: 'What it is driven by, the nominal voltage of its supply, and whether a battery sensor sits on the negative post',
      by: 'eye',
      seldom: 'driven by combustion, 12 V, no sensor on the negative post of its battery',
      columns: [
        optionalColumn('supply', 'driven by', vehicle.supply, 'combustion'),
        optionalColumn('system-voltage', 'voltage', vehicle['system-voltage'], '12 V'),
        optionalColumn(
          'negative-sensor',
          'sensor on the negative post',
          vehicle['negative-sensor'].unwrap(),
          'no',
        ),
      ],
      rows: 1,
    },
    {
      key: 'caution',
      asks: 'What must be known before a tool is taken: airbags, tank, lines, high voltage, and where',
      by: 'eye',
      columns: [
        column(
          'caution',
          'caution',
          vehicle.cautions.unwrap().element,
          'Curtain airbags along both roof rails.',
        ),
      ],
      rows: 4,
    },
  ],
};

/** Reached next: what the vehicle came with, where a ground may go, and the readings of a meter. */
export const underTheHood: Station = {
  id: 'came-with',
  title: 'What the vehicle came with',
  tables: [
    {
      key: 'fitted',
      asks: 'Batteries, alternator, source unit: what each is called here, and where it is',
      by: 'eye',
      hint: 'Names that are usual: starter-battery, alternator, source-unit. Zone of what is in the dash: cabin; dash-top is on it, in the sun.',
      columns: [
        column('name', 'name', id, 'starter-battery'),
        column('part', 'part of the catalogue', id, 'battery-flooded-60'),
        zone('engine-bay'),
        side('left'),
      ],
      rows: 4,
    },
    {
      key: 'ground',
      asks: 'Ground points: studs and bolts of the bare body',
      by: 'eye',
      hint: 'That of the battery, and one near each board. Tell what else the bolt holds; of a point that is still to be made, no under there already, and what lies behind it: tank, line, airbag.',
      columns: [
        column('name', 'name', id, 'crossmember-left'),
        zone('under-carpet'),
        side('left'),
        column('stud', 'stud', ground.stud, 'M8'),
        optionalColumn('insert', 'goes into', ground.insert, 'rivet-nut'),
        optionalColumn('holds', 'holds', ground.holds, 'nothing-else'),
        optionalColumn('there', 'there already', ground.there, 'yes'),
        optionalColumn('behind', 'behind it', ground.behind, 'nothing'),
        optionalColumn('free-depth', 'free depth behind', ground['free-depth'], '1 1/2 in'),
      ],
      rows: 4,
    },
    {
      key: 'cable',
      asks: 'Heavy cables of the vehicle: what charges and grounds its battery',
      by: 'tape',
      hint: 'From terminal to terminal; a ground point is body. with its name.',
      columns: [
        column('from', 'from', link.from, 'starter-battery.NEG'),
        column('to', 'to', link.to, 'body.engine'),
        column('size', 'size', link.size, '2 AWG'),
        column('length', 'length', link.length, '20 in'),
      ],
      rows: 4,
    },
    {
      key: 'reading',
      asks: 'With lights, heater and fan on: the voltage at the alternator, warm, and what the vehicle itself draws, idling',
      by: 'meter',
      hint: 'Of a regulator that varies it, both ends of what was read over a drive: 12.6 V to 14.8 V.',
      columns: [
        optionalColumn('charging-voltage', 'charging voltage', chargingField, '14.2 V'),
        optionalColumn('vehicle-load', 'vehicle load', vehicle['vehicle-load'], '40 A'),
      ],
      rows: 1,
    },
    {
      key: 'ambient',
      asks: 'The warmest air in its parts, where it was read: in the sun, after a drive',
      by: 'meter',
      hint: 'The cabin counts for sills, cargo area and under the carpet as well. Left empty, the house rules hold.',
      columns: (
        [
          ['engine-bay', '85 C'],
          ['cabin', '45 C'],
          ['roof', '70 C'],
          ['dash-top', '85 C'],
          ['near-exhaust', ''],
        ] as const
      ).map(([part, example]) => optionalColumn(part, part.replaceAll('-', ' '), ambient[part], example)),
      rows: 1,
    },
  ],
};

/** What the source unit gives. */
export const dash: Station = {
  id: 'source',
  title: 'Outputs of the source unit, at its plug',
  tables: [
    {
      key: 'output',
      asks: 'What comes out of each output that may be used',
      by: 'meter',
      hint: 'Several alike in one row: OUT1..4 are OUT1 to OUT4. The clean voltage is read with a meter; where only a leaflet tells the power, write that with its load, 18 W at 4 ohm.',
      columns: [
        column('name', 'output', text('OUT1'), 'OUT1..4'),
        optionalColumn('from', 'lowest frequency', output.bandwidth.unwrap().shape.from, '20 Hz'),
        optionalColumn('to', 'highest frequency', output.bandwidth.unwrap().shape.to, '20 kHz'),
        optionalColumn('clean-voltage', 'greatest clean voltage', voltageOrPower, '3.8 V'),
        optionalColumn('offset', 'offset to ground', output.offset, '0 V'),
        optionalColumn('polarity', 'polarity', output.polarity, 'normal'),
        optionalColumn('clean-at', 'source then at', output['clean-at'], 'volume 26 of 30'),
      ],
      rows: 6,
    },
    {
      key: 'source-does',
      asks: 'What the source unit does to them',
      by: 'meter',
      seldom: 'not known, and told as such where it matters',
      columns: [
        optionalColumn('equalising', 'equalising', output.equalising, 'none'),
        optionalColumn('load-sensing', 'off without a speaker', output['load-sensing'], 'no'),
        optionalColumn('noise-cancelling', 'noise cancelling', output['noise-cancelling'], 'no'),
        optionalColumn('chimes', 'chimes and warnings', output.chimes, 'no'),
      ],
      rows: 1,
    },
  ],
};
