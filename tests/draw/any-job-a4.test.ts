import { testAnyJobs } from './any-jobs.ts';

testAnyJobs('a4');
