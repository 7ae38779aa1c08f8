export { demoMonth, type MonthWish } from './month';
