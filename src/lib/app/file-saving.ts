/** A file made and waiting to be saved. */
export interface ReadyFile {
  file: File;
  /** Whether the system's share sheet takes it; on an installed phone app that is the way out. */
  canShare: boolean;
}

/** Makes a blob a file that can be saved or shared. */
export function readyFile(blob: Blob, name: string): ReadyFile {
  const file = new File([blob], name, { type: blob.type });
  return { file, canShare: navigator.canShare?.({ files: [file] }) ?? false };
}

/** Hands the file to the browser's downloads. */
export function download({ file }: ReadyFile): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Opens the share sheet; call inside a tap. Resolves to whether the file was handed over. */
export async function share({ file }: ReadyFile): Promise<boolean> {
  try {
    await navigator.share({ files: [file], title: file.name });
    return true;
  } catch {
    return false; // closed without sharing
  }
}
