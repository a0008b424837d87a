/**
 * Quality of a notch: centre over the width between its -3 dB points, both in Hz.
 * Source: definition, e.g. SciPy, scipy.signal.iirnotch, "Q = w0 / bw".
 */
export function notchQuality(centre: number, width: number): number {
  return centre / width;
}

/**
 * Lower and upper -3 dB points (Hz) of an analogue second-order notch: their product is the centre squared and
 * their difference the width. Domain: centre and width above 0.
 * Source: follows from |H|² = 1/2 for H = (s² + 1) / (s² + s/Q + 1), the prototype in R. Bristow-Johnson,
 * Audio EQ Cookbook (W3C Group Note, 2021).
 */
export function notchEdges(centre: number, width: number): { readonly low: number; readonly high: number } {
  const half = width / 2;
  const middle = Math.hypot(centre, half);
  return { low: middle - half, high: middle + half };
}
