import type { z } from 'zod';
import type { jobSchema } from '../../lib/model/content/job.ts';
import type { shopSchema } from '../../lib/model/content/shop.ts';
import type { vehicleSchema } from '../../lib/model/content/vehicle.ts';
import { parts, type WrittenParts } from './parts.ts';

type JobText = z.input<typeof jobSchema>;
/** A job that writes all its links and fixings. */
type WrittenInFull = JobText & {
  links: NonNullable<JobText['links']>;
  boards?: Record<string, BoardText & { fixings: NonNullable<BoardText['fixings']> }>;
};
type BoardText = NonNullable<JobText['boards']>[string];

/** What a shop wrote, before it is read. */
export interface Written {
  shop: z.input<typeof shopSchema>;
  vehicle: z.input<typeof vehicleSchema>;
  parts: WrittenParts;
  job: WrittenInFull;
}

const vehicle = (): Written['vehicle'] => ({
  rackleaf: 1,
  id: 'wagon',
  title: 'Estate car',
  'vehicle-load': '45 A',
  fitted: {
    battery: { part: 'agm', zone: 'engine-bay', side: 'left' },
    alternator: { part: 'generator', zone: 'engine-bay' },
  },
  grounds: {
    cargo: { zone: 'cargo', stud: 'M8' },
    dash: { zone: 'cabin', stud: 'M6' },
    engine: { zone: 'engine-bay', stud: 'M8' },
  },
  links: {
    charge: { from: 'alternator.B+', to: 'battery.POS', size: '4 AWG', length: '1 m' },
    strap: { from: 'battery.NEG', to: 'body.engine', size: '4 AWG', length: '300 mm' },
    block: { from: 'alternator.CASE', to: 'body.engine', size: '4 AWG', length: '300 mm' },
  },
  spaces: {
    well: {
      title: 'Side well',
      zone: 'cargo',
      side: 'left',
      outline: [
        ['0 mm', '0 mm'],
        ['800 mm', '0 mm'],
        ['800 mm', '500 mm'],
        ['0 mm', '500 mm'],
      ],
      depth: '200 mm',
      right: 'front',
      upward: 'up',
      air: '60 L',
      'sound-points': {
        p1: {
          x: '50 mm',
          y: '50 mm',
          stud: 'M6',
          what: 'rivet nut',
          behind: 'nothing',
          'free-depth': '30 mm',
        },
        p2: { x: '450 mm', y: '50 mm', stud: 'M6', what: 'rivet nut', behind: 'nothing' },
      },
    },
  },
  routes: {
    'left-sill': {
      title: 'Left sill',
      side: 'left',
      passes: [
        { zone: 'engine-bay', length: '1 m' },
        { zone: 'sill', length: '3 m' },
      ],
    },
    'right-sill': { title: 'Right sill', side: 'right', passes: [{ zone: 'sill', length: '3 m' }] },
  },
  places: {
    bay: { title: 'Beside the battery', zone: 'engine-bay', side: 'left' },
    dash: { title: 'Dashboard', zone: 'cabin', side: 'middle' },
    door: { title: 'Left door', zone: 'cabin', side: 'left' },
    boot: { title: 'Boot', zone: 'cargo', side: 'middle' },
  },
});

const job = (): Written['job'] => ({
  rackleaf: 1,
  id: 'demo',
  title: 'Demo',
  revision: 'A',
  status: 'draft',
  'issued-on': '2026-03-14',
  vehicle: 'wagon',
  space: 'well',
  devices: {
    'main-fuse': { part: 'holder', in: 'bay' },
    block: { part: 'fused', on: 'main' },
    ground: { part: 'bar', on: 'main' },
    amp: { part: 'two-channel', on: 'main' },
    dsp: { part: 'dsp', on: 'main' },
    radio: { part: 'radio', in: 'dash' },
    tweeter: { part: 'tweeter', in: 'door' },
    sub: { part: 'woofer', in: 'boot' },
    box: { part: 'vented', in: 'boot', held: 'strap' },
  },
  links: {
    feed: { from: 'battery.POS', to: 'main-fuse.IN' },
    main: { from: 'main-fuse.OUT', to: 'block.IN' },
    'amp-feed': { from: 'block.OUT1', to: 'amp.B+' },
    'dsp-feed': { from: 'block.OUT2', to: 'dsp.B+' },
    'radio-feed': { from: 'block.OUT3', to: 'radio.B+' },
    'amp-ground': { from: 'amp.GND', to: 'ground.G1' },
    'dsp-ground': { from: 'dsp.GND', to: 'ground.G2' },
    'radio-ground': { from: 'radio.GND', to: 'body.dash' },
    'board-ground': { from: 'ground.G0', to: 'body.cargo' },
    'radio-rem': { from: 'radio.REM', to: 'dsp.REM-IN' },
    'amp-rem': { from: 'dsp.REM-OUT', to: 'amp.REM' },
    'radio-signal': { from: 'radio.OUT', to: 'dsp.IN' },
    'signal-1': { from: 'dsp.OUT1', to: 'amp.IN1' },
    'signal-2': { from: 'dsp.OUT2', to: 'amp.IN2' },
    'speaker-1': { from: 'amp.CH1', to: 'tweeter.T' },
    'speaker-2': { from: 'amp.CH2', to: 'sub.C' },
  },
  boards: {
    main: {
      sheet: 'plywood',
      outline: { rectangle: { width: '500 mm', height: '300 mm' } },
      fixings: { a: { point: 'p1', fixing: 'screw' }, b: { point: 'p2', fixing: 'screw' } },
    },
  },
  runs: {
    left: { route: 'left-sill', links: ['main'], covering: 'loom' },
    right: { route: 'right-sill', links: ['radio-signal'] },
  },
});

/** A small job that no rule has anything to say of. */
export function written(): Written {
  return {
    shop: { rackleaf: 1, name: 'Test bench' },
    vehicle: vehicle(),
    parts: parts(),
    job: job(),
  };
}

/** Takes the board out of a job: its devices stand in the boot, and nothing is laid out. */
export function withoutBoard({ job }: Written): void {
  job.boards = {};
  for (const device of Object.values(job.devices)) {
    if (device.on === undefined) continue;
    delete device.on;
    device.in = 'boot';
  }
}
