import type { CsvProblem } from '$lib/storage';
import { words } from '$lib/text';

/** A problem of a CSV file in one sentence. */
export function sayCsvProblem(problem: CsvProblem): string {
  const say = words.text.csv.problems;
  switch (problem.code) {
    case 'too-large':
      return say[problem.code](problem.bytes, problem.limitBytes);
    case 'too-many-rows':
      return say[problem.code](problem.rows, problem.limitRows);
    case 'binary':
    case 'empty':
    case 'no-rows':
    case 'ambiguous-separator':
      return say[problem.code]();
    case 'missing-column':
      return say[problem.code](problem.column, problem.found.join(', '));
    case 'duplicate-column':
    case 'unknown-unit':
      return say[problem.code](problem.column);
    case 'too-many-point-columns':
      return say[problem.code](problem.found);
    case 'unknown-separator':
      return say[problem.code](problem.text);
    case 'too-many-points':
      return say[problem.code](problem.line, problem.found);
    case 'mean-differs':
      return say[problem.code](problem.line, problem.text, problem.meanMm);
    case 'columns-differ':
      return say[problem.code](problem.line, problem.found, problem.expected);
    case 'not-a-number':
    case 'several-decimals':
    case 'negative':
    case 'unknown-grade':
    case 'unknown-set-aside':
    case 'ambiguous-grade':
    case 'unknown-ring':
    case 'unknown-fault':
    case 'not-whole':
    case 'not-yes-or-no':
    case 'spreadsheet-error':
    case 'like-a-fraction':
    case 'unit-differs':
    case 'ambiguous-decimal':
    case 'mixed-grades':
      return say[problem.code](problem.line, problem.text);
    case 'too-thin':
    case 'too-thick':
    case 'bad-measure':
      return say[problem.code](problem.line, problem.text, problem.limitMm);
    case 'mixed-decimals':
      return say[problem.code](problem.pointLine, problem.commaLine);
    case 'looks-like-inches':
      return say[problem.code](problem.line, problem.text, problem.perhapsMm);
    case 'more-problems':
      return say[problem.code](problem.count);
    default:
      return say[problem.code](problem.line);
  }
}
