/** Reads the QR code that a picture shows; undefined while it shows none. */
export type CodeReader = (picture: HTMLVideoElement) => Promise<string | undefined>;

/** What browsers that read codes themselves offer (Accelerated Shape Detection, W3C draft). */
interface Detector {
  detect(picture: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
}

/** Pixels of the longer side that our own reader looks at: enough for a code of 105 modules. */
const LOOKED_AT = 960;

/** The browser's own reader where it has one, else ours. */
export async function newCodeReader(): Promise<CodeReader> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass };
  const formats = (await BarcodeDetector?.getSupportedFormats().catch(() => [])) ?? [];
  if (BarcodeDetector && formats.includes('qr_code')) {
    const detector = new BarcodeDetector({ formats: ['qr_code'] });
    return async (picture) => (await detector.detect(picture)).at(0)?.rawValue;
  }
  const { default: decode } = await import('qr/decode.js');
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  return (picture) => {
    const { videoWidth, videoHeight } = picture;
    const scale = Math.min(1, LOOKED_AT / Math.max(videoWidth, videoHeight));
    canvas.width = Math.round(videoWidth * scale);
    canvas.height = Math.round(videoHeight * scale);
    if (!pen || canvas.width === 0 || canvas.height === 0) return Promise.resolve(undefined);
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    try {
      return Promise.resolve(decode(pen.getImageData(0, 0, canvas.width, canvas.height)));
    } catch {
      return Promise.resolve(undefined); // no code in this picture
    }
  };
}
