/** What fuzz.js needs of core and of the tests, in one file. */
export { readDocument } from '../../src/core/carry';
export { again, GOOD } from '../core/carry/good';
export { spoilt } from '../core/carry/fuzz';
