import { outputFactsSchema } from '../content/integration.ts';
import { vehicleSchema } from '../content/vehicle.ts';
import { id, text } from '../fields.ts';
import { column, optionalColumn } from './asked-table.ts';
import { type Station, side, zone } from './station.ts';

const vehicle = vehicleSchema.shape;
const ground = vehicle.grounds.valueType.shape;
const link = vehicle.links.unwrap().valueType.shape;
const output = outputFactsSchema.shape;

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
      asks: 'What it is driven by',
      by: 'eye',
      columns: [optionalColumn('supply', 'supply', vehicle.supply, 'combustion')],
      rows: 1,
    },
    {
      key: 'system-voltage',
      asks: 'Nominal voltage of its supply',
      by: 'eye',
      columns: [optionalColumn('system-voltage', 'voltage', vehicle['system-voltage'], '12 V')],
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
      hint: 'Names that are usual: starter-battery, alternator, source-unit.',
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
      hint: 'That of the battery, and one near each board. Tell what else the bolt holds.',
      columns: [
        column('name', 'name', id, 'crossmember-left'),
        zone('under-carpet'),
        side('left'),
        column('stud', 'stud', ground.stud, 'M8'),
        optionalColumn('insert', 'goes into', ground.insert, 'rivet-nut'),
        optionalColumn('holds', 'holds', ground.holds, 'nothing-else'),
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
      key: 'vehicle-load',
      asks: 'What the vehicle itself draws: lights, heater and fan on, engine idling',
      by: 'meter',
      columns: [optionalColumn('vehicle-load', 'current', vehicle['vehicle-load'], '40 A')],
      rows: 1,
    },
    {
      key: 'charging-voltage',
      asks: 'Voltage at the alternator, warm, loads on',
      by: 'meter',
      columns: [optionalColumn('charging-voltage', 'voltage', vehicle['charging-voltage'], '14.2 V')],
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
      hint: 'Several alike in one row: OUT1..4 are OUT1 to OUT4.',
      columns: [
        column('name', 'output', text('OUT1'), 'OUT1..4'),
        optionalColumn('from', 'lowest frequency', output.bandwidth.unwrap().shape.from, '20 Hz'),
        optionalColumn('to', 'highest frequency', output.bandwidth.unwrap().shape.to, '20 kHz'),
        optionalColumn('clean-voltage', 'greatest clean voltage', output['clean-voltage'], '3.8 V'),
        optionalColumn('offset', 'offset to ground', output.offset, '0 V'),
        optionalColumn('polarity', 'polarity', output.polarity, 'normal'),
      ],
      rows: 6,
    },
    {
      key: 'source-does',
      asks: 'What the source unit does to them',
      by: 'meter',
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
