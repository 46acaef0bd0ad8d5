import type { FuseDuty, StockedFuse } from '../../lib/power/fuse-choice.ts';

/** 40 A drawn, 50 A wanted: the margin of a quarter is common practice, no source. */
export const duty = (more: Partial<FuseDuty> = {}): FuseDuty => ({
  ratedA: 40,
  ceilingA: 60,
  protects: [{ id: 'wire', ampacityA: 136 }],
  form: 'small-bolt-in',
  interruptNeedA: null,
  ...more,
});

export const stocked = (form: StockedFuse['form'], ratingA: number, quantity = 2): StockedFuse => ({
  part: `${form}-${ratingA}`,
  form,
  ratingA,
  quantity,
});
