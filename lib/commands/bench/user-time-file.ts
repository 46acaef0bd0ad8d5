/** The environment variable that tells a measured process where to write its user time. */
export const userTimeFile = 'RACKLEAF_BENCH_USER_TIME';
