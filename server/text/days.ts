/** Whether a text is a day of the calendar as it is written everywhere here: year, month, day. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text.startsWith("0000")) return false;
  const date = new Date(`${text}T00:00:00Z`);
  // A month that has no such day would give one of the next.
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** Milliseconds of a day. */
export const dayLength = 86_400_000;

/** Which day since the beginning of 1970 one is that is written as 2026-03-05; not a number where it is not stated. */
export const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / dayLength;

/** Whole days from one to another, both written as 2026-03-05; not a number where one of them is not stated. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from);
