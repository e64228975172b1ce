export { compareReadings, type CsvComparison } from './csv-again.ts';
export { exportReadingsCsv } from './csv-export.ts';
export { readReadingsCsvFile } from './csv-file.ts';
export {
  MAX_CSV_BYTES,
  MAX_CSV_ROWS,
  type CsvDecimal,
  type CsvProblem,
  type CsvReadAs,
  type CsvReading,
  type CsvResult,
  type CsvSeparator,
  type CsvSum
} from './csv-types.ts';
export {
  SPREADSHEET_STYLE,
  csvFile,
  csvLine,
  type CsvCell,
  type CsvExportRow,
  type CsvStyle,
  writeReadingsCsv
} from './csv-write.ts';
export { readReadingsCsv } from './csv.ts';
export { DexieStore } from './dexie-store.ts';
export { safeFileName } from './file-name.ts';
export { isDeviceChanged } from './identity.ts';
export { isCanonicalLine } from './canonical-line.ts';
export { parseGuarded } from './json-guard.ts';
export { jobFilesIn } from './job-bundle.ts';
export { MAX_JOB_FILE_BYTES, type JobFileHeader } from './job-file-format.ts';
export { rescueJobFile } from './job-file-rescue.ts';
export { NothingReadable, journalSha256, type JobFile, writeJobFile } from './job-file-write.ts';
export { checkJobFile, readJobFile, type CheckedJobFile } from './job-file.ts';
export { isEntries } from './missing.ts';
export { MAX_PHOTO_BYTES } from './photo.ts';
export { isQuotaExceeded } from './reconnect.ts';
export { removedName } from './removed.ts';
export { Sha256, sha256Hex } from './sha256.ts';
export {
  PHOTO_TYPES,
  type Appended,
  type Copies,
  type DeviceNumbers,
  type EventBatches,
  type ImportRefusal,
  type ImportResult,
  type JobSummary,
  type JournalStore,
  type MergeSource,
  type Missing,
  type NewPhoto,
  type OpenJob,
  type PhotoType,
  type ProbeResult,
  type RebuiltJob,
  type Refusal,
  type Removal,
  type StorageEstimate,
  type StoreHealth,
  type StoreSurroundings,
  type StoredPhoto
} from './store.ts';
