export { DexieStore } from './dexie-store.ts';
export { isQuotaExceeded } from './reconnect.ts';
export { readReadingsCsv } from './csv.ts';
export { readReadingsCsvFile } from './csv-file.ts';
export { exportReadingsCsv } from './csv-export.ts';
export {
  type CsvCell,
  type CsvExportRow,
  type CsvStyle,
  SPREADSHEET_STYLE,
  csvLine,
  writeReadingsCsv
} from './csv-write.ts';
export {
  type CsvDecimal,
  type CsvProblem,
  type CsvReading,
  type CsvResult,
  type CsvSeparator,
  MAX_CSV_BYTES,
  MAX_CSV_ROWS
} from './csv-types.ts';
export { safeFileName } from './file-name.ts';
export type {
  Appended,
  ImportRefusal,
  ImportResult,
  JobSummary,
  JournalStore,
  OpenJob,
  StoreSurroundings
} from './store.ts';
