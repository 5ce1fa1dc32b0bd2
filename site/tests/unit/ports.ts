import type { FromWorker, Port, ToWorker } from '../../src/engine/protocol';

/** A worker in the hand: records what it is told, says what the test lets it say. */
export class FakePort implements Port {
  told: ToWorker[] = [];
  gone = false;
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror: ((event: { message: string }) => void) | null = null;
  postMessage(message: ToWorker): void {
    this.told.push(message);
  }
  terminate(): void {
    this.gone = true;
  }
  say(message: FromWorker): void {
    this.onmessage?.({ data: message });
  }
  /** Answers the last question. */
  reply(answer: unknown): void {
    const last = this.told.findLast((m) => m.kind === 'ask' || m.kind === 'sweep');
    if (!last) throw new Error('was not asked');
    this.say({ kind: 'answer', id: last.id, bytes: bytesOf(answer) });
  }
}

export const bytesOf = (value: unknown): Uint8Array => new TextEncoder().encode(JSON.stringify(value));
export const valueOf = (bytes: Uint8Array | undefined): unknown =>
  JSON.parse(new TextDecoder().decode(bytes));
