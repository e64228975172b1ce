export { exampleEvents } from './worked-example.ts';
