/** What a word of the vocabulary means, in words. What is shipped has them in a part of their own: no finding waits for them. */
export const proseOf = (written: string): string => written;
