import { drawJob } from '../../draw/draw-job.ts';
import { fileName } from '../exported-file.ts';
import type { Exporter } from '../exporter.ts';

/** Each drawing as an SVG that needs nothing else: colours and sizes stand in attributes, texts are outlines. */
export const svg: Exporter = {
  title: 'each drawing as stand-alone SVG',
  files: ({ plan, metrics }) =>
    drawJob(plan, metrics, { colours: 'resolved', outlines: metrics }).map((drawing) => ({
      name: fileName(`drawing-${drawing.id}`, 'svg'),
      content: drawing.svg,
    })),
};
