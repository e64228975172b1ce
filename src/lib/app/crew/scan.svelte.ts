import { newCodeReader } from './code-reader.ts';

export type ScanFault =
  /** Plain http from another machine: no browser hands over a camera there. */
  | 'insecure'
  | 'no-camera'
  /** Whoever holds the phone, or its settings, did not allow it. */
  | 'no-leave';

/** From one look to the next, ms: a mate's codes change four times a second. */
const PAUSE_MS = 60;

/** Looks through the camera for QR codes until somebody has what he wants. */
export class ScanState {
  isOn = $state(false);
  fault = $state<ScanFault>();
  #stream: MediaStream | undefined;

  /**
   * Begins to look.
   *
   * @param take takes what a code says; true ends the scan
   */
  async start(video: HTMLVideoElement, take: (text: string) => Promise<boolean>): Promise<void> {
    this.stop();
    this.fault = undefined;
    if (!isSecureContext) {
      this.fault = 'insecure';
      return;
    }
    this.isOn = true;
    try {
      const camera = { facingMode: 'environment', width: { ideal: 1280 } };
      this.#stream = await navigator.mediaDevices.getUserMedia({ video: camera });
      video.srcObject = this.#stream;
      await video.play();
      const read = await newCodeReader();
      while (this.isOn) {
        const text = await read(video);
        if (text && (await take(text))) break;
        await new Promise((resume) => setTimeout(resume, PAUSE_MS));
      }
    } catch (error) {
      const isRefused = error instanceof DOMException && error.name === 'NotAllowedError';
      if (this.isOn) this.fault = isRefused ? 'no-leave' : 'no-camera';
    } finally {
      this.stop();
    }
  }

  stop(): void {
    this.isOn = false;
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#stream = undefined;
  }
}
