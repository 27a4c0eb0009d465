/** Whether a text is a day of the calendar as it is written everywhere here: year, month, day. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text) || text.startsWith("0000")) return false;
  const date = new Date(`${text}T00:00:00Z`);
  // A month that has no such day would give one of the next.
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}
