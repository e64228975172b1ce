export { chapelRoof } from './chapel-roof.ts';
export { exampleEvents } from './worked-example.ts';
