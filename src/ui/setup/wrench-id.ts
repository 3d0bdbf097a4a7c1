/** An id made from the name, as ids are written everywhere: lower case, no accents, hyphens, a letter first; numbered where taken. */
export function newWrenchId(say: string, taken: readonly string[]): string {
  const plain = say
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[^a-z]+|-+$/g, '');
  const stem = plain === '' ? 'wrench' : plain;
  for (let n = 1; ; n++) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.includes(id)) return id;
  }
}
