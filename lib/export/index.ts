import type { Exporter } from './exporter.ts';
import { csv } from './exporters/csv.ts';
import { cut } from './exporters/cut.ts';
import { dxf } from './exporters/dxf.ts';
import { labels } from './exporters/labels.ts';
import { nest } from './exporters/nest.ts';
import { svg } from './exporters/svg.ts';
import { template } from './exporters/template.ts';

/** Formats that are made without a browser, in the order in which they are written. */
export const exportFormats = ['svg', 'cut', 'dxf', 'labels', 'template', 'nest', 'csv'] as const;
export type ExportFormat = (typeof exportFormats)[number];

/** Every exporter. One that is missing here does not compile. */
export const exporters: { readonly [K in ExportFormat]: Exporter } = {
  svg,
  cut,
  dxf,
  labels,
  template,
  nest,
  csv,
};
