/** Writes `seeds/readings.csv` anew. Usage: npm run seeds */
import { writeFileSync } from 'node:fs';
import { readingsFile } from './readings-file.ts';

writeFileSync('seeds/readings.csv', readingsFile());
console.log('seeds/readings.csv written');
