/** An hour of today, or of yesterday if it were to come; nothing: now, by the server's clock. */
export function whenToday(time: string, nowMs = Date.now()): string | null {
  const [, hours, minutes] = /^(\d{2}):(\d{2})/.exec(time) ?? [];
  if (hours === undefined) return null;
  const when = new Date(nowMs);
  when.setHours(Number(hours), Number(minutes), 0, 0);
  if (when.getTime() > nowMs) when.setDate(when.getDate() - 1);
  return when.toISOString();
}
