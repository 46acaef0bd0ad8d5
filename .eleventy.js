import { register } from 'tsx/esm/api';

register();
const { siteSettings } = await import('./lib/publish/site/eleventy-plugin.ts');

/**
 * Settings for running Eleventy by hand. A build adds the pages of a shop itself: see
 * lib/publish/site/build-site.ts, where the data goes from a shop's site to a folder.
 */
export default function configure(configuration) {
  siteSettings(configuration);
  return { dir: { input: 'site', output: '.rackleaf/by-hand' } };
}
