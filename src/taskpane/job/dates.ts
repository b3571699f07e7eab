/** The date of today on the user's calendar, like 2026-11-25. */
export function todayText(now = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
