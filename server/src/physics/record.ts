/** Seconds that a memory lasts: bytes / (lines a second × bytes a line). Domain: all above 0. By definition. */
export function recordingTime(size: number, rate: number, bytesPerLine: number): number {
  return size / (rate * bytesPerLine);
}
