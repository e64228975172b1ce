import { type Socket, connect, createServer } from 'node:net';
import type { AddressInfo } from 'node:net';

/** Most that one connection sends before the next has its turn, bytes: two packets. */
const TURN_BYTES = 2 * 1460;

export interface SlowLine {
  readonly url: string;
  close(): void;
}

/**
 * A poor line in front of a server on this machine, for whatever comes through it: pages, workers
 * and the app's own service worker, which the browser's own slowing leaves alone. What is asked
 * takes the latency; what is answered shares the bits a second between the connections in turn.
 *
 * @param port of the server
 * @param bitsPerSecond of all answers together
 * @param latencyMs from asking to the server's hearing it
 */
export function slowLine(port: number, bitsPerSecond: number, latencyMs: number) {
  const waiting = new Map<Socket, Buffer[]>();
  let isSending = false;

  function sendInTurn(): void {
    const [first] = waiting;
    isSending = first !== undefined;
    if (!first) return;
    const [socket, [chunk, ...later]] = first;
    const part = chunk.subarray(0, TURN_BYTES);
    const left = chunk.length > TURN_BYTES ? [chunk.subarray(TURN_BYTES), ...later] : later;
    waiting.delete(socket);
    if (left.length > 0) waiting.set(socket, left);
    setTimeout(
      () => {
        if (!socket.destroyed) socket.write(part);
        sendInTurn();
      },
      (part.length * 8000) / bitsPerSecond
    );
  }

  const server = createServer((socket) => {
    const upstream = connect(port, '127.0.0.1');
    socket.on('data', (asked) => setTimeout(() => upstream.write(asked), latencyMs));
    upstream.on('data', (answer) => {
      waiting.set(socket, [...(waiting.get(socket) ?? []), answer]);
      if (!isSending) sendInTurn();
    });
    for (const end of [socket, upstream])
      end.on('error', () => [socket, upstream].forEach((each) => each.destroy()));
    socket.on('close', () => {
      waiting.delete(socket);
      upstream.destroy();
    });
  });
  return new Promise<SlowLine>((resolve) => {
    server.listen(0, '127.0.0.1', () => {
      const { port: given } = server.address() as AddressInfo;
      resolve({ url: `http://127.0.0.1:${given}/`, close: () => void server.close() });
    });
  });
}
