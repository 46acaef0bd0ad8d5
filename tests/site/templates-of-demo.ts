/**
 * Templates whose pages the demo site has, whatever its jobs are: those that say how the tool is used, and what any shop
 * has. The short run looks at a page of each there; those of a job and what leads to it, at the sample's too.
 */
export const templatesOfDemo: ReadonlySet<string> = new Set([
  'calculators.njk',
  'calculator.njk',
  'calculators-file.njk',
  'catalogue.njk',
  'writing.njk',
  'blank-survey.njk',
  'guides.njk',
  'guide.njk',
  'jobs.njk',
  'parts.njk',
  'part.njk',
  'reference.njk',
  'reference-value.njk',
  'vehicles.njk',
  'vehicle.njk',
]);
