/** Drawing at random, the same every time: a small generator for tests that must hold whatever is drawn. */
export class Draw {
  #state: number;
  readonly name: string;

  constructor(seed: number) {
    this.#state = seed >>> 0;
    this.name = `seed ${seed}`;
  }

  /** A whole number of 32 bits: the mixing of MurmurHash3 (Appleby, public domain) over a Weyl sequence. */
  next(): number {
    this.#state = (this.#state + 0x9e3779b9) >>> 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x85ebca6b);
    z = Math.imul(z ^ (z >>> 13), 0xc2b2ae35);
    return (z ^ (z >>> 16)) >>> 0;
  }

  below(most: number): number {
    return most < 1 ? 0 : this.next() % most;
  }

  pick<T>(of: readonly T[]): T {
    return of[this.below(of.length)] as T;
  }

  /** A text of any signs, awkward ones among them. */
  text(most: number): string {
    const signs = ['a', 'Z', '7', ' ', '"', '\\', '\n', 'ä', 'µ', '字', '😀', '\u0000', '{', ']', '#', '%'];
    return Array.from({ length: this.below(most + 1) }, () => this.pick(signs)).join('');
  }

  bytes(most: number): Uint8Array<ArrayBuffer> {
    return Uint8Array.from({ length: this.below(most + 1) }, () => this.below(256));
  }

  /** Any JSON value, up to a depth. */
  json(depth: number): unknown {
    switch (this.below(depth > 0 ? 7 : 5)) {
      case 0:
        return null;
      case 1:
        return this.below(2) === 0;
      case 2:
        return this.pick([0, -0, 1, -1.5, 1e-300, 1e300, this.next(), this.next() / 7]);
      case 3:
      case 4:
        return this.text(8);
      case 5:
        return Array.from({ length: this.below(4) }, () => this.json(depth - 1));
      default:
        return Object.fromEntries(
          Array.from({ length: this.below(5) }, () => [this.text(4), this.json(depth - 1)]),
        );
    }
  }
}

export function* draws(runs: number): Generator<Draw> {
  for (let seed = 1; seed <= runs; seed++) yield new Draw(seed);
}
