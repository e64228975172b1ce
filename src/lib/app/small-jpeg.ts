/** Longest side of a kept photo, pixels: enough to show a corner broken off. Ours. */
const LONGEST_SIDE = 1600;
const QUALITY = 0.82;

/**
 * A photo drawn anew, small and as JPEG, so that nothing is left of what the camera wrote into the
 * file, such as the place. Undefined for a file that the browser cannot open as a picture.
 */
export async function smallJpeg(file: Blob): Promise<ArrayBuffer | undefined> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return undefined;
  }
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const brush = canvas.getContext('2d');
  if (!brush) return undefined;
  brush.fillStyle = '#fff';
  brush.fillRect(0, 0, canvas.width, canvas.height);
  brush.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  return blob ? blob.arrayBuffer() : undefined;
}
