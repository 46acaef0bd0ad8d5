import { testAnyJobs } from './any-jobs.ts';

testAnyJobs('letter');
