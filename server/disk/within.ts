/** What comes first: the answer, or the end of the time it is given. */
export async function within<T>(milliseconds: number, answer: Promise<T>, late: T): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const end = new Promise<T>((resolve) => {
    timer = setTimeout(() => resolve(late), milliseconds);
  });
  return await Promise.race([answer, end]).finally(() => clearTimeout(timer));
}
