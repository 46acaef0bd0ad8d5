import { partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';

/** Cable to cut the supply side from. */
export function cabled({ parts }: Written): void {
  parts.cable = {
    kind: 'wire',
    title: '4 AWG',
    size: '4 AWG',
    insulation: '105 C',
    colour: 'RD',
    for: ['power', 'ground'],
  };
}

/** A second battery behind a fuse and an isolating relay on the distribution, all leads 4 AWG and 1 m long. */
export function isolated(content: Written): void {
  const { job, vehicle } = content;
  cabled(content);
  vehicle.fitted.panel = { part: 'fused', zone: 'cabin' };
  vehicle.cranking = { current: '400 A', seconds: '4 s' };
  partIn(content, 'agm', 'battery').resistance = '4 mohm';
  Object.assign(job.devices, {
    'second-fuse': { part: 'holder', in: 'boot', fuse: '100 A' },
    'main-fuse': { part: 'holder', in: 'bay', fuse: '80 A' },
    second: { part: 'agm', in: 'boot' },
    isolator: { part: 'isolator', in: 'boot' },
  });
  const lead = { wire: 'cable', length: '1 m' };
  Object.assign(job.links, {
    feed: { from: 'battery.POS', to: 'main-fuse.IN', ...lead },
    main: { from: 'main-fuse.OUT', to: 'isolator.A', ...lead },
    'isolator-rear': { from: 'isolator.B', to: 'second-fuse.OUT', ...lead },
    'second-tail': { from: 'second.POS', to: 'second-fuse.IN', ...lead },
    'second-ground': { from: 'second.NEG', to: 'body.cargo', ...lead },
    'board-feed': { from: 'second-fuse.OUT', to: 'block.IN', ...lead },
    'coil-rem': { from: 'panel.OUT2', to: 'isolator.86', length: '1 m' },
    'coil-ground': { from: 'isolator.85', to: 'body.dash', length: '1 m' },
  });
  delete job.runs?.left;
}

/** The second battery behind a charger: its feed from the distribution, its output through a fuse of its own. */
export function charged(content: Written): void {
  isolated(content);
  const { job } = content;
  delete job.devices.isolator;
  for (const id of ['isolator-rear', 'coil-rem', 'coil-ground']) delete job.links[id];
  const lead = { wire: 'cable', length: '1 m' };
  delete job.devices['second-fuse']?.fuse;
  delete job.devices['main-fuse']?.fuse;
  job.devices.charger = { part: 'charger', in: 'boot' };
  Object.assign(job.links, {
    main: { from: 'main-fuse.OUT', to: 'charger.IN+', ...lead },
    'charger-ground': { from: 'charger.GND', to: 'body.cargo', ...lead },
    'charger-out': { from: 'charger.OUT+', to: 'second-fuse.OUT', ...lead },
    'second-fuse-2': { from: 'second-fuse.OUT', to: 'block.IN', ...lead },
  });
  delete job.links['board-feed'];
  delete job.links['second-fuse-2'];
  job.devices['board-fuse'] = { part: 'holder', in: 'boot' };
  Object.assign(job.links, {
    'board-tail': { from: 'second.POS', to: 'board-fuse.IN', ...lead },
    'board-feed': { from: 'board-fuse.OUT', to: 'block.IN', ...lead },
  });
}

/** A capacitor bank beside the starter's battery, behind a fuse of its own. */
export function banked(content: Written): void {
  const { job } = content;
  isolated(content);
  for (const id of ['isolator', 'second', 'second-fuse']) delete job.devices[id];
  for (const id of ['isolator-rear', 'coil-rem', 'coil-ground', 'second-tail', 'second-ground', 'board-feed'])
    delete job.links[id];
  partIn(content, 'bank', 'capacitor-bank').fuse = '100 A';
  job.links.main = { from: 'main-fuse.OUT', to: 'block.IN', wire: 'cable', length: '1 m' };
  job.devices.bank = { part: 'bank', in: 'boot' };
  job.devices['bank-fuse'] = { part: 'holder', in: 'boot' };
  job.links['bank-tail'] = { from: 'bank.POS', to: 'bank-fuse.IN', length: '6 in', wire: 'cable' };
  job.links['bank-feed'] = { from: 'bank-fuse.OUT', to: 'block.IN', length: '1 m', wire: 'cable' };
  job.links['bank-ground'] = { from: 'bank.NEG', to: 'body.cargo', length: '6 in' };
}
