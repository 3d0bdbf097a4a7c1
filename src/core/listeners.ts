/** Those who want to be told. A listener may leave, or bring others, while it is being told. */
export class Listeners<T> {
  readonly #all = new Set<(event: T) => void>();

  readonly add = (listener: (event: T) => void): (() => void) => {
    this.#all.add(listener);
    return () => this.#all.delete(listener);
  };

  tell(event: T): void {
    for (const listener of [...this.#all]) listener(event);
  }

  clear(): void {
    this.#all.clear();
  }
}
