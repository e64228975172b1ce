export { CONTRACT, type ContractCase, type ContractDevice } from './contract-suite.ts';
export { DexieStore } from './dexie-store.ts';
export { MemoryDatabase, MemoryStore } from './memory-store.ts';
export { isDeviceChanged } from './identity.ts';
export { isQuotaExceeded } from './reconnect.ts';
export { type CheckedJobFile, checkJobFile, readJobFile } from './job-file.ts';
export { type JobFile, journalSha256, writeJobFile } from './job-file-write.ts';
export { type JobFileHeader, MAX_JOB_FILE_BYTES } from './job-file-format.ts';
export { MAX_PHOTO_BYTES } from './photo.ts';
export { Sha256, sha256Hex } from './sha256.ts';
export { readReadingsCsv } from './csv.ts';
export { readReadingsCsvFile } from './csv-file.ts';
export { exportReadingsCsv } from './csv-export.ts';
export { type CsvComparison, compareReadings } from './csv-again.ts';
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
export { isCanonicalLine } from './canonical-line.ts';
export { parseGuarded } from './json-guard.ts';
export {
  type Appended,
  type DeviceNumbers,
  type EventBatches,
  type ImportRefusal,
  type ImportResult,
  type JobSummary,
  type JournalStore,
  type MergeSource,
  type NewPhoto,
  type OpenJob,
  PHOTO_TYPES,
  type PhotoType,
  type ProbeResult,
  type Refusal,
  type StorageEstimate,
  type StoreHealth,
  type StoreSurroundings,
  type StoredPhoto
} from './store.ts';
