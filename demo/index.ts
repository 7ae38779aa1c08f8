export { demoJobs, demoPins, demoShop, type DemoJob } from './shop';
export { demoProcedures } from './procedures';
