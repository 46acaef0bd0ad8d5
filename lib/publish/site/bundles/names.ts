/** The scripts that are bundled of modules, each from the folder of its name in `site/`. */
export const bundleNames = ['calculators', 'search'] as const;
export type BundleName = (typeof bundleNames)[number];
