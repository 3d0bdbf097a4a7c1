import type { CST } from 'yaml';

/** How many collections stand inside one another. Walks without recursion, since depth is what it guards against. */
export function depthOf(root: CST.Token): number {
  let deepest = 0;
  const waiting: { readonly token: CST.Token; readonly depth: number }[] = [{ token: root, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { token, depth } = next;
    deepest = Math.max(deepest, depth);
    if (token.type === 'document') {
      if (token.value) waiting.push({ token: token.value, depth });
    } else if ('items' in token) {
      for (const item of token.items) {
        if (item.key) waiting.push({ token: item.key, depth: depth + 1 });
        if (item.value) waiting.push({ token: item.value, depth: depth + 1 });
      }
    }
  }
  return deepest;
}
