/** The operating points that every job is solved at. */
export const operatingPointNames = [
  'rated-power',
  'full-rating',
  'music',
  'engine-off',
  'cruise',
  'idle',
  'rest',
] as const;
export type OperatingPointName = (typeof operatingPointNames)[number];

/** The operating point at which drops are judged. */
export const ratedPointName = 'rated-power' satisfies OperatingPointName;

/** How the vehicle runs while the charging balance is drawn. */
export const regimeNames = ['idle', 'cruise', 'engine-off'] as const;
