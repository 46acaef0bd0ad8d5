import { testAnyJobs } from './sample/any-jobs.ts';

testAnyJobs('a4');
