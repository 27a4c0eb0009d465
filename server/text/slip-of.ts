/** Whether a word is another with one slip of the fingers: a letter lost, doubled or wrong, or two that changed places. */
export function isSlipOf(written: string, word: string): boolean {
  if (written === word || Math.abs(written.length - word.length) > 1) return false;
  let same = 0;
  while (same < word.length && written[same] === word[same]) same++;
  const [ours, theirs] = [word.slice(same), written.slice(same)];
  if (ours.length > theirs.length) return ours.slice(1) === theirs;
  if (ours.length < theirs.length) return ours === theirs.slice(1);
  return ours.slice(1) === theirs.slice(1) || isSwapped(ours, theirs);
}

/** Two neighbours that changed places at the start, and nothing else. */
const isSwapped = (a: string, b: string): boolean =>
  a.length > 1 && a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2);
