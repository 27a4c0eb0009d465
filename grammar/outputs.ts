/** Files derived from the token table and the vocabulary: path from the root, and text. */
export function outputs(): [path: string, text: string][] {
  return [];
}
